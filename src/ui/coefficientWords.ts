/** Cells of a table of coefficients. */
import { formatNumber, formatP, formatSlope, slopeUnit } from '../figures/format.ts';
import type { Estimate } from '../model/result.ts';
import type { Metric } from '../model/settings.ts';

type Shown = Pick<Estimate, 'estimate' | 'ciLow' | 'ciHigh' | 'df' | 'p'>;

/** True where all of a contrast could be estimated. */
export function isEstimated<Contrast extends { readonly [Name in keyof Shown]: number | null }>(
  contrast: Contrast,
): contrast is Contrast & Shown {
  const { estimate, ciLow, ciHigh, df, p } = contrast;
  return [estimate, ciLow, ciHigh, df, p].every((value) => value !== null);
}

/** What coefficients are in, everywhere. */
export function stateCoefficientUnit(metric: Metric): string {
  return metric === 'log-ratio'
    ? `Coefficients in ${slopeUnit(metric)}, close to percentage points.`
    : `Coefficients in ${slopeUnit(metric)}.`;
}

/** Estimate, interval, degrees of freedom and p, in that unit. */
export function coefficientCells({ estimate, ciLow, ciHigh, df, p }: Shown, metric: Metric): readonly string[] {
  const [point, low, high] = [estimate, ciLow, ciHigh].map((value) => formatSlope(value, metric));
  return [point, `${low} to ${high}`, formatNumber(df, 1), formatP(p)];
}
