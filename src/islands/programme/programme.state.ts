/**
 * State of the programme check: two versions as lines, the exercises that the reader described, and the
 * calendar. Nothing leaves the browser; all of it outlives a reload of the tab.
 */
import { batch, computed, effect, signal } from '@preact/signals';
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import { type Exercise, plainName } from '../../evidence/exercises.ts';
import type { Problem } from '../../evidence/problem.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import { writeDay } from '../../practice/programme/columns.ts';
import { fromCsv, toCsv } from '../../practice/programme/csvView.ts';
import { type Draft, writeDraft } from '../../practice/programme/draft.ts';
import { addLine, type LineList, NO_LINES } from '../../practice/programme/edit.ts';
import { type ListReport, reportLines, resolveBegun } from '../../practice/programme/lineReports.ts';
import { saveFile } from '../../ui/saveFile.ts';
import { createAdvice } from './advice.state.ts';
import type { WorkedExample } from './checkExample.ts';
import { type CheckedInput, createChecking } from './checking.state.ts';
import { createEditing, type VersionName } from './editing.state.ts';
import { keep, keepApplied, readApplied, readKept } from './keptProgramme.ts';
import { type OfLifters, withLifters } from './ofLifters.ts';
import { createOpening } from './opening.state.ts';
import { createWeeks } from './weeks.state.ts';

/** Milliseconds after the last change at which the draft is kept. */
const KEEP_AFTER = 300;

/** A version's text as it is being typed, and the list that it made; null where it could not be read. */
interface TypedText {
  readonly text: string;
  readonly list: LineList | null;
  readonly problems: readonly Problem[];
}

/**
 * @param example as the build read and checked it, by `start`
 * @param table address of the table that is read
 */
export function createProgramme(
  start: PracticeAnalysis,
  listed: readonly NamedExercise[],
  example: WorkedExample,
  table: string,
) {
  const editing = createEditing(example.draft);
  const { draft } = editing;
  const own = computed(() => draft.value.exercises);
  const exercises = computed<readonly NamedExercise[]>(() => [...own.value.map(asDescribed), ...listed]);
  const firstList = computed(() => draft.value.first);
  const secondList = computed(() => draft.value.second);
  const calendar = computed(() => draft.value.calendar);
  const isExample = (list: LineList | null, which: VersionName) =>
    list === example.draft[which] && own.value === example.draft.exercises;
  const first = computed(() =>
    isExample(firstList.value, 'first') ? example.first : resolveBegun(firstList.value, exercises.value),
  );
  const second = computed(() =>
    isExample(secondList.value, 'second')
      ? example.second
      : secondList.value && resolveBegun(secondList.value, exercises.value),
  );
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
  const checking = createChecking(start, asked, table, example.report);
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

  const advice = createAdvice(editing, checking, asked, exercises, reports);
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
    if (draft.peek() === example.draft) {
      editing.tell('The worked example stands here already.');
      return;
    }
    editing.step(example.draft, 'show the worked example', null, true);
    editing.say('The worked example stands here; undo brings back what was.');
  };
  const savedFile = () =>
    ({ name: 'programme.json', type: 'application/json', text: writeDraft(draft.peek()) }) as const;
  const save = () => saveFile(savedFile());

  const connect = () => {
    const kept = readKept();
    if (kept) editing.restore(kept);
    const words = kept && readApplied();
    if (words) advice.restore(words, kept);
    const disconnect = checking.connect(kept !== null);
    const close = opening.connect();
    const stopWaiting = advice.connect();
    let rest: ReturnType<typeof setTimeout> | undefined;
    /** What was kept last: the example need not be. */
    let last: Draft = kept ?? example.draft;
    let lastApplied = advice.applied.peek();
    const keepNow = () => {
      clearTimeout(rest);
      if (draft.peek() === last && advice.applied.peek() === lastApplied) return;
      lastApplied = advice.applied.peek();
      last = draft.peek();
      keep(last);
      keepApplied(advice.applied.peek());
    };
    const stop = effect(() => {
      void draft.value;
      void advice.applied.value;
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
      stopWaiting();
      disconnect();
    };
  };
  return {
    ...editing,
    weeks: createWeeks(editing),
    exercises,
    checking,
    opening,
    ofLifters,
    liftersAsked,
    askForLifters: () => {
      liftersAsked.value = {};
    },
    reports,
    applied: advice.applied,
    apply: advice.apply,
    closeApplied: advice.close,
    textOf,
    setText,
    describe,
    setCalendar,
    compare,
    dropSecond,
    startNew,
    showExample,
    save,
    savedFile,
    connect,
  };
}

/** One that was taken over from the list, as older files hold them, has its synonyms with it. */
function asDescribed(exercise: Exercise): Exercise {
  return 'synonyms' in exercise ? exercise : { ...exercise, isUnlisted: true };
}

export type ProgrammeState = ReturnType<typeof createProgramme>;
