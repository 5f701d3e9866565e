/**
 * Robust inference on a contrast c'β: estimate, CR2 standard error, Satterthwaite's degrees of freedom,
 * interval and p-value. The covariance is made in cr2.ts, the forms behind the df in satterthwaite.ts.
 */
import { normalQuantile, studentQuantile, studentTwoSidedP } from '../numerics/distributions.ts';
import { forwardSubstitute } from '../numerics/leastSquares.ts';
import type { Estimate } from './result.ts';
import { type QuarticForms, satterthwaiteDf } from './satterthwaite.ts';

/** What inference on any contrast needs of a fit. */
export interface ContrastInference {
  /** Number of coefficients. */
  readonly p: number;
  readonly coefficients: Float64Array;
  /** CR2 covariance of the coefficients, p×p row-major. */
  readonly covariance: Float64Array;
  /** R of the whitened design's QR, upper triangle, p×p row-major: h = R⁻'c. */
  readonly root: Float64Array;
  readonly forms: QuarticForms;
}

/**
 * @param contrast c, length p
 * @param confidence level of the interval, 0 to 1 open
 */
export function inferContrast(inference: ContrastInference, contrast: ArrayLike<number>, confidence: number): Estimate {
  const { estimate, standardError, df } = measureContrast(inference, contrast);
  const reach = studentQuantile(1 - (1 - confidence) / 2, df) * standardError;
  return {
    estimate,
    standardError,
    df,
    ciLow: estimate - reach,
    ciHigh: estimate + reach,
    p: twoSidedP(estimate, standardError, df),
  };
}

/** c'β: what a contrast (a design row, or a difference of two) is worth under the coefficients. */
export function applyContrast(contrast: ArrayLike<number>, coefficients: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < contrast.length; i++) sum += contrast[i] * coefficients[i];
  return sum;
}

/** Estimate, CR2 standard error and Satterthwaite df of c'β, without the quantile of an interval. */
export function measureContrast(
  inference: ContrastInference,
  contrast: ArrayLike<number>,
): { estimate: number; standardError: number; df: number } {
  return { ...measureSpread(inference, contrast), df: measureDf(inference, contrast) };
}

/**
 * Whether a contrast is not rejected at the level: |c'β| / se ≤ t(df). The quantile of t is above the
 * normal one and (df ≥ 1) below Cauchy's, so that df is worked out only in between; and the dear
 * comparison only where the normal deviate of as small a tail as t's is not told from the level's by its bounds
 *     √((1 − 1/2df) w) < u(t) < √w,   w = df ln(1 + t²/df)   (Wallace 1959, Ann Math Stat 30:1121).
 *
 * @param confidence level, 0 to 1 open
 */
export function makeAcceptance(
  inference: ContrastInference,
  confidence: number,
): (contrast: ArrayLike<number>) => boolean {
  const alpha = 1 - confidence;
  const surelyIn = normalQuantile(1 - alpha / 2);
  const surelyOut = 1 / Math.tan((Math.PI * alpha) / 2);
  return (contrast) => {
    const { estimate, standardError } = measureSpread(inference, contrast);
    const t = Math.abs(estimate) / standardError;
    if (estimate === 0 || t <= surelyIn) return true;
    if (t > surelyOut) return false;
    const df = measureDf(inference, contrast);
    const w = df * Math.log1p((t * t) / df);
    if (w <= surelyIn ** 2) return true;
    if ((1 - 0.5 / df) * w > surelyIn ** 2) return false;
    return studentTwoSidedP(t, df) >= alpha;
  };
}

/** Two-sided p of a contrast, 0 to 1; continuous in the contrast, for who looks for the place where it is a level. */
export function measureP(inference: ContrastInference, contrast: ArrayLike<number>): number {
  const { estimate, standardError } = measureSpread(inference, contrast);
  return estimate === 0 ? 1 : studentTwoSidedP(estimate / standardError, measureDf(inference, contrast));
}

/** p of the hypothesis that a contrast is 0. An estimate of exactly 0 is no evidence, without any error too. */
function twoSidedP(estimate: number, standardError: number, df: number): number {
  return estimate === 0 ? 1 : studentTwoSidedP(estimate / standardError, df);
}

/** h = R⁻'c: a contrast in the coordinates of the whitened design. */
export function toScores(
  { root, p }: Pick<ContrastInference, 'root' | 'p'>,
  contrast: ArrayLike<number>,
): Float64Array {
  return forwardSubstitute(root, p, contrast);
}

function measureSpread(
  { p, coefficients, covariance }: ContrastInference,
  contrast: ArrayLike<number>,
): { estimate: number; standardError: number } {
  let estimate = 0;
  let variance = 0;
  for (let i = 0; i < p; i++) {
    estimate += contrast[i] * coefficients[i];
    for (let j = 0; j < p; j++) variance += contrast[i] * covariance[i * p + j] * contrast[j];
  }
  // A quadratic form that is 0 may come out a rounding below it.
  return { estimate, standardError: Math.sqrt(Math.max(0, variance)) };
}

function measureDf(inference: ContrastInference, contrast: ArrayLike<number>): number {
  return satterthwaiteDf(inference.forms, toScores(inference, contrast));
}
