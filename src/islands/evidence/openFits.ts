/** The worker of the Evidence page, as the page has it. */
import { callWorker, type WorkerCalls } from '../../ui/workerCalls.ts';
import type { EvidenceOperations } from './evidenceWorker.ts';

export type Fits = WorkerCalls<EvidenceOperations>;

export function openFits(): Fits {
  return callWorker<EvidenceOperations>(
    () => new Worker(new URL('./evidenceWorker.ts', import.meta.url), { type: 'module' }),
  );
}
