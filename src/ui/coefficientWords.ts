/** Cells of a table of coefficients. */
import { formatNumber, formatP } from '../figures/format.ts';
import type { Estimate } from '../model/result.ts';

type Shown = Pick<Estimate, 'estimate' | 'ciLow' | 'ciHigh' | 'df' | 'p'>;

/** True where all of a contrast could be estimated. */
export function isEstimated<Contrast extends { readonly [Name in keyof Shown]: number | null }>(
  contrast: Contrast,
): contrast is Contrast & Shown {
  const { estimate, ciLow, ciHigh, df, p } = contrast;
  return [estimate, ciLow, ciHigh, df, p].every((value) => value !== null);
}

/**
 * Estimate, interval, degrees of freedom and p.
 *
 * @param write how a value of the analysis scale is shown
 */
export function coefficientCells(
  { estimate, ciLow, ciHigh, df, p }: Shown,
  write: (value: number) => string,
): readonly string[] {
  const [point, low, high] = [estimate, ciLow, ciHigh].map(write);
  return [point, `${low} to ${high}`, formatNumber(df, 1), formatP(p)];
}
