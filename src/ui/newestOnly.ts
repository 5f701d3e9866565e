/**
 * Requests of which only the newest counts: one is begun after a rest without another, and while one is at work only the
 * newest of those that come waits for its end; what came between is never begun.
 */

/** Begins a request; `done` is to be called once it was answered or failed. */
export type Begin = (done: () => void) => void;

export interface NewestOnly {
  readonly ask: (begin: Begin) => void;
  /** Lets what rests go; what is at work, or waits for its end, stays. */
  readonly hold: () => void;
}

/** @param rest milliseconds without a further request before one is begun */
export function takeNewestOnly(rest: number): NewestOnly {
  let isBusy = false;
  let next: Begin | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const start = (begin: Begin) => {
    isBusy = true;
    begin(() => {
      isBusy = false;
      const waiting = next;
      next = null;
      if (waiting) start(waiting);
    });
  };
  const hold = () => clearTimeout(timer);
  return {
    hold,
    ask: (begin) => {
      hold();
      timer = setTimeout(() => {
        if (isBusy) next = begin;
        else start(begin);
      }, rest);
    },
  };
}
