/** Which figure an address names, and what is told of what was found then, while figures are chosen to and fro. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { createLiveFigure, slugIn } from '../../src/islands/figure/liveFigure.state.ts';
import { pretendBrowser } from './pretendBrowser.ts';

const TABLE = '/data/arms.csv#ba6d2a5e';
const CITED = '?v=2&curve=log&table=0123abcd&then=h1_0_2*n9_3';

afterEach(() => {
  vi.unstubAllGlobals();
});

function open(search: string, hash: string) {
  const browser = pretendBrowser(search);
  browser.location.hash = hash;
  let heard = () => {};
  vi.stubGlobal('addEventListener', (name: string, listener: () => void) => {
    if (name === 'hashchange') heard = listener;
  });
  const state = createLiveFigure({ inUse: TABLE, site: TABLE });
  state.connect();
  /** What the menu does, and the buttons Back and Forward. */
  const goTo = (to: string) => {
    browser.location.hash = to;
    heard();
  };
  return { state, browser, goTo };
}

describe('the figure that an address names', () => {
  it('is found also with what a text puts behind an address', () => {
    const hashes = [
      '#growth-heavy',
      '#growth-heavy.',
      '#growth-heavy),',
      '#growth-heavy%20',
      '#growth-heavy”',
      '#strength;',
    ];
    expect(hashes.map(slugIn)).toEqual([...Array(5).fill('growth-heavy'), 'strength']);
    expect(['', '#', '#Growth-Heavy', '#growth', '#1'].map(slugIn)).toEqual(['', '', 'Growth-Heavy', 'growth', '1']);
  });

  it('is said to be missing where a cited address lost its end, or names none that there is', () => {
    expect(open(CITED, '').state.notice.value).toBe(
      'The address names no figure: its end, from # on, is missing; “Growth by reserve, light loads” is chosen instead.',
    );
    expect(open(CITED, '#growth').state.notice.value).toMatch(
      /There is no figure “growth”; “Growth by reserve, light loads” is chosen instead\.$/u,
    );
    expect(open(`${CITED}&curves=1`, '#growth').state.notice.value).toMatch(
      /stand at their defaults: curves\..*no figure/u,
    );
    // Without a citation any figure will do.
    for (const search of ['', '?v=2&curve=log']) expect(open(search, '').state.notice.value).toBeNull();
  });
});

describe('what was found when a figure was cited', () => {
  it('is told of that figure alone, and again when it is come back to', () => {
    const { state, browser, goTo } = open(CITED, '#growth-heavy');
    const found = state.pin.value?.found;
    expect(found).toMatchObject({ rows: 9, studies: 3 });
    goTo('#growth-light');
    expect([state.slug.value, state.pin.value?.found]).toEqual(['growth-light', null]);
    expect(browser.location.search).not.toMatch(/then/u);
    goTo('#growth-heavy');
    expect([state.slug.value, state.pin.value?.found]).toEqual(['growth-heavy', found]);
    expect(browser.location.search).toMatch(/table=0123abcd&then=h1_0_2/u);
  });

  it('that is of another figure is said of the address as it came, and no more once another is chosen', () => {
    const { state, goTo } = open(`${CITED}&curves=1`, '#growth-light');
    expect(state.notice.value).toMatch(/defaults: curves\..*is of another figure/u);
    goTo('#strength');
    expect(state.notice.value).toMatch(/defaults: curves\.$/u);
  });
});
