/**
 * Statistics that a paper does not print, from those it does.
 *
 * Formulas: Cochrane Handbook for Systematic Reviews of Interventions, chapter 6 (SD from standard
 * error, interval, t and p; SD of a change from two SDs and their correlation, and the correlation
 * from three SDs). Every function returns NaN outside its domain.
 */
import { normalQuantile, studentQuantile } from '../numerics/distributions.ts';
import type { RestsOn } from './vocabulary.ts';

/** A number and how it was obtained. */
export interface Recovered {
  /** What the number is. */
  readonly quantity: string;
  readonly value: number;
  /** "reported", or the words and formula of the recovery, or what was assumed. */
  readonly how: string;
  /** Left out where the number takes nothing from what the row rests on: one that is printed, or a formula of the effect. */
  readonly restsOn?: Exclude<RestsOn, 'printed'>;
}

/** Confidence level of intervals where a row says none. */
export const USUAL_LEVEL = 0.95;

/** SD = SE √n. */
export function sdFromStandardError(standardError: number, n: number): number {
  return standardError * Math.sqrt(n);
}

/** SE = width / (2 t), t at the interval's level. @param df degrees of freedom of t; those of a paired test are n − 1 */
export function standardErrorFromInterval(
  low: number,
  high: number,
  n: number,
  level: number = USUAL_LEVEL,
  df: number = n - 1,
): number {
  return (high - low) / (2 * studentQuantile((1 + level) / 2, df));
}

/** SE = |change / t|. */
export function standardErrorFromT(change: number, t: number): number {
  return t === 0 ? Number.NaN : Math.abs(change / t);
}

/** SE = |change| / √F of one degree of freedom above, F being t². */
export function standardErrorFromF(change: number, f: number): number {
  return standardErrorFromT(change, Math.sqrt(f));
}

/** SE = |change| / t, t the quantile of the two-sided p. @param df degrees of freedom of t, n − 1 in a paired test */
export function standardErrorFromP(change: number, p: number, n: number, df: number = n - 1): number {
  // The lower tail, since 1 − p/2 has no digits left for the p of a large t.
  const t = -studentQuantile(p / 2, df);
  return t > 0 && change !== 0 ? Math.abs(change) / t : Number.NaN;
}

/** SD of the change = √(s₁² + s₂² − 2 r s₁ s₂). */
export function changeSd(baselineSd: number, followupSd: number, correlation: number): number {
  return Math.sqrt(baselineSd ** 2 + followupSd ** 2 - 2 * correlation * baselineSd * followupSd);
}

/** r = (s₁² + s₂² − s_c²) / (2 s₁ s₂); outside −1 to 1 where the three SDs do not fit together. */
export function correlationFromSds(baselineSd: number, followupSd: number, sdOfChange: number): number {
  return (baselineSd ** 2 + followupSd ** 2 - sdOfChange ** 2) / (2 * baselineSd * followupSd);
}

/**
 * Follow-up SD that fits baseline SD, change SD and correlation: the larger root of
 * s₂² − 2 r s₁ s₂ + s₁² − s_c² = 0; NaN where none is above 0.
 */
export function followupSdFromChange(baselineSd: number, sdOfChange: number, correlation: number): number {
  const half = correlation * baselineSd;
  const root = Math.sqrt(half ** 2 - baselineSd ** 2 + sdOfChange ** 2);
  const sd = half + root;
  return sd > 0 ? sd : Number.NaN;
}

/**
 * Mean of a normal sample from its quartiles, w (q₁ + q₃)/2 + (1 − w) median with w = 0.7 + 0.39/n (Luo, Wan, Liu &
 * Tong 2018, Stat Methods Med Res 27:1785).
 */
export function meanFromQuartiles(q1: number, median: number, q3: number, n: number): number {
  const weight = 0.7 + 0.39 / n;
  return (weight * (q1 + q3)) / 2 + (1 - weight) * median;
}

/**
 * SD of a normal sample from its quartiles, (q₃ − q₁) / (2 z), z the normal quantile at (0.75 n − 0.125)/(n + 0.25)
 * (Wan, Wang, Liu & Tong 2014, BMC Med Res Methodol 14:135).
 */
export function sdFromQuartiles(q1: number, q3: number, n: number): number {
  return (q3 - q1) / (2 * normalQuantile((0.75 * n - 0.125) / (n + 0.25)));
}
