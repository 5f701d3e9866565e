/** What the present fit is held against on the Evidence page: found or fitted, said once, kept for the tab. */
import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { readArms } from '../../../src/evidence/table.ts';
import { listVocabulary } from '../../../src/islands/analysis/filterOptions.ts';
import { createEvidence } from '../../../src/islands/evidence/evidence.state.ts';
import { analyse } from '../../../src/model/analyse.ts';
import { defaultSettings, type Settings } from '../../../src/model/settings.ts';
import { RELOADING } from '../../../src/offline/words.ts';
import { type PretendBrowser, pretendBrowser } from '../pretendBrowser.ts';

const { arms } = readArms(readFileSync(new URL('../../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const start = analyse(arms, defaultSettings);
const vocabulary = listVocabulary(arms);
const REST = 1000;

let browser: PretendBrowser;
let disconnect: () => void;
beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  disconnect?.();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

/** @param table another than the site's stands for a reader's own */
function open(query = '', kept: Record<string, string> = {}, table = '/data/arms.csv') {
  browser = pretendBrowser(query, kept);
  const state = createEvidence(start, table, vocabulary);
  disconnect = state.connect();
  const [fitter] = browser.workers;
  const answered = new Set<number>();
  /** Answers every fit that is waited for, in order, as the worker would. */
  const answer = () => {
    for (;;) {
      const next = fitter.askedFor('analyse').find(({ id }) => !answered.has(id));
      if (!next) return;
      answered.add(next.id);
      fitter.say({ id: next.id, result: analyse(arms, next.request.settings as Settings) });
    }
  };
  const move = (change: Partial<Settings>) => state.change((settings) => ({ ...settings, ...change }));
  const settle = () => {
    answer();
    vi.advanceTimersByTime(REST);
    answer();
  };
  settle();
  return { state, fitter, move, answer, settle };
}

describe('a move', () => {
  it('leaves what stood before, without fitting it again, and says what moved once it rests', () => {
    const { state, fitter, move, answer, settle } = open();
    const before = fitter.askedFor('analyse').length;
    move({ curve: 'line' });
    answer();
    expect(fitter.askedFor('analyse').length).toBe(before + 1);
    expect(state.comparison.former.value?.settings.curve).toBe('flexible');
    expect(state.comparison.line.value).toMatch(/^Curve: from flexible curve to straight line\. Light loads: target/u);
    expect(state.comparison.announced.value).toBe('');
    settle();
    expect(state.comparison.announced.value).toBe(state.comparison.line.value);
  });

  it('made while a slower one is still fitted leaves the place between, fitted after both', () => {
    const { state, fitter, move, answer } = open();
    move({ curve: 'line' });
    vi.advanceTimersByTime(REST);
    move({ split: 50 });
    expect(state.comparison.former.value).toBeUndefined();
    answer();
    const asked = fitter.askedFor('analyse').map(({ request }) => request.settings as Settings);
    expect(
      asked
        .slice(-2)
        .map(({ curve, split }) => `${curve} ${split}`)
        .sort(),
    ).toEqual(['line 50', 'line 60']);
    expect(state.comparison.former.value?.settings).toMatchObject({ curve: 'line', split: 60 });
    expect(state.comparison.line.value).toMatch(/^Split: from 60/u);
  });

  it('by a slider that is held is one, however long it stands still', () => {
    const { state, move, settle } = open();
    state.hold(true);
    move({ split: 62 });
    settle();
    move({ split: 65 });
    settle();
    expect(browser.written).toEqual([]);
    state.hold(false);
    settle();
    expect(browser.written).toEqual(['push ?v=2&split=65']);
    expect(state.moving.moves.value.places.map(({ split }) => split)).toEqual([60, 65]);
  });

  it('that changes nothing leaves no trace, and says so', () => {
    const { state, move, settle } = open();
    move({ missingSds: 'missing' });
    settle();
    expect(state.comparison.former.value).toBeUndefined();
    expect(state.comparison.line.value).toMatch(/Nothing moved: every row that is fitted has a spread of its own\.$/u);
  });

  it('is undone to the very address, and the trace is then of what was undone', () => {
    const { state, move, settle } = open('?v=2&split=55');
    move({ curve: 'line' });
    settle();
    state.moving.undo();
    settle();
    expect(browser.location.search).toBe('?v=2&split=55');
    expect(state.comparison.former.value?.settings.curve).toBe('line');
    state.moving.redo();
    settle();
    expect(browser.location.search).toBe('?v=2&curve=line&split=55');
  });

  it('whose former place cannot be fitted says so', () => {
    const { state, fitter, move } = open();
    move({ curve: 'line' });
    vi.advanceTimersByTime(REST);
    move({ split: 50 });
    const isFormer = ({ request }: { request: Record<string, unknown> }) => (request.settings as Settings).split === 60;
    const former = fitter.askedFor('analyse').filter(isFormer).at(-1);
    for (const { id, request } of fitter.askedFor('analyse')) {
      if (id === former?.id) fitter.say({ id, problem: 'singular' });
      else fitter.say({ id, result: analyse(arms, request.settings as Settings) });
    }
    const last = fitter.askedFor('analyse').at(-1);
    fitter.say({ id: last?.id, result: analyse(arms, last?.request.settings as Settings) });
    expect(state.comparison.line.value).toMatch(/The former settings could not be fitted: singular\.$/u);
  });
});

it('a move that has not rested is in the address before a newer version loads the page again', () => {
  const listeners: Record<string, () => void> = {};
  browser = pretendBrowser();
  vi.stubGlobal('addEventListener', (name: string, act: () => void) => {
    listeners[name] = act;
  });
  const state = createEvidence(start, '/data/arms.csv', vocabulary);
  disconnect = state.connect();
  state.change((settings) => ({ ...settings, curve: 'line' }));
  expect(browser.location.search).toBe('');
  listeners[RELOADING]();
  expect(browser.location.search).toBe('?v=2&curve=line');
});

describe('moves of a tab', () => {
  it('are there again after a reload, with what the last one left', () => {
    const { state, move, settle } = open();
    move({ curve: 'line' });
    settle();
    move({ split: 50 });
    settle();
    const { places } = state.moving.moves.value;
    const kept = { 'shy-of-failure evidence moves': sessionStorage.getItem('shy-of-failure evidence moves') ?? '' };
    disconnect();
    const again = open('?v=2&curve=line&split=50', kept);
    expect(again.state.moving.moves.value.places).toEqual(places);
    expect(again.state.comparison.line.value).toMatch(/^Split: from 60/u);
    disconnect();
    // Another table has moves of its own; an address that was gone to was not moved to.
    expect(open('', kept, '/data/other.csv').state.moving.moves.value.places).toHaveLength(1);
    disconnect();
    const elsewhere = open('?v=2&curve=log', kept);
    expect(elsewhere.state.moving.moves.value).toMatchObject({ now: 3, left: null });
  });

  it('that cannot be read begin anew', () => {
    for (const text of [
      '{',
      '{"table":"/data/arms.csv","places":[],"now":0}',
      '{"table":"/data/arms.csv","places":"x","now":0}',
    ]) {
      expect(open('', { 'shy-of-failure evidence moves': text }).state.moving.moves.value.places).toHaveLength(1);
      disconnect();
    }
  });
});

describe('a pin', () => {
  it('stands in the address, is fitted where it is opened, and is said against what stands now', () => {
    const { state, move, settle } = open();
    state.pin(true);
    expect(browser.location.search).toBe('?v=2&pin=v%3D2');
    expect(state.comparison.pinLine.value).toMatch(/What is pinned is what stands now/u);
    move({ curve: 'line' });
    settle();
    const said = state.comparison.pinLine.value;
    expect(said).toMatch(/^Curve: from flexible curve to straight line\. Light loads: target/u);
    expect(browser.location.search).toBe('?v=2&curve=line&pin=v%3D2');
    disconnect();
    const elsewhere = open('?v=2&curve=line&pin=v%3D2');
    expect(elsewhere.state.comparison.pinLine.value).toBe(said);
    elsewhere.state.pin(false);
    expect(browser.location.search).toBe('?v=2&curve=line');
    expect(elsewhere.state.comparison.pin.value).toBeNull();
  });
});
