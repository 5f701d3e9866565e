/**
 * State of the programme check: two versions as lines, the exercises that the reader described, and the
 * calendar. Nothing leaves the browser; all of it outlives a reload of the tab.
 */
import { batch, computed, effect, signal } from '@preact/signals';
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import { type Exercise, plainName } from '../../evidence/exercises.ts';
import type { Problem } from '../../evidence/problem.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import { type AppliedAdvice, applyAdvice, makeMoveIn, makeMoves } from '../../practice/programme/applyAdvice.ts';
import { writeDay } from '../../practice/programme/columns.ts';
import { fromCsv, toCsv } from '../../practice/programme/csvView.ts';
import { type Draft, fromSaved, writeDraft } from '../../practice/programme/draft.ts';
import { addLine, type LineList, NO_LINES } from '../../practice/programme/edit.ts';
import type { CheckedLine } from '../../practice/programme/line.ts';
import { type ListReport, reportLines, resolveBegun } from '../../practice/programme/lineReports.ts';
import type { SavedProgramme } from '../../practice/programme/saved.ts';
import { saveFile } from '../../ui/saveFile.ts';
import { type CheckedInput, createChecking } from './checking.state.ts';
import { createEditing, type VersionName } from './editing.state.ts';
import { keep, readKept } from './keptProgramme.ts';
import { type OfLifters, withLifters } from './ofLifters.ts';
import { createOpening } from './opening.state.ts';

/** Milliseconds after the last change at which the draft is kept. */
const KEEP_AFTER = 300;

/** What applying the advice did, as long as version two comes of it. */
interface Applied extends AppliedAdvice {
  readonly draft: Draft;
}

/** A version's text as it is being typed, and the list that it made; null where it could not be read. */
interface TypedText {
  readonly text: string;
  readonly list: LineList | null;
  readonly problems: readonly Problem[];
}

/** @param table address of the table that is read */
export function createProgramme(
  start: PracticeAnalysis,
  listed: readonly NamedExercise[],
  example: SavedProgramme,
  table: string,
) {
  const shown = fromSaved(example);
  if (shown.problem !== null) throw new Error(`the worked example: ${shown.problem}`);
  const editing = createEditing(shown.draft);
  const { draft, history } = editing;
  const own = computed(() => draft.value.exercises);
  const exercises = computed<readonly NamedExercise[]>(() => [...own.value, ...listed]);
  const firstList = computed(() => draft.value.first);
  const secondList = computed(() => draft.value.second);
  const calendar = computed(() => draft.value.calendar);
  const first = computed(() => resolveBegun(firstList.value, exercises.value));
  const second = computed(() => secondList.value && resolveBegun(secondList.value, exercises.value));
  const asked = computed<CheckedInput>(() => ({
    input: {
      first: first.value.text,
      second: second.value?.text ?? null,
      exercises: exercises.value,
      calendar: calendar.value,
    },
    first: first.value,
    second: second.value,
  }));
  const checking = createChecking(start, asked, table);
  const opening = createOpening(editing, exercises, checking.worker);
  const ofLifters = signal<OfLifters | null>(null);
  /** Another object each time that the lifters are asked for; null before. */
  const liftersAsked = signal<object | null>(null);
  /** What is said of the lines of each version. */
  const reports = computed((): Readonly<Record<VersionName, ListReport | null>> => {
    const { report, of } = checking.made.value;
    const said = ofLifters.value;
    return {
      first: withLifters(reportLines(report.first, of.first), said?.first),
      second: report.second && of.second ? withLifters(reportLines(report.second, of.second), said?.second) : null,
    };
  });

  const applied = signal<Applied | null>(null);
  /** What applying the advice did; null once that is undone. */
  const shownApplied = computed(() => {
    const one = applied.value;
    const { past, present } = history.value;
    return one && (one.draft === present || past.some(({ state }) => state === one.draft)) ? one : null;
  });
  /** @param only id of a line of version one; null for all of it */
  const apply = (only: number | null) =>
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
      if (only === null || found.moves.length > 0) {
        editing.setList('second', list, only === null ? 'apply the advice' : `apply the advice for line ${number}`);
      }
      applied.value = { ...found, draft: draft.peek() };
      editing.say(
        `Version two: ${found.moves.length} changed, ${found.left.length + found.unchecked.length} left as they are.`,
      );
      editing.focusOn('applied');
    });

  const typed = signal<Readonly<Record<VersionName, TypedText | null>>>({ first: null, second: null });
  /** The text of a version: as it is being typed, as long as the lines are those that it made. */
  const textOf = (which: VersionName): TypedText => {
    const one = typed.value[which];
    const list = (which === 'first' ? firstList.value : secondList.value) ?? NO_LINES;
    return one && (one.list === null || one.list === list) ? one : { text: toCsv(list), list, problems: [] };
  };
  const setText = (which: VersionName, text: string) =>
    batch(() => {
      const before = draft.peek()[which] ?? NO_LINES;
      const { list, problems } = text.trim() === '' ? { list: NO_LINES, problems: [] } : fromCsv(text, 'text', before);
      if (list)
        editing.setList(
          which,
          list,
          `change the text of version ${which === 'first' ? 'one' : 'two'}`,
          `${which} text`,
        );
      typed.value = { ...typed.peek(), [which]: { text, list: list && (draft.peek()[which] ?? NO_LINES), problems } };
    });

  const describe = (exercise: Exercise) => {
    const others = own.peek().filter(({ name }) => plainName(name) !== plainName(exercise.name));
    editing.change({ exercises: [...others, exercise] }, `describe ${exercise.name}`);
  };
  const setCalendar = (part: Partial<Draft['calendar']>) =>
    editing.change({ calendar: { ...calendar.peek(), ...part } }, 'change the calendar');
  const compare = () => {
    editing.change({ second: draft.peek().first }, 'add version two');
    editing.focusOn('version-second');
  };
  const dropSecond = () => {
    editing.change({ second: null }, 'drop version two');
    editing.focusOn('compare');
  };
  const startNew = () =>
    batch(() => {
      const { nextId } = draft.peek().first;
      const list = addLine({ ...NO_LINES, nextId }, 0, { day: writeDay(1) });
      editing.change(
        { first: list, second: null, calendar: { ...calendar.peek(), event: null } },
        'start a week of your own',
      );
      editing.showPage('first', 0);
      editing.say('An empty week, with no event.');
      editing.focusOn(`first-${nextId}-exercise`);
    });
  const showExample = () => {
    editing.step(shown.draft, 'show the worked example', null, true);
    editing.say('The worked example stands here; undo brings back what was.');
  };
  const save = () => {
    saveFile({ name: 'programme.json', type: 'application/json', text: writeDraft(draft.peek()) });
  };

  const connect = () => {
    const kept = readKept();
    if (kept) editing.restore(kept);
    const disconnect = checking.connect(kept !== null);
    const close = opening.connect();
    let rest: ReturnType<typeof setTimeout> | undefined;
    /** What was kept last: the example need not be. */
    let last: Draft = kept ?? shown.draft;
    const keepNow = () => {
      clearTimeout(rest);
      if (draft.peek() === last) return;
      last = draft.peek();
      keep(last);
    };
    const stop = effect(() => {
      void draft.value;
      clearTimeout(rest);
      rest = setTimeout(keepNow, KEEP_AFTER);
    });
    // A reload right after a key loses nothing.
    addEventListener('pagehide', keepNow);
    return () => {
      removeEventListener('pagehide', keepNow);
      stop();
      // What was typed last is kept too, by whoever reads the store next.
      keepNow();
      close();
      disconnect();
    };
  };
  return {
    ...editing,
    exercises,
    checking,
    opening,
    ofLifters,
    liftersAsked,
    askForLifters: () => {
      liftersAsked.value = {};
    },
    reports,
    applied: shownApplied,
    closeApplied: () => {
      applied.value = null;
      editing.focusOn('version-second');
    },
    apply,
    textOf,
    setText,
    describe,
    setCalendar,
    compare,
    dropSecond,
    startNew,
    showExample,
    save,
    connect,
  };
}

export type ProgrammeState = ReturnType<typeof createProgramme>;
