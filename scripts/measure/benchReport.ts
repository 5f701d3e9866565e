/** What `npm run bench` prints of its measurements, and whether every one is within its bound. */

export interface Measurement {
  readonly name: string;
  /** Milliseconds, median over the runs. */
  readonly median: number;
  /** Milliseconds at most; null where none is set. */
  readonly bound: number | null;
}

/** A time in units of another of the same run, which a busy machine moves far less than either. */
export interface Ratio {
  readonly name: string;
  readonly value: number;
  /** At most so many. */
  readonly bound: number;
}

/** A line a measurement and one a ratio; what is above its bound is marked. */
export function reportBench(measurements: readonly Measurement[], ratios: readonly Ratio[]) {
  const verdict = (value: number, bound: number) => (value <= bound ? `at most ${bound}` : `ABOVE ${bound}`);
  return {
    lines: [
      ...measurements.map(
        ({ name, median, bound }) =>
          `${name.padEnd(42)} ${median.toFixed(2).padStart(10)} ms  ${bound === null ? '' : verdict(median, bound)}`,
      ),
      ...ratios.map(({ name, value, bound }) => `${name}: × ${value.toFixed(2)}  ${verdict(value, bound)}`),
    ],
    isWithin:
      measurements.every(({ median, bound }) => bound === null || median <= bound) &&
      ratios.every(({ value, bound }) => value <= bound),
  };
}
