/** The worker that computes, as a page has it: what it can be asked, and its end. */
import type { WorkerReply, WorkerRequest } from './analysisWorker.ts';

export interface Calculation {
  readonly ask: (request: WorkerRequest) => void;
  readonly end: () => void;
}

/**
 * @param take what to do with a reply
 * @param fail what to do where the worker cannot run in this browser
 */
export function startCalculation(take: (reply: WorkerReply) => void, fail: (reason: string) => void): Calculation {
  const worker = new Worker(new URL('./analysisWorker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<WorkerReply>) => take(data));
  worker.addEventListener('error', () => fail('the calculation could not be started in this browser'));
  return { ask: (request) => worker.postMessage(request), end: () => worker.terminate() };
}
