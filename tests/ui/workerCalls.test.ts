/** Calls of a worker: each answer finds who asked, a cancelled one nobody, and a worker that failed is replaced. */
import { describe, expect, it } from 'vitest';
import { callWorker, type Operation } from '../../src/ui/workerCalls.ts';
import { PretendWorker } from '../islands/pretendBrowser.ts';

type Doubling = { readonly double: Operation<number, number, string> };

function open() {
  const workers: PretendWorker[] = [];
  const calls = callWorker<Doubling>(() => {
    workers.push(new PretendWorker());
    return workers[workers.length - 1] as unknown as Worker;
  });
  const heard: string[] = [];
  const ask = (number: number) =>
    calls.ask('double', number, {
      take: (result) => heard.push(`${number}: ${result}`),
      fail: (reason) => heard.push(`${number} failed: ${reason}`),
      progress: (step) => heard.push(`${number} is ${step}`),
    });
  return { workers, calls, heard, ask };
}

describe('calls of a worker', () => {
  it('start it with the first, and give each answer to who asked, in any order', () => {
    const { workers, heard, ask } = open();
    expect(workers).toHaveLength(0);
    ask(1);
    ask(2);
    const [worker] = workers;
    const [first, second] = worker.asked;
    worker.say({ id: second.id, result: 4 });
    worker.say({ id: first.id, progress: 'under way' });
    worker.say({ id: first.id, result: 2 });
    worker.say({ id: first.id, result: 200 });
    expect(heard).toEqual(['2: 4', '1 is under way', '1: 2']);
  });

  it('that were cancelled are heard of no more, and the worker is told', () => {
    const { workers, heard, ask } = open();
    const cancel = ask(1);
    cancel();
    cancel();
    const [{ asked, cancelled }] = workers;
    expect(cancelled).toEqual([asked[0].id]);
    workers[0].say({ id: asked[0].id, result: 2 });
    expect(heard).toEqual([]);
  });

  it('fail all at once where the worker fails, and the next starts another', () => {
    const { workers, heard, ask } = open();
    ask(1);
    ask(2);
    workers[0].break();
    const reason = 'the calculation could not be loaded or started';
    expect(heard).toEqual([`1 failed: ${reason}`, `2 failed: ${reason}`]);
    expect(workers[0].isEnded).toBe(true);
    ask(3);
    workers[1].answer('double', { result: 6 });
    expect(heard.at(-1)).toBe('3: 6');
  });

  it('end without a word to who waits', () => {
    const { workers, calls, heard, ask } = open();
    ask(1);
    calls.end();
    workers[0].break();
    expect([heard, workers[0].isEnded]).toEqual([[], true]);
  });

  it('fail where a worker cannot even be made, after the asking is done', async () => {
    const heard: string[] = [];
    const calls = callWorker<Doubling>(() => {
      throw new Error('no workers here');
    });
    calls.ask('double', 1, { take: () => undefined, fail: (reason) => heard.push(reason) });
    expect(heard).toEqual([]);
    await Promise.resolve();
    expect(heard).toHaveLength(1);
  });
});
