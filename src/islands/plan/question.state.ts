/** A question to the worker: asked, being worked out, answered or failed; an older answer is never shown for a newer question. */
import { signal } from '@preact/signals';
import { isSame } from './same.ts';

interface Asked<Request, Result> {
  readonly request: Request;
  readonly result: Result | null;
  readonly problem: string | null;
}

/** How the worker is asked; gives what cancels it. */
type Ask<Request, Result> = (
  request: Request,
  waiting: { readonly take: (result: Result) => void; readonly fail: (reason: string) => void },
) => () => void;

export function createQuestion<Request, Result>(ask: Ask<Request, Result>) {
  const asked = signal<Asked<Request, Result> | null>(null);
  let cancel = () => {};
  const put = (request: Request | null, isAgain = false) => {
    const before = asked.peek();
    if (!isAgain && isSame(before?.request ?? null, request)) return;
    cancel();
    asked.value = request === null ? null : { request, result: null, problem: null };
    if (request === null) return;
    cancel = ask(request, {
      take: (result) => {
        asked.value = { request, result, problem: null };
      },
      fail: (problem) => {
        asked.value = { request, result: null, problem };
      },
    });
  };
  const retry = () => put(asked.peek()?.request ?? null, true);
  /** Gives up what is being worked out, and forgets it. */
  const stop = () => {
    cancel();
    asked.value = null;
  };
  return { asked, put, retry, stop };
}
