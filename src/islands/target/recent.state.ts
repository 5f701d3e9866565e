/** The situations of this browser, kept while a reader moves from one to the next, and removed at once when asked. */
import { effect, type ReadonlySignal, signal } from '@preact/signals';
import { addRecent, readRecent } from './recentSituations.ts';
import { type Choices, writeChoices } from './situationAddress.ts';

/** Name under which the browser keeps them. */
export const RECENT = 'shy-of-failure recent situations';
/** Milliseconds without a change after which a situation counts as asked about, not passed on the way to another. */
const STOOD = 4000;

/** @param exercises names that may be chosen */
export function createRecent(choices: ReadonlySignal<Choices>, exercises: readonly string[]) {
  /** As the browser keeps it; null where nothing is, or nothing may be. */
  const text = signal<string | null>(null);
  /** What this visit kept last: moved on in the same exercise and purpose it is the same situation, changed. */
  let last: { readonly query: string; readonly set: string } | null = null;

  const keep = () => {
    const now = choices.peek();
    const query = writeChoices(now);
    const set = JSON.stringify([now.exercise, now.purpose]);
    if (query === '' || query === last?.query) return;
    const replaced = last?.set === set ? last.query : null;
    last = { query, set };
    try {
      // Another tab may have added to them.
      text.value = JSON.stringify(addRecent(readRecent(localStorage.getItem(RECENT), exercises), query, replaced));
      localStorage.setItem(RECENT, text.value);
    } catch {
      // A browser that keeps nothing has no recent situations; the address still says the present one.
      text.value = null;
    }
  };
  const forget = () => {
    try {
      localStorage.removeItem(RECENT);
    } catch {
      // Nothing was kept.
    }
    text.value = null;
  };
  /** Takes up what was kept and keeps what is asked about; returns what ends it. */
  const connect = () => {
    try {
      text.value = localStorage.getItem(RECENT);
    } catch {
      text.value = null;
    }
    const followOtherTab = ({ key, newValue }: StorageEvent) => {
      if (key === RECENT || key === null) text.value = newValue;
    };
    let rest: ReturnType<typeof setTimeout> | undefined;
    const stop = effect(() => {
      void choices.value;
      clearTimeout(rest);
      rest = setTimeout(keep, STOOD);
    });
    addEventListener('storage', followOtherTab);
    addEventListener('pagehide', keep);
    addEventListener('beforeprint', keep);
    return () => {
      stop();
      clearTimeout(rest);
      removeEventListener('storage', followOtherTab);
      removeEventListener('pagehide', keep);
      removeEventListener('beforeprint', keep);
    };
  };
  return { text, forget, connect };
}

export type Recent = ReturnType<typeof createRecent>;
