/**
 * Statistics that a paper does not print, from those it does.
 *
 * Formulas: Cochrane Handbook for Systematic Reviews of Interventions, chapter 6 (SD from standard
 * error, interval, t and p; SD of a change from two SDs and their correlation, and the correlation
 * from three SDs). Every function returns NaN outside its domain.
 */
import { studentQuantile } from '../numerics/distributions.ts';

/** A number and how it was obtained. */
export interface Recovered {
  /** What the number is. */
  readonly quantity: string;
  readonly value: number;
  /** "reported", or the words and formula of the recovery, or what was assumed. */
  readonly how: string;
}

/** Confidence level of intervals in the table. */
const INTERVAL_LEVEL = 0.95;

/** SD = SE √n. */
export function sdFromStandardError(standardError: number, n: number): number {
  return standardError * Math.sqrt(n);
}

/** SE = width / (2 t), t at the interval's level with n − 1 degrees of freedom. */
export function standardErrorFromInterval(low: number, high: number, n: number): number {
  return (high - low) / (2 * studentQuantile((1 + INTERVAL_LEVEL) / 2, n - 1));
}

/** SE = |change / t|. */
export function standardErrorFromT(change: number, t: number): number {
  return t === 0 ? Number.NaN : Math.abs(change / t);
}

/** SE = |change| / t, t the quantile of the two-sided p with n − 1 degrees of freedom. */
export function standardErrorFromP(change: number, p: number, n: number): number {
  // The lower tail, since 1 − p/2 has no digits left for the p of a large t.
  const t = -studentQuantile(p / 2, n - 1);
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
