/** State of the sheets: which version and lifter they are of, what is judged of them, and what is being printed. */
import { computed, effect, signal } from '@preact/signals';
import { stateByLifter } from '../../../figures/lifterFindings.ts';
import type { LifterLines } from '../../../practice/lifters/judge.ts';
import { plannedLoad } from '../../../practice/lifters/planned.ts';
import { weeksOf } from '../../../practice/lifters/sheet.ts';
import type { EditorLine, LineList } from '../../../practice/programme/edit.ts';
import type { VersionName } from '../editing.state.ts';
import type { ProgrammeState } from '../programme.state.ts';
import { type Asked, createJudging } from './judging.state.ts';
import type { LiftersState } from './lifters.state.ts';

/** What a print is of, when it is not of the programme. */
export type Paper = 'one' | 'all';

export function createSheets(programme: ProgrammeState, { lifters }: LiftersState) {
  const { draft, exercises, checking } = programme;
  const chosenVersion = signal<VersionName>('second');
  const chosenLifter = signal<number | null>(null);
  /** Where there is no second version, it is the first. */
  const version = computed<VersionName>(() => (draft.value.second ? chosenVersion.value : 'first'));
  const hasSecond = computed(() => draft.value.second !== null);
  const list = computed<LineList>(() => draft.value[version.value] ?? draft.value.first);
  const asked = computed<Asked>(() => {
    const { first, second, calendar } = draft.value;
    return {
      input: { lifters: lifters.value.all, exercises: exercises.value, status: calendar.status },
      first,
      second,
    };
  });
  const by = computed(() =>
    lifters.value.all.length === 0 || checking.awaitsOwn.value ? null : checking.made.value.by,
  );
  const judging = createJudging(asked, by);
  /** Of the version that is chosen, by lifter. */
  const judged = computed<readonly LifterLines[]>(() => judging.judged.value?.[version.value] ?? []);
  const shown = computed<LifterLines | null>(
    () => judged.value.find(({ lifter }) => lifter.id === chosenLifter.value) ?? judged.value[0] ?? null,
  );
  /** What was asked to be printed while its lines are still being judged. */
  const awaited = signal<Paper | null>(null);
  /** Another object for each print. */
  const paper = signal<{ readonly of: Paper } | null>(null);
  const pages = computed(() => weeksOf(shown.value?.lines ?? []).length);
  /** Whether there are sheets to come of what stands on the page. */
  const isAwaited = computed(
    () => lifters.value.all.length > 0 && judging.problem.value === null && !judging.isCurrent.value,
  );
  const canPrint = computed(() => (judging.isCurrent.value ? pages.value > 0 : isAwaited.value));

  /** What is said of lines whose load is a weight, as long as they are those that were judged. */
  const sentences = computed(() => {
    const made = judging.judged.value;
    const of = (which: VersionName) => sayOf(draft.value[which], made?.of[which] ?? null, made?.[which] ?? []);
    return { first: of('first'), second: of('second') };
  });
  const connect = () => {
    const disconnect = judging.connect();
    const stop = effect(() => {
      programme.ofLifters.value = sentences.value;
    });
    const stopAwaiting = effect(() => {
      const of = awaited.value;
      if (of === null) return;
      if (judging.isCurrent.value && pages.value > 0) paper.value = { of };
      else if (isAwaited.value) return;
      awaited.value = null;
    });
    const done = () => {
      paper.value = null;
    };
    addEventListener('afterprint', done);
    return () => {
      removeEventListener('afterprint', done);
      stopAwaiting();
      stop();
      programme.ofLifters.value = null;
      disconnect();
    };
  };
  return {
    version,
    hasSecond,
    list,
    judged,
    shown,
    pages,
    canPrint,
    isCurrent: judging.isCurrent,
    problem: judging.problem,
    retry: judging.retry,
    awaited,
    paper,
    chooseVersion: (which: VersionName) => {
      chosenVersion.value = which;
    },
    chooseLifter: (id: number) => {
      chosenLifter.value = id;
    },
    /** At once, or as soon as what stands on the page has been judged. */
    print: (of: Paper) => {
      if (canPrint.peek()) awaited.value = of;
    },
    connect,
  };
}

export type SheetsState = ReturnType<typeof createSheets>;

function sayOf(now: LineList | null, of: LineList | null, judged: readonly LifterLines[]) {
  const then = new Set<EditorLine>(of?.lines);
  const said = new Map<number, readonly string[]>();
  for (const line of now?.lines ?? []) {
    const load = then.has(line) ? plannedLoad(line.cells) : null;
    if (!load || load.unit === '%') continue;
    const all = judged.flatMap(({ lifter: { name }, lines }) =>
      lines.filter(({ id }) => id === line.id).map((one) => ({ name, line: one })),
    );
    if (all.length > 0) said.set(line.id, stateByLifter(all));
  }
  return said;
}
