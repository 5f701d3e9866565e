/**
 * Work that need not be done at once, one piece after the other, each in a task of its own: between two of them the
 * browser answers who scrolls, types or moves a control.
 */
import { useEffect, useState } from 'preact/hooks';

type Job = () => void;

const waiting = new Set<Job>();
let isRunning = false;

/** Does the job once it is its turn; gives what takes it out of the line. */
export function takeTurn(job: Job): () => void {
  waiting.add(job);
  if (!isRunning) {
    isRunning = true;
    setTimeout(runNext);
  }
  return () => {
    waiting.delete(job);
  };
}

function runNext(): void {
  const [job] = waiting;
  if (!job) {
    isRunning = false;
    return;
  }
  waiting.delete(job);
  // What one job throws must not keep the others from their turn.
  setTimeout(runNext);
  job();
}

/** True once it was this component's turn to show what it was given; what is given anew waits anew. */
export function useTurn(given: unknown): boolean {
  const [shown, setShown] = useState<unknown>(undefined);
  useEffect(() => takeTurn(() => setShown(given)), [given]);
  return shown === given;
}
