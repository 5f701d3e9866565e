/** What the form leaves in this browser: taken up at the next visit, kept at every change, followed from tab to tab. */
import { effect, type Signal, signal } from '@preact/signals';
import { countOf, countStudies } from '../../numerics/countOf.ts';
import { saveFile } from '../../ui/saveFile.ts';
import { type Curating, readCurating, writeCurating } from './savedForm.ts';

const STORE = 'shy-of-failure curating';

export function keepForm(curating: Signal<Curating>) {
  /** Text of an earlier visit that could not be read, with the reason. */
  const unread = signal<{ readonly text: string; readonly problem: string } | null>(null);
  /** What was made of what an earlier form of the page had kept; empty where there was none. */
  const takenOver = signal('');
  /** False where this browser keeps nothing. */
  const isKept = signal(true);
  const restore = (text: string | null) => {
    if (text === null) return;
    const read = readCurating(text);
    if (!read.curating) {
      unread.value = { text, problem: read.problem };
      return;
    }
    curating.value = read.curating;
    if (read.takenOver > 0) {
      takenOver.value = `What you had entered row by row was taken over: ${countOf(read.takenOver, 'row')} as ${countStudies(read.curating.studies.length)}.`;
    }
  };
  const saveUnread = () => {
    if (unread.value) saveFile({ name: 'curating.json', type: 'application/json', text: unread.value.text });
  };
  /** Takes up what an earlier visit left, and keeps every change; returns what ends it. */
  const connect = () => {
    try {
      restore(localStorage.getItem(STORE));
    } catch {
      isKept.value = false;
    }
    const followOtherTab = ({ key, newValue }: StorageEvent) => {
      if (key === STORE) restore(newValue);
    };
    addEventListener('storage', followOtherTab);
    const untouched = curating.peek();
    const stop = effect(() => {
      // What was found, read or not, stays as it is until something is changed.
      if (curating.value === untouched) return;
      try {
        localStorage.setItem(STORE, writeCurating(curating.value));
      } catch {
        isKept.value = false;
      }
    });
    return () => {
      stop();
      removeEventListener('storage', followOtherTab);
    };
  };
  return { unread, takenOver, isKept, saveUnread, connect };
}
