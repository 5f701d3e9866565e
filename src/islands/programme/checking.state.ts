/** State of the report on a programme: what a worker made of the newest lines, by the table that is read. */
import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { PracticeAnalysis } from '../../model/full.ts';
import { ownVersionOf } from '../../ownTable/tableInUse.ts';
import type { ProgrammeInput, ProgrammeReport } from '../../practice/programme/report.ts';
import type { ResolvedList } from '../../practice/programme/resolve.ts';
import { takeNewestOnly } from '../../ui/newestOnly.ts';
import { callWorker } from '../../ui/workerCalls.ts';
import { openCalculation } from '../analysis/calculation.ts';
import type { ProgrammeOperations } from './programmeWorker.ts';

/** Milliseconds without a keystroke after which a programme is checked: a verdict is to stand there within 100. */
const REST = 10;

/** What is checked, and which lines its texts are of. */
export interface CheckedInput {
  readonly input: ProgrammeInput;
  readonly first: ResolvedList;
  readonly second: ResolvedList | null;
}

export interface MadeReport {
  readonly report: ProgrammeReport;
  /** The analysis that it was made by. */
  readonly by: PracticeAnalysis;
  readonly of: CheckedInput;
}

/**
 * @param start analysis of the site's table, as the page was built
 * @param table address of the table that is read
 * @param built report that the build made of what is asked first, by `start`
 */
export function createChecking(
  start: PracticeAnalysis,
  asked: ReadonlySignal<CheckedInput>,
  table: string,
  built: ProgrammeReport,
) {
  const isOwn = ownVersionOf(table) !== null;
  /** What checks are made by; null until the reader's own table was worked out. */
  const wanted = signal<PracticeAnalysis | null>(isOwn ? null : start);
  const atFirst: MadeReport = { report: built, by: start, of: asked.peek() };
  const made = signal(atFirst);
  const pending = signal(false);
  /** Why the programme as it stands is not checked. */
  const problem = signal<string | null>(null);
  /** True while the reader's own table is meant and the report is by the site's. */
  const awaitsOwn = computed(() => isOwn && made.value.by === start);
  /** True where the report is by the table that is read, of a programme that could be checked. */
  const isShown = computed(() => problem.value === null && !awaitsOwn.value);
  /** Raised to have everything asked for again. */
  const tries = signal(0);
  const calculation = openCalculation();
  const worker = callWorker<ProgrammeOperations>(
    () => new Worker(new URL('./programmeWorker.ts', import.meta.url), { type: 'module' }),
  );

  const fail = (reason: string) => {
    pending.value = false;
    problem.value = reason;
  };
  const readOwn = () => {
    pending.value = true;
    calculation.ask(
      'practice',
      { table, settings: start.settings },
      {
        take: (analysis) => {
          wanted.value = analysis;
          calculation.end();
        },
        fail,
      },
    );
  };
  /** @param isRestored true where the programme is not the one that the page was built with */
  const connect = (isRestored: boolean) => {
    /** The analysis that the worker has. */
    let sent: PracticeAnalysis | null = null;
    const requests = takeNewestOnly(REST);
    const check = (by: PracticeAnalysis, of: CheckedInput, done: () => void) => {
      worker.ask(
        'check',
        { analysis: sent === by ? null : by, input: of.input },
        {
          take: (report) => {
            // A reply about what stood before is not shown.
            if (of === asked.peek() && by === wanted.peek()) {
              pending.value = false;
              made.value = { report, by, of };
            }
            done();
          },
          fail: (reason) => {
            // Another worker, where one has to be started, has nothing yet.
            sent = null;
            fail(reason);
            done();
          },
        },
      );
      sent = by;
    };
    const stopReading = effect(() => {
      void tries.value;
      if (wanted.peek() !== null) return;
      problem.value = null;
      readOwn();
    });
    let checked = { of: isRestored ? null : asked.peek(), by: start, tries: 0 };
    const stop = effect(() => {
      const by = wanted.value;
      const now = { of: asked.value, by: by ?? start, tries: tries.value };
      if (!by || (now.of === checked.of && by === checked.by && now.tries === checked.tries)) return;
      checked = now;
      pending.value = true;
      problem.value = null;
      requests.ask((done) => check(by, now.of, done));
    });
    return () => {
      requests.hold();
      stop();
      stopReading();
      calculation.end();
      worker.end();
    };
  };
  const retry = () => {
    tries.value++;
  };
  return { made, atFirst, pending, problem, awaitsOwn, isShown, retry, connect, worker };
}
