/** Answering a page, from the worker's side (the page's is workerCalls.ts). */
import { reasonOf } from './reasonOf.ts';
import type { Operation, Operations, Question, Reply } from './workerCalls.ts';

export interface Tools<Op extends Operation> {
  /** Tells who asked how far the work is. */
  readonly report: (progress: Op['progress']) => void;
  /** Aborted once the answer is not wanted any more; work in steps looks at it between them. */
  readonly signal: AbortSignal;
}

export type Answers<Ops extends Operations> = {
  readonly [Name in keyof Ops]: (
    request: Ops[Name]['request'],
    tools: Tools<Ops[Name]>,
  ) => Ops[Name]['result'] | Promise<Ops[Name]['result']>;
};

/** Has this worker answer from now on. What an answer throws is the reason why there is none. */
export function answerCalls<Ops extends Operations>(answers: Answers<Ops>): void {
  const wanted = new Map<number, AbortController>();
  const answer = async (question: Extract<Question, { readonly name: string }>): Promise<void> => {
    const { id, name, request } = question;
    const control = new AbortController();
    wanted.set(id, control);
    const reply = (message: Reply) => {
      if (!control.signal.aborted) self.postMessage(message);
    };
    try {
      const report = (progress: unknown) => reply({ id, progress });
      reply({ id, result: await answers[name](request, { report, signal: control.signal }) });
    } catch (error) {
      reply({ id, problem: reasonOf(error) });
    } finally {
      wanted.delete(id);
    }
  };
  self.addEventListener('message', ({ data }: MessageEvent<Question>) => {
    if ('cancel' in data) wanted.get(data.id)?.abort();
    else void answer(data);
  });
}
