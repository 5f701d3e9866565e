/** State of a run: tables that a worker draws and fits, shown as they come, and the first of them to look at. */
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { DescribedTable } from '../../model/drawnTable.ts';
import { callWorker } from '../../ui/workerCalls.ts';
import { cellOf, curvesOf, type Experiment, TABLES, writeExperiment } from './experiment.ts';
import type { Answers, IntervalsOperations } from './intervalsWorker.ts';

/** What was drawn and fitted; all of it, or as much as there is so far. */
export interface Run {
  readonly experiment: Experiment;
  readonly answers: Answers;
  readonly table: DescribedTable;
}

/** @param start a whole run, as the build made it */
export function createRunning(start: Run) {
  const run = signal<Run>(start);
  const wanted = signal(start.experiment);
  /** Whether what is shown is still what was drawn before: of what is wanted there is no table yet. */
  const isFormer = computed(() => !isSame(run.value.experiment, wanted.value));
  /** Tables there are of what is wanted. */
  const drawn = computed(() => (isFormer.value ? 0 : run.value.answers.length));
  const isRunning = signal(false);
  /** True where a run was stopped before its end. */
  const isStopped = signal(false);
  const problem = signal<string | null>(null);
  const calculation = callWorker<IntervalsOperations>(
    () => new Worker(new URL('./intervalsWorker.ts', import.meta.url), { type: 'module' }),
  );
  let cancel = () => {};

  /** @param finish called when all tables are there */
  const draw = (experiment: Experiment, finish: () => void = () => undefined) => {
    cancel();
    wanted.value = experiment;
    problem.value = null;
    isStopped.value = false;
    if (isWhole(run.peek(), experiment)) {
      isRunning.value = false;
      finish();
      return;
    }
    isRunning.value = true;
    const fail = (reason: string) => {
      isRunning.value = false;
      problem.value = reason;
    };
    const asked = { cell: cellOf(experiment), curves: curvesOf(experiment), seed: experiment.seed };
    const take = (table: DescribedTable) => {
      run.value = { experiment, answers: [], table };
      const stop = calculation.ask(
        'run',
        { ...asked, tables: TABLES },
        {
          progress: (fresh) => {
            run.value = { ...run.peek(), answers: [...run.peek().answers, ...fresh] };
          },
          take: () => {
            isRunning.value = false;
            finish();
          },
          fail,
        },
      );
      cancel = stop;
    };
    cancel = calculation.ask('look', asked, { take, fail });
  };
  const stop = () => {
    cancel();
    isStopped.value = isRunning.peek();
    isRunning.value = false;
  };
  const end = () => {
    cancel();
    isRunning.value = false;
    calculation.end();
  };
  return { run: run as ReadonlySignal<Run>, drawn, isFormer, isRunning, isStopped, problem, draw, stop, end };
}

export type Running = ReturnType<typeof createRunning>;

function isWhole({ experiment, answers }: Run, asked: Experiment): boolean {
  return answers.length === TABLES && isSame(experiment, asked);
}

function isSame(one: Experiment, other: Experiment): boolean {
  return writeExperiment(one) === writeExperiment(other);
}
