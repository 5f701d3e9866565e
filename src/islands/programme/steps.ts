/** Back and forth among steps, said aloud, by buttons or by the usual keys; and the focus where a step has put it. */
import { effect, type ReadonlySignal, type Signal } from '@preact/signals';
import { type History, redo, undo } from '../../practice/programme/history.ts';
import { focusOn } from '../../ui/focusOn.ts';

/** @param then what is done once the steps stand elsewhere */
export function createSteps<State>(history: Signal<History<State>>, said: Signal<string>, then = () => {}) {
  const go = (way: typeof undo<State>, word: string, label: string | undefined) => {
    if (label === undefined) {
      said.value = `Nothing to be ${word}.`;
      return;
    }
    history.value = way(history.peek());
    then();
    said.value = `${word === 'undone' ? 'Undone' : 'Done again'}: ${label}.`;
  };
  return {
    undo: () => go(undo, 'undone', history.peek().past.at(-1)?.label),
    redo: () => go(redo, 'done again', history.peek().future.at(-1)?.label),
  };
}

/** Ctrl+Z, and Ctrl+Shift+Z or Ctrl+Y; on a Mac Cmd for Ctrl. Other keys are left alone. */
export function takeStep(event: KeyboardEvent, steps: Pick<ReturnType<typeof createSteps>, 'undo' | 'redo'>): void {
  const key = event.key.toLowerCase();
  if (event.altKey || !(event.ctrlKey || event.metaKey) || (key !== 'z' && key !== 'y')) return;
  event.preventDefault();
  if (key === 'y' || event.shiftKey) steps.redo();
  else steps.undo();
}

/** @returns the way to end it */
export function followFocus(focus: ReadonlySignal<{ readonly id: string } | null>): () => void {
  return effect(() => {
    const wanted = focus.value;
    if (wanted) focusOn(wanted.id);
  });
}
