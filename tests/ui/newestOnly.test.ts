/** Requests of which only the newest counts. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { takeNewestOnly } from '../../src/ui/newestOnly.ts';

/** Milliseconds. */
const REST = 10;

describe('requests of which only the newest counts', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  /** What was begun, and how to end it. */
  function record() {
    const begun: string[] = [];
    const ends: (() => void)[] = [];
    const requests = takeNewestOnly(REST);
    const ask = (name: string) =>
      requests.ask((done) => {
        begun.push(name);
        ends.push(done);
      });
    return { begun, ends, ask, hold: requests.hold };
  }

  it('begin after a rest, the last of those that came before it alone', () => {
    const { begun, ask } = record();
    ask('a');
    vi.advanceTimersByTime(REST - 1);
    ask('b');
    vi.advanceTimersByTime(REST - 1);
    expect(begun).toEqual([]);
    vi.advanceTimersByTime(1);
    expect(begun).toEqual(['b']);
  });

  it('wait for the one at work, and only the newest of them comes after it', () => {
    const { begun, ends, ask } = record();
    for (const name of ['a', 'b', 'c']) {
      ask(name);
      vi.advanceTimersByTime(REST);
    }
    expect(begun).toEqual(['a']);
    ends[0]();
    expect(begun).toEqual(['a', 'c']);
    ask('d');
    vi.advanceTimersByTime(REST);
    expect(begun).toEqual(['a', 'c']);
    ends[1]();
    expect(begun).toEqual(['a', 'c', 'd']);
    ends[2]();
    expect(begun).toHaveLength(3);
  });

  it('that rest are let go, and others begin as before', () => {
    const { begun, ask, hold } = record();
    ask('a');
    hold();
    vi.advanceTimersByTime(10 * REST);
    expect(begun).toEqual([]);
    ask('b');
    vi.advanceTimersByTime(REST);
    expect(begun).toEqual(['b']);
  });
});
