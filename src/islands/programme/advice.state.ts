/** State of the advice: what applying it does to version two, and what is told of that. */
import { batch, computed, type ReadonlySignal, signal } from '@preact/signals';
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import { applyAdvice, makeMoveIn, makeMoves } from '../../practice/programme/applyAdvice.ts';
import type { Draft } from '../../practice/programme/draft.ts';
import type { CheckedLine } from '../../practice/programme/line.ts';
import type { ListReport } from '../../practice/programme/lineReports.ts';
import { type AppliedWords, sayApplied, sayCounts } from './appliedWords.ts';
import type { CheckedInput, createChecking } from './checking.state.ts';
import type { Editing, VersionName } from './editing.state.ts';

/** What applying the advice did, as long as version two comes of it. */
interface Applied extends AppliedWords {
  readonly draft: Draft;
}

export function createAdvice(
  editing: Editing,
  checking: ReturnType<typeof createChecking>,
  asked: ReadonlySignal<CheckedInput>,
  exercises: ReadonlySignal<readonly NamedExercise[]>,
  reports: ReadonlySignal<Readonly<Record<VersionName, ListReport | null>>>,
) {
  const { draft, history } = editing;
  const applied = signal<Applied | null>(null);
  /** What applying the advice did; null once that is undone. */
  const shownApplied = computed(() => {
    const one = applied.value;
    const { past, present } = history.value;
    return one && (one.draft === present || past.some(({ state }) => state === one.draft)) ? one : null;
  });
  /** Asked for while the lines as they stand were not checked yet: done with their check. */
  let waits: { readonly only: number | null } | null = null;
  /** @param only id of a line of version one; null for all of it */
  const apply = (only: number | null) => {
    if (checking.made.peek().of === asked.peek() || !checking.pending.peek()) applyNow(only);
    else waits = { only };
  };
  const applyWaiting = () => {
    if (!waits || checking.made.peek().of !== asked.peek()) return;
    const { only } = waits;
    waits = null;
    applyNow(only);
  };
  const applyNow = (only: number | null) =>
    batch(() => {
      const now = draft.peek();
      // Of a line that was changed since there is no check.
      const current = new Set(checking.made.peek().of === asked.peek() ? now.first.lines.map(({ id }) => id) : []);
      const checked = new Map<number, CheckedLine>();
      for (const [id, one] of reports.peek().first?.byId ?? []) {
        if (one.checked && one.problems.length === 0 && current.has(id)) checked.set(id, one.checked);
      }
      const found = applyAdvice(now.first, exercises.peek(), checked, only);
      const line = now.first.lines.find(({ id }) => id === only);
      const list =
        line && now.second
          ? found.moves.reduce((version, move) => makeMoveIn(version, line, move), now.second)
          : makeMoves(now.first, found.moves);
      const number = now.first.lines.findIndex(({ id }) => id === only) + 1;
      // A line that stays as it is changes nothing of version two.
      const isStep = only === null || found.moves.length > 0;
      if (isStep) {
        editing.setList('second', list, only === null ? 'apply the advice' : `apply the advice for line ${number}`);
      }
      applied.value = { ...sayApplied(found), draft: draft.peek() };
      const words = sayCounts(found, draft.peek().second !== null);
      if (isStep) editing.say(words);
      else editing.tell(words);
      editing.focusOn('applied');
    });
  const restore = (words: AppliedWords, kept: Draft) => {
    applied.value = { ...words, draft: kept };
  };
  const close = () => {
    applied.value = null;
    editing.focusOn('version-second');
  };
  return { applied: shownApplied, apply, restore, close, connect: () => checking.made.subscribe(applyWaiting) };
}
