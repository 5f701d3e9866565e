/** State of what is opened or pasted as lifters: shown before any of it comes into the list. */
import { batch, signal } from '@preact/signals';
import { LIFTER_COLUMNS, lifterColumnNamed } from '../../../practice/lifters/lifterColumns.ts';
import { type ReadLifters, readLifters } from '../../../practice/lifters/liftersFile.ts';
import { reasonOf } from '../../../ui/reasonOf.ts';
import { openText } from '../openText.ts';
import type { ProgrammeState } from '../programme.state.ts';
import type { LiftersState } from './lifters.state.ts';

const PASTED = 'the pasted text';

export function createOpening({ exercises }: Pick<ProgrammeState, 'exercises'>, lifters: LiftersState) {
  const isOpen = signal(false);
  const text = signal('');
  const found = signal<ReadLifters | null>(null);
  /** Name of what was read. */
  const source = signal(PASTED);
  const problem = signal<string | null>(null);
  /** How the file was read, where that is not plain. */
  const note = signal('');
  /** Number of the file that was opened last: one that takes longer to read must not come after it. */
  let lastOpened = 0;

  const read = (whole: string, name: string) =>
    batch(() => {
      text.value = whole;
      source.value = name;
      problem.value = null;
      note.value = '';
      found.value = whole.trim() === '' ? null : readLifters(whole, name, exercises.peek());
    });
  const open = async (file: File) => {
    const place = ++lastOpened;
    try {
      const isName = (cell: string) => Object.hasOwn(LIFTER_COLUMNS, lifterColumnNamed(cell));
      const opened = await openText(new Uint8Array(await file.arrayBuffer()), file.name, isName);
      if (place !== lastOpened) return;
      if (opened.refused === null) read(opened.text, file.name);
      else problem.value = opened.refused;
      note.value = opened.said;
    } catch (error) {
      if (place === lastOpened) problem.value = `${file.name}: ${reasonOf(error)}`;
    }
  };
  const close = () =>
    batch(() => {
      // A file that is still being read is not let in later.
      lastOpened++;
      read('', PASTED);
      isOpen.value = false;
      lifters.focusOn('lifters');
    });
  const take = (way: 'replace' | 'beside') => {
    const ready = found.peek();
    if (!ready || ready.lifters.all.length === 0) return;
    problem.value = lifters.take(ready.lifters, source.peek(), way);
    if (problem.peek() === null) close();
  };
  const start = () => {
    isOpen.value = true;
    lifters.focusOn('lifters-pasted');
  };
  return { isOpen, text, found, problem, note, read: (whole: string) => read(whole, PASTED), open, take, close, start };
}

export type LiftersOpening = ReturnType<typeof createOpening>;
