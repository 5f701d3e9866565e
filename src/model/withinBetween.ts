/**
 * Does the slope hold inside studies? Reserve is split into the study's mean and the row's deviation
 * from it. The within-study slope compares arms that share everything but reserve; the between-study
 * slope compares studies, which differ in much else. (Raudenbush & Bryk 2002, Hierarchical Linear
 * Models, ch. 5.)
 */
import type { Effect } from '../evidence/effects.ts';
import { rangeOf, reservesOf, toObservations } from './bandFit.ts';
import { fitCarried } from './carriedFit.ts';
import type { WithinBetween } from './result.ts';
import { inferContrast } from './robust.ts';
import type { Settings } from './settings.ts';

/** Both slopes and their difference; null with a reason where reserve varies only inside studies or only between them. */
export function splitReserve(effects: readonly Effect[], settings: Settings): WithinBetween {
  const reserves = reservesOf(effects);
  const means = studyMeans(effects, reserves);
  const deviations = reserves.map((reserve, i) => reserve - means[i]);
  const missing = (reason: string): WithinBetween => ({ within: null, between: null, difference: null, reason });
  if (isConstant(deviations)) return missing('reserve does not vary inside any study');
  if (isConstant(means)) return missing('the mean reserve is the same in every study');
  const columns = [reserves.map(() => 1), deviations, means];
  const { fit, failure } = fitCarried(toObservations(effects), columns, settings);
  if (!fit) return missing(failure.reason);
  const infer = (contrast: readonly number[]) => inferContrast(fit.inference, contrast, settings.confidence);
  return { within: infer([0, 1, 0]), between: infer([0, 0, 1]), difference: infer([0, 1, -1]), reason: null };
}

/** Of every row: the unweighted mean over its study's rows. */
export function studyMeans(effects: readonly Effect[], values: readonly number[]): number[] {
  const sums = new Map<string, { sum: number; count: number }>();
  effects.forEach(({ arm }, i) => {
    const so = sums.get(arm.study) ?? { sum: 0, count: 0 };
    sums.set(arm.study, { sum: so.sum + values[i], count: so.count + 1 });
  });
  return effects.map(({ arm }) => {
    const { sum, count } = sums.get(arm.study) ?? { sum: Number.NaN, count: 1 };
    return sum / count;
  });
}

/** Repetitions: means of the same numbers in another order differ by rounding, which is far below this. */
const SAME_RESERVE = 1e-9;

function isConstant(values: readonly number[]): boolean {
  const range = rangeOf(values);
  return range === null || range.high - range.low < SAME_RESERVE;
}
