/**
 * Asking a worker, from the page's side. Every request has a number, so that answers find who asked; a
 * worker that fails is ended with all that waited for it told why, and the next request starts another.
 * The worker's side is workerAnswers.ts; what can be asked is a type that both name.
 *
 * A library of remote calls was tried on paper: it turns every call into a promise, which nothing settles
 * when the worker's script does not load, and leaves progress, cancelling and starting afresh to the caller.
 */

/** One thing that a worker does: what it needs, what it tells meanwhile, what it comes to. */
export interface Operation<Request = unknown, Result = unknown, Progress = unknown> {
  readonly request: Request;
  readonly result: Result;
  readonly progress: Progress;
}

export type Operations = Readonly<Record<string, Operation>>;

/** What is sent to a worker. */
export type Question =
  | { readonly id: number; readonly name: string; readonly request: unknown }
  | { readonly id: number; readonly cancel: true };

/** What comes back. Any number with progress, then one of the others, or nothing more once it was cancelled. */
export type Reply =
  | { readonly id: number; readonly progress: unknown }
  | { readonly id: number; readonly result: unknown }
  | { readonly id: number; readonly problem: string };

/** Who waits for an answer. */
export interface Waiting<Op extends Operation> {
  readonly take: (result: Op['result']) => void;
  /** @param reason why there is no result, for the reader */
  readonly fail: (reason: string) => void;
  readonly progress?: (progress: Op['progress']) => void;
}

export interface WorkerCalls<Ops extends Operations> {
  /** Asks, and gives what cancels it: after that nothing more is heard of it. */
  readonly ask: <Name extends keyof Ops & string>(
    name: Name,
    request: Ops[Name]['request'],
    waiting: Waiting<Ops[Name]>,
  ) => () => void;
  /** Ends the worker, whatever it is doing; who waits hears nothing more. A later request starts another. */
  readonly end: () => void;
}

/** @param start makes the worker, when the first request comes and after each failure */
export function callWorker<Ops extends Operations>(start: () => Worker): WorkerCalls<Ops> {
  let worker: Worker | null = null;
  let lastId = 0;
  const waiting = new Map<number, Waiting<Operation>>();

  const end = () => {
    worker?.terminate();
    worker = null;
    waiting.clear();
  };
  const failAll = (reason: string) => {
    const all = [...waiting.values()];
    end();
    for (const { fail } of all) fail(reason);
  };
  const hear = ({ data }: MessageEvent<Reply>) => {
    const asker = waiting.get(data.id);
    if (!asker) return;
    if ('progress' in data) {
      asker.progress?.(data.progress);
      return;
    }
    waiting.delete(data.id);
    if ('problem' in data) asker.fail(data.problem);
    else asker.take(data.result);
  };
  const open = (): Worker => {
    if (worker) return worker;
    worker = start();
    worker.addEventListener('message', hear);
    worker.addEventListener('error', ({ message }: ErrorEvent) => failAll(stateFailure(message)));
    worker.addEventListener('messageerror', () => failAll('what it sent could not be read'));
    return worker;
  };
  return {
    ask: (name, request, asker) => {
      const id = ++lastId;
      waiting.set(id, asker as Waiting<Operation>);
      const question: Question = { id, name, request };
      try {
        open().postMessage(question);
      } catch {
        // As where the browser reports it itself: only after whoever asks has done with asking.
        queueMicrotask(() => failAll(stateFailure('')));
      }
      return () => {
        if (!waiting.delete(id)) return;
        const cancel: Question = { id, cancel: true };
        worker?.postMessage(cancel);
      };
    },
    end,
  };
}

/** @param message of the browser; it gives none where the script did not load */
function stateFailure(message: string | undefined): string {
  return message ? `the calculation stopped: ${message}` : 'the calculation could not be loaded or started';
}
