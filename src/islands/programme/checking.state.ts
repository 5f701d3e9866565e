/** State of the report on a programme: what a worker made of the newest text, by the table that is read. */
import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { PracticeAnalysis } from '../../model/full.ts';
import { ownVersionOf } from '../../ownTable/tableInUse.ts';
import { type ProgrammeInput, type ProgrammeReport, reportProgramme } from '../../practice/programme/report.ts';
import { callWorker } from '../../ui/workerCalls.ts';
import { openCalculation } from '../analysis/calculation.ts';
import type { ProgrammeOperations } from './programmeWorker.ts';

/** Milliseconds without a keystroke after which a programme is checked. */
const REST = 300;

/**
 * @param start analysis of the site's table, as the page was built
 * @param table address of the table that is read
 * @param keep called with every text that is checked
 */
export function createChecking(
  start: PracticeAnalysis,
  input: ReadonlySignal<ProgrammeInput>,
  table: string,
  keep: () => void,
) {
  const isOwn = ownVersionOf(table) !== null;
  /** What checks are made by; null until the reader's own table was worked out. */
  const wanted = signal<PracticeAnalysis | null>(isOwn ? null : start);
  /** The report with the analysis that it was made by. */
  const made = signal<{ readonly report: ProgrammeReport; readonly by: PracticeAnalysis }>({
    report: reportProgramme(start, input.peek()),
    by: start,
  });
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
  const checker = callWorker<ProgrammeOperations>(
    () => new Worker(new URL('./programmeWorker.ts', import.meta.url), { type: 'module' }),
  );

  const fail = (reason: string) => {
    pending.value = false;
    problem.value = reason;
  };
  const readOwn = () => {
    pending.value = true;
    const asked = { table, settings: start.settings };
    calculation.ask('practice', asked, {
      take: (analysis) => {
        wanted.value = analysis;
        calculation.end();
      },
      fail,
    });
  };
  /** @param isRestored true where the text is not the one that the page was built with */
  const connect = (isRestored: boolean) => {
    /** The analysis that the worker has. */
    let sent: PracticeAnalysis | null = null;
    let cancel = () => {};
    let rest: ReturnType<typeof setTimeout> | undefined;
    const check = (by: PracticeAnalysis, text: ProgrammeInput) => {
      keep();
      cancel = checker.ask(
        'check',
        { analysis: sent === by ? null : by, input: text },
        {
          take: (report) => {
            pending.value = false;
            made.value = { report, by };
          },
          fail: (reason) => {
            // Another worker, where one has to be started, has nothing yet.
            sent = null;
            fail(reason);
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
    let checked = { text: isRestored ? null : input.peek(), by: start, tries: 0 };
    const stop = effect(() => {
      const by = wanted.value;
      const now = { text: input.value, by: by ?? start, tries: tries.value };
      if (!by || (now.text === checked.text && by === checked.by && now.tries === checked.tries)) return;
      checked = now;
      pending.value = true;
      problem.value = null;
      // From here on a reply is about what stood before.
      cancel();
      clearTimeout(rest);
      rest = setTimeout(() => check(by, now.text), REST);
    });
    return () => {
      clearTimeout(rest);
      stop();
      stopReading();
      calculation.end();
      checker.end();
    };
  };
  const retry = () => {
    tries.value++;
  };
  return { made, pending, problem, awaitsOwn, isShown, retry, connect };
}
