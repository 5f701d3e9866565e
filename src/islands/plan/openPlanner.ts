/** The worker that plans, as the page has it. */
import { callWorker, type WorkerCalls } from '../../ui/workerCalls.ts';
import type { PlanOperations } from './planWorker.ts';

export type Planner = WorkerCalls<PlanOperations>;

export function openPlanner(): Planner {
  return callWorker<PlanOperations>(() => new Worker(new URL('./planWorker.ts', import.meta.url), { type: 'module' }));
}
