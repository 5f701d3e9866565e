/** Work in turn: each piece in a task of its own, in order, whatever another does. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { takeTurn } from '../../src/ui/inTurn.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.runAllTimers();
  vi.useRealTimers();
});

it('does one job a task, in the order in which they came', () => {
  const done: string[] = [];
  for (const name of ['a', 'b', 'c']) takeTurn(() => done.push(name));
  expect(done).toEqual([]);
  vi.advanceTimersToNextTimer();
  expect(done).toEqual(['a']);
  vi.runAllTimers();
  expect(done).toEqual(['a', 'b', 'c']);
  takeTurn(() => done.push('d'));
  vi.runAllTimers();
  expect(done.at(-1)).toBe('d');
});

it('does not do what was taken out of the line', () => {
  const done: string[] = [];
  takeTurn(() => done.push('a'));
  const leave = takeTurn(() => done.push('b'));
  leave();
  vi.runAllTimers();
  expect(done).toEqual(['a']);
});

it('goes on after a job that fails', () => {
  const done: string[] = [];
  takeTurn(() => {
    throw new Error('this one fails');
  });
  takeTurn(() => done.push('b'));
  expect(() => vi.advanceTimersToNextTimer()).toThrow('this one fails');
  vi.runAllTimers();
  expect(done).toEqual(['b']);
});
