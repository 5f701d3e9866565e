/** The measures that the invented studies took: where their means lie, and a draw of one. */
import type { Measured } from './statistics.ts';

/** Draws of one run; the order of the calls is part of the seed's meaning. */
export interface Dice {
  readonly normal: () => number;
  readonly between: (low: number, high: number) => number;
}

/** Where a measure lies before training, how much people differ, and how well it repeats. */
export interface Scale {
  /** Limits of a study arm's mean before training, in the measure's unit: mm, cm², kg or cm. */
  readonly low: number;
  readonly high: number;
  /** SD between people as a share of the mean. */
  readonly variation: number;
  readonly correlation: readonly [number, number];
}

// Invented: plausible sizes from memory, no source; correlations high enough that few people show a small change.
export const SCALES = {
  thickness: { low: 22, high: 45, variation: 0.14, correlation: [0.94, 0.98] },
  area: { low: 12, high: 40, variation: 0.16, correlation: [0.95, 0.98] },
  weight: { low: 40, high: 160, variation: 0.22, correlation: [0.9, 0.96] },
  jump: { low: 28, high: 42, variation: 0.13, correlation: [0.95, 0.98] },
} as const satisfies Record<string, Scale>;

/**
 * Means and SDs of n people before and after.
 *
 * @param percent true change in per cent
 * @param error sampling error in its own SDs
 */
export function drawMeasured(percent: number, scale: Scale, n: number, error: number, dice: Dice): Measured {
  const baselineMean = dice.between(scale.low, scale.high);
  const baselineSd = baselineMean * scale.variation * dice.between(0.85, 1.15);
  const correlation = dice.between(scale.correlation[0], scale.correlation[1]);
  const expected = Math.log1p(percent / 100);
  const followupSd = baselineSd * Math.exp(expected) * dice.between(0.97, 1.03);
  const trueMean = baselineMean * Math.exp(expected);
  const variance =
    ((baselineSd / baselineMean) ** 2 +
      (followupSd / trueMean) ** 2 -
      (2 * correlation * baselineSd * followupSd) / (baselineMean * trueMean)) /
    n;
  return {
    n,
    baselineMean,
    baselineSd,
    followupMean: trueMean * Math.exp(error * Math.sqrt(variance)),
    followupSd,
    correlation,
  };
}
