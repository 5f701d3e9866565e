/** The worker that computes, as a page has it. */
import { callWorker, type WorkerCalls } from '../../ui/workerCalls.ts';
import type { AnalysisOperations } from './analysisWorker.ts';

export type Calculation = WorkerCalls<AnalysisOperations>;

export function openCalculation(): Calculation {
  return callWorker<AnalysisOperations>(
    () => new Worker(new URL('./analysisWorker.ts', import.meta.url), { type: 'module' }),
  );
}
