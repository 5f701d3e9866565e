/** The robustness sweep in a worker, in steps, so that it can report progress and be stopped. */
import { type Sweep, type SweepProgress, sweepChoices } from '../../model/checks/sweep.ts';
import type { Tools } from '../../ui/workerAnswers.ts';
import type { Operation } from '../../ui/workerCalls.ts';
import { type Asked, loadArms } from './loadArms.ts';

export type SweepOperation = Operation<Asked, Sweep, SweepProgress>;

export async function answerSweep(
  { table, settings }: Asked,
  { report, signal }: Tools<SweepOperation>,
): Promise<Sweep> {
  const steps = sweepChoices(await loadArms(table), settings);
  let step = steps.next();
  while (!step.done) {
    report(step.value);
    // Lets other requests, and the wish to stop, come in between.
    await new Promise((resolve) => setTimeout(resolve));
    signal.throwIfAborted();
    step = steps.next();
  }
  return step.value;
}
