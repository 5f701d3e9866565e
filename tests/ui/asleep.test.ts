/** Parts that sleep as the build drew them: nothing of them is touched before they wake, and nothing is lost by waking. */
import { signal } from '@preact/signals';
import { parseHTML } from 'linkedom';
import { h, hydrate } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { renderToString } from 'preact-render-to-string';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Asleep } from '../../src/ui/Asleep.tsx';

let woken: string[];
let tell: ((said: string) => void) | null;

/** What a part reads on its own, whatever stands above. */
const read = signal(false);

function Part({ name, said }: { readonly name: string; readonly said: string }) {
  const [pressed, setPressed] = useState(0);
  if (typeof document !== 'undefined') woken.push(name);
  const label = read.value ? 'later' : 'drawn';
  return h(
    'button',
    { type: 'button', id: name, 'aria-label': label, onClick: () => setPressed(pressed + 1) },
    `${said} ${pressed}`,
  );
}

function Page() {
  const [said, setSaid] = useState('first');
  const [isThere, setThere] = useState(false);
  tell = (what) => (what === 'more' ? setThere(true) : setSaid(what));
  const part = (name: string, words: string) => h(Asleep, null, h(Part, { name, said: words }));
  const one = useMemo(() => part('one', 'one'), []);
  return h('main', null, one, part('two', said), isThere && part('three', 'three'));
}

const drawn = renderToString(h(Page, null));
const turn = () => vi.advanceTimersToNextTimer();
const settle = async () => {
  for (let i = 0; i < 5; i++) await Promise.resolve();
};

beforeEach(() => {
  woken = [];
  read.value = false;
  const { document, Event } = parseHTML(`<html><body>${drawn}</body></html>`);
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  vi.stubGlobal('document', document);
  vi.stubGlobal('Event', Event);
  hydrate(h(Page, null), document.body);
});
afterEach(() => {
  vi.runAllTimers();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const button = (name: string) => document.getElementById(name) as HTMLElement;
const press = async (name: string) => {
  button(name).dispatchEvent(new Event('pointerdown', { bubbles: true }));
  button(name).dispatchEvent(new Event('click', { bubbles: true }));
  await settle();
};

describe('A sleeping part', () => {
  it('stands as it was drawn, and wakes when its turn comes, one after the other, in the same element', () => {
    const before = button('one');
    expect([woken, document.body.innerHTML.replaceAll(' aria-busy="true"', '')]).toEqual([[], drawn]);
    expect(document.querySelectorAll('[aria-busy]')).toHaveLength(2);
    turn();
    expect(woken).toEqual(['one']);
    turn();
    expect(woken).toEqual(['one', 'two']);
    expect(button('one')).toBe(before);
    expect(document.body.innerHTML).toBe(drawn);
  });

  it('wakes when it is touched, and hears the press that woke it', async () => {
    await press('two');
    expect(button('two').textContent).toBe('first 1');
    expect(woken).not.toContain('one');
    vi.runAllTimers();
    expect(woken.filter((name) => name === 'two')).toHaveLength(2);
    await press('two');
    expect(button('two').textContent).toBe('first 2');
  });

  it('shows at once what changes before its turn, and only that', async () => {
    const before = button('two');
    tell?.('second');
    await settle();
    expect(button('two').textContent).toBe('second 0');
    expect(button('two')).toBe(before);
    expect(woken).not.toContain('one');
    tell?.('third');
    await settle();
    expect(button('two').textContent).toBe('third 0');
  });

  it('shows what it reads when it wakes, not what it was drawn with', () => {
    read.value = true;
    vi.runAllTimers();
    expect(['one', 'two'].map((name) => button(name).getAttribute('aria-label'))).toEqual(['later', 'later']);
    expect(document.querySelectorAll('[aria-busy]')).toHaveLength(0);
  });

  it('is awake at once where the build drew nothing', async () => {
    tell?.('more');
    await settle();
    expect(button('three').textContent).toBe('three 0');
    await press('three');
    expect(button('three').textContent).toBe('three 1');
  });
});
