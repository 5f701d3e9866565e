/** The worker that says what one more study would do, as a page has it. */
import { callWorker, type WorkerCalls } from '../../ui/workerCalls.ts';
import type { PlanningOperations } from './planningWorker.ts';

export function openPlanningCalls(): WorkerCalls<PlanningOperations> {
  return callWorker<PlanningOperations>(
    () => new Worker(new URL('./planningWorker.ts', import.meta.url), { type: 'module' }),
  );
}
