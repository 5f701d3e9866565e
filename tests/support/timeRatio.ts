/** Times as ratios of one run, which other work on the machine slows alike. */

/**
 * How many times as long one work takes as another: both in turn, and of each its least time, which is the one that
 * nothing came between.
 */
export function timeRatio(work: () => unknown, other: () => unknown, rounds = 5): number {
  const least = { work: Number.POSITIVE_INFINITY, other: Number.POSITIVE_INFINITY };
  for (let round = 0; round < rounds; round++) {
    least.other = Math.min(least.other, timeOf(other));
    least.work = Math.min(least.work, timeOf(work));
  }
  return least.work / least.other;
}

/** Milliseconds. */
function timeOf(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}
