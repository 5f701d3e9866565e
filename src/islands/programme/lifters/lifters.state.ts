/**
 * State of the lifters: who they are with all that came before, what is kept of them, and what goes on paper. They are
 * apart from the programme: its undo does not touch them, and its file does not hold them.
 */
import { batch, computed, signal } from '@preact/signals';
import { countOf } from '../../../numerics/countOf.ts';
import {
  addLifter,
  changeLifter,
  changeUnit,
  mergeLifters,
  removeLifter,
  removeOneRm,
  setOneRm,
} from '../../../practice/lifters/editLifters.ts';
import {
  exerciseKey,
  type Lifters,
  MOST_LIFTERS,
  NO_LIFTERS,
  nameExercise,
  type OneRm,
  type Refusal,
  refuseName,
} from '../../../practice/lifters/lifter.ts';
import { writeLifters } from '../../../practice/lifters/liftersFile.ts';
import type { WeightUnit } from '../../../practice/lifters/weight.ts';
import { record, startHistory } from '../../../practice/programme/history.ts';
import { saveFile } from '../../../ui/saveFile.ts';
import type { ProgrammeState } from '../programme.state.ts';
import { createSteps, followFocus } from '../steps.ts';
import { type Kept, keepLifters, readStore, takeKept } from './keptLifters.ts';
import { LIFTERS_STORE } from './keptMark.ts';

/**
 * Where a name was entered that cannot be taken: a lifter's id, or the entry for another one. It is of the lifters as
 * they stand: an id may be another's once a file was opened.
 */
export interface RefusedName {
  readonly where: number | 'new';
  readonly refusal: Refusal;
}

export function createLifters(programme: Pick<ProgrammeState, 'exercises'>) {
  const history = signal(startHistory<Lifters>(NO_LIFTERS));
  const lifters = computed(() => history.value.present);
  /** What was done last, to be said aloud. */
  const said = signal('');
  /** Where the focus goes once the page shows what was done; another object each time. */
  const focus = signal<{ readonly id: string } | null>(null);
  const refused = signal<RefusedName | null>(null);
  /** Lifters that are unfolded. */
  const unfolded = signal<ReadonlySet<number>>(new Set());
  /** What stands in the store and cannot be read; it is left there until the reader has decided. */
  const unread = signal<Extract<Kept, { readonly kind: 'unread' }> | null>(null);
  /** Why the browser does not keep them; null where it does. */
  const notKept = signal<string | null>(null);
  const exercises = () => programme.exercises.peek();
  const nameOf = (id: number) => lifters.peek().all.find((one) => one.id === id)?.name ?? '';
  const focusOn = (id: string) => {
    focus.value = { id };
  };
  const fold = (id: number, isOpen: boolean) => {
    if (unfolded.peek().has(id) === isOpen) return;
    const others = [...unfolded.peek()].filter((one) => one !== id);
    unfolded.value = new Set(isOpen ? [...others, id] : others);
  };

  const keep = () => {
    if (unread.peek()) return;
    notKept.value = keepLifters(lifters.peek());
  };
  /** One step, kept at once: another tab then never has older lifters. */
  const step = (next: Lifters, label: string, joins: string | null = null) =>
    batch(() => {
      const before = history.peek();
      history.value = record(before, next, label, joins);
      refused.value = null;
      if (history.peek() !== before) keep();
      said.value = '';
    });

  /** @returns whether the name was taken */
  const add = (written: string): boolean => {
    const { all, nextId } = lifters.peek();
    const refusal =
      all.length >= MOST_LIFTERS
        ? { value: written, expected: `at most ${MOST_LIFTERS} lifters`, remedy: null }
        : refuseName(lifters.peek(), written);
    refused.value = refusal && { where: 'new', refusal };
    if (refusal) return false;
    return batch(() => {
      step(addLifter(lifters.peek(), written, all.at(-1)?.unit ?? 'kg'), `add ${written.trim()}`);
      fold(nextId, true);
      said.value = `${nameOf(nextId)} was added.`;
      focusOn(`lifter-${nextId}-unit`);
      return true;
    });
  };
  const rename = (id: number, written: string) => {
    const refusal = refuseName(lifters.peek(), written, id);
    refused.value = refusal && { where: id, refusal };
    if (!refusal) step(changeLifter(lifters.peek(), id, { name: written }), `rename ${nameOf(id)}`);
  };
  const setUnit = (id: number, unit: WeightUnit) => {
    step(changeUnit(lifters.peek(), id, unit), `change the unit of ${nameOf(id)}`);
    said.value = `Loads of ${nameOf(id)} are in ${unit} now; each 1RM is the weight that it was, and the steps are the usual ones.`;
  };
  const setStep = (id: number, written: string) =>
    step(changeLifter(lifters.peek(), id, { step: written }), `change the step of ${nameOf(id)}`, `${id} step`);
  const setMaximum = (id: number, exercise: string, part: Partial<Pick<OneRm, 'weight' | 'step'>>) => {
    const what = part.weight === undefined ? 'step' : '1RM';
    const label = `change the ${what} of ${nameOf(id)} in ${exercise}`;
    step(setOneRm(lifters.peek(), id, exercises(), exercise, part), label, `${id} ${what} ${exercise}`);
  };
  /** @returns whether it was taken */
  const listExercise = (id: number, written: string): boolean => {
    if (exerciseKey(exercises(), written) === '') return false;
    const exercise = nameExercise(exercises(), written);
    step(setOneRm(lifters.peek(), id, exercises(), exercise, {}), `list ${exercise} for ${nameOf(id)}`);
    said.value = `${exercise} stands with ${nameOf(id)}.`;
    focusOn(idOfMaximum(id, exercise));
    return true;
  };
  const dropExercise = (id: number, exercise: string) => {
    step(removeOneRm(lifters.peek(), id, exercises(), exercise), `remove ${exercise} of ${nameOf(id)}`);
    said.value = `${exercise} was removed; undo below the list brings it back.`;
    focusOn(`lifter-${id}-other`);
  };
  const remove = (id: number) => {
    const name = nameOf(id);
    step(removeLifter(lifters.peek(), id), `remove ${name}`);
    said.value = `${name} was removed; undo brings them back.`;
    focusOn('lifters');
  };
  const forget = () => {
    step({ ...lifters.peek(), all: [] }, 'forget all lifters');
    said.value = 'Nothing of them is kept any more; undo brings them back until this page is left.';
    focusOn('lifters');
  };
  const take = (opened: Lifters, name: string, way: 'replace' | 'beside') => {
    const next = way === 'replace' ? opened : mergeLifters(lifters.peek(), opened, exercises());
    if (next.all.length > MOST_LIFTERS) return `more than ${MOST_LIFTERS} lifters would stand here`;
    step(next, `open ${name}`);
    said.value = `${name} was opened: ${countOf(next.all.length, 'lifter stands', 'lifters stand')} here.`;
    focusOn('lifters');
    return null;
  };
  const save = () => saveFile({ name: 'lifters.csv', type: 'text/csv', text: writeLifters(lifters.peek()) });

  const steps = createSteps(history, said, () => {
    refused.value = null;
    keep();
  });

  const takeStored = (kept: Kept) => {
    unread.value = kept.kind === 'unread' ? kept : null;
    notKept.value = kept.kind === 'denied' ? 'it keeps nothing for this site' : null;
    return kept.kind === 'read' ? kept.lifters : NO_LIFTERS;
  };
  const connect = () => {
    const found = takeStored(readStore());
    history.value = startHistory(found);
    if (found.all.length === 1) fold(found.all[0].id, true);
    const follow = ({ key, newValue }: StorageEvent) => {
      if (key !== LIFTERS_STORE && key !== null) return;
      const next = takeStored(takeKept(key === null ? null : newValue));
      history.value = record(history.peek(), next, 'what was changed in another tab');
      refused.value = null;
    };
    addEventListener('storage', follow);
    const stop = followFocus(focus);
    return () => {
      removeEventListener('storage', follow);
      stop();
    };
  };
  /** What could not be read goes, and the lifters that stand here are kept in its place. */
  const dropUnread = () => {
    unread.value = null;
    keep();
    said.value = 'What could not be read was removed.';
    focusOn('lifters');
  };
  const saveUnread = () =>
    saveFile({ name: 'lifters-not-read.txt', type: 'text/plain', text: unread.peek()?.text ?? '' });
  return {
    history,
    lifters,
    said,
    refused,
    unfolded,
    unread,
    notKept,
    focusOn,
    fold,
    add,
    rename,
    setUnit,
    setStep,
    setMaximum,
    listExercise,
    dropExercise,
    remove,
    forget,
    take,
    save,
    dropUnread,
    saveUnread,
    ...steps,
    connect,
  };
}

export type LiftersState = ReturnType<typeof createLifters>;

/** Id of the entry of a 1RM. */
export function idOfMaximum(id: number, exercise: string, part: '1rm' | 'step' = '1rm'): string {
  return `lifter-${id}-${part}-${exercise.replace(/[^\p{L}\p{N}]+/gu, '-')}`;
}
