/** State of what a worker makes of the lifters' loads: of the newest lines and lifters only. */
import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { PracticeAnalysis } from '../../../model/full.ts';
import { takeNewestOnly } from '../../../ui/newestOnly.ts';
import { callWorker } from '../../../ui/workerCalls.ts';
import type { JudgeAsked, JudgedVersions, LiftersOperations } from './liftersWorker.ts';

/** Milliseconds without a change after which loads are judged: one of the lines' own verdicts comes before. */
const REST = 60;

export type Asked = Omit<JudgeAsked, 'analysis'>;

export interface Judged extends JudgedVersions {
  readonly of: Asked;
  readonly by: PracticeAnalysis;
}

/** @param by the analysis of the table that is read; null while it is not known */
export function createJudging(asked: ReadonlySignal<Asked>, by: ReadonlySignal<PracticeAnalysis | null>) {
  const judged = signal<Judged | null>(null);
  const problem = signal<string | null>(null);
  /** Raised to ask again. */
  const tries = signal(0);
  /** True where what is shown is of what stands on the page. */
  const isCurrent = computed(
    () => judged.value?.of === asked.value && judged.value.by === by.value && problem.value === null,
  );
  const worker = callWorker<LiftersOperations>(
    () => new Worker(new URL('./liftersWorker.ts', import.meta.url), { type: 'module' }),
  );

  const connect = () => {
    /** The analysis that the worker has. */
    let sent: PracticeAnalysis | null = null;
    const requests = takeNewestOnly(REST);
    const ask = (analysis: PracticeAnalysis, of: Asked, done: () => void) => {
      worker.ask(
        'judge',
        { ...of, analysis: sent === analysis ? null : analysis },
        {
          take: (found) => {
            if (of === asked.peek() && analysis === by.peek()) judged.value = { ...found, of, by: analysis };
            done();
          },
          fail: (reason) => {
            // Another worker, where one has to be started, has nothing yet.
            sent = null;
            problem.value = reason;
            done();
          },
        },
      );
      sent = analysis;
    };
    const stop = effect(() => {
      const analysis = by.value;
      const of = asked.value;
      void tries.value;
      requests.hold();
      if (!analysis) {
        judged.value = null;
        return;
      }
      problem.value = null;
      requests.ask((done) => ask(analysis, of, done));
    });
    return () => {
      requests.hold();
      stop();
      worker.end();
    };
  };
  const retry = () => {
    tries.value++;
  };
  return { judged, isCurrent, problem, retry, connect };
}
