/**
 * Repetitions possible at a load: published mean and spread between people.
 *
 * Nuzzo, Pinto, Nosaka & Steele 2024 (Sports Med 54:303, doi 10.1007/s40279-023-01937-7): 952 tests,
 * 7,289 people. Bench-press means read second-hand (from texts that quote figure 3; 80 % and 70 %
 * confirmed by several). Between-person SD second-hand at 80 % and 60 %; the line through the two is
 * our interpolation.
 */

/** Per cent of 1RM and mean repetitions to failure in the bench press (second-hand). */
const BENCH_PRESS_MEANS: readonly (readonly [load: number, repetitions: number])[] = [
  [15, 127.49],
  [20, 100.02],
  [25, 78.88],
  [30, 62.62],
  [35, 50.1],
  [40, 40.45],
  [45, 33.01],
  [50, 27.25],
  [55, 22.79],
  [60, 19.34],
  [65, 16.59],
  [70, 14.08],
  [75, 11.51],
  [80, 8.82],
  [85, 6.23],
  [90, 4.11],
  [95, 2.59],
];

/** The line through 2.51 at 80 % and 4.36 at 60 % (second-hand); not to be used outside 40–90 %. */
const SPREAD = { intercept: 9.91, perPercent: -0.0925, from: 40, to: 90 } as const;

export interface RepetitionsPossible {
  readonly mean: number;
  /** Between-person SD. */
  readonly sd: number;
}

/**
 * Repetitions possible at a load; linear between the published points. null outside 40–90 % of 1RM,
 * where the spread is not known.
 */
export function repetitionsAtLoad(load: number): RepetitionsPossible | null {
  if (!(load >= SPREAD.from && load <= SPREAD.to)) return null;
  const mean = meanRepetitions(load);
  return mean === null ? null : { mean, sd: SPREAD.intercept + SPREAD.perPercent * load };
}

/** Mean repetitions possible, 15–95 % of 1RM; null outside. */
export function meanRepetitions(load: number): number | null {
  for (let i = 1; i < BENCH_PRESS_MEANS.length; i++) {
    const [lowLoad, most] = BENCH_PRESS_MEANS[i - 1];
    const [highLoad, least] = BENCH_PRESS_MEANS[i];
    if (load >= lowLoad && load <= highLoad) return most + ((load - lowLoad) / (highLoad - lowLoad)) * (least - most);
  }
  return null;
}

/** Load at which a mean number of repetitions is possible, the inverse of `meanRepetitions`; null outside. */
export function loadForRepetitions(repetitions: number): number | null {
  for (let i = 1; i < BENCH_PRESS_MEANS.length; i++) {
    const [lowLoad, most] = BENCH_PRESS_MEANS[i - 1];
    const [highLoad, least] = BENCH_PRESS_MEANS[i];
    if (repetitions <= most && repetitions >= least) {
      return lowLoad + ((most - repetitions) / (most - least)) * (highLoad - lowLoad);
    }
  }
  return null;
}
