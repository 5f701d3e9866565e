/** The sentence of finding of each panel on the Evidence page, computed from its numbers. */
import type { BootstrapTest } from '../model/checks/bootstrap.ts';
import type { ReserveErrorCheck } from '../model/checks/reserveError.ts';
import type { StudyDeviation, WeightingComparison } from '../model/checks/studies.ts';
import type { Band, Target, WithinBetween } from '../model/result.ts';
import type { Metric } from '../model/settings.ts';
import { formatNumber, formatP, formatRange } from './format.ts';

/** Slopes are shown in hundredths of the log ratio (near points of per cent) or in SDs. */
export const slopeScale = (metric: Metric) => (metric === 'log-ratio' ? 100 : 1);
export const slopeUnit = (metric: Metric) => (metric === 'log-ratio' ? 'hundredths of the log ratio' : 'baseline SDs');

export function describeTarget({
  point,
  low,
  high,
  practical,
  reason,
}: Pick<Target, 'point' | 'low' | 'high' | 'practical' | 'reason'>): string {
  if (point === null) return reason ?? 'no target';
  return `target ${formatNumber(point, 2)} (${formatRange(low, high, 2)}), in practice ${practical}${reason ? `; ${reason}` : ''}`;
}

export function describeWeightings(comparisons: readonly WeightingComparison[]): string {
  const most = comparisons.map(({ weighting, shares }) => {
    const top = [...shares].sort((a, b) => b.share - a.share)[0];
    return top
      ? `${weighting}: ${top.study} counts most, ${formatNumber(100 * top.share, 0)} % of all`
      : `${weighting}: no fit`;
  });
  return `${most.join('; ')}.`;
}

export function describeWithinBetween({ within, between, difference, reason }: WithinBetween, metric: Metric): string {
  if (!within || !between || !difference) return `Not separable: ${reason}.`;
  const scale = slopeScale(metric);
  const show = (slope: typeof within) =>
    `${formatNumber(scale * slope.estimate, 2)} (${formatNumber(scale * slope.ciLow, 2)} to ${formatNumber(scale * slope.ciHigh, 2)})`;
  const apart = difference.ciLow > 0 || difference.ciHigh < 0;
  return `Inside studies the slope is ${show(within)}, between them ${show(between)} ${slopeUnit(metric)} a repetition; ${apart ? 'the two differ, so studies that differ in reserve differ in something else too' : 'the two cannot be told apart'}.`;
}

export function describeReserveError(
  { naive, corrected, ratio, standardError, rowsWithError, rowsTakenAsExact, reason }: ReserveErrorCheck,
  metric: Metric,
): string {
  if (naive === null || corrected === null || ratio === null) return `Not corrected: ${reason}.`;
  const scale = slopeScale(metric);
  const error = standardError === null ? '' : ` (standard error ${formatNumber(scale * standardError, 2)})`;
  return `The straight line's slope of ${formatNumber(scale * naive, 2)} becomes ${formatNumber(scale * corrected, 2)}${error} when the stated error in reserve is taken out: ${formatNumber(ratio, 2)} times as steep. ${rowsWithError} rows state an error; ${rowsTakenAsExact} do not and are taken as exact.`;
}

export function describeBootstrap({ p, resamples, weights, t }: BootstrapTest): string {
  return `Without degrees of freedom: p ${formatP(p)} for the mean slope, from ${resamples} resamples of whole studies with ${weights} (t = ${formatNumber(t, 2)}).`;
}

export function describeHeterogeneity({ tau2, omega2, boundary, likelihoodMaxima }: Band, metric: Metric): string {
  if (tau2 === null || omega2 === null) return 'This weighting estimates no variance between studies.';
  const scale = slopeScale(metric);
  const part = (variance: number, atBound: boolean) =>
    `${formatNumber(scale * Math.sqrt(variance), 2)}${atBound ? ' (at its bound)' : ''}`;
  const two =
    likelihoodMaxima !== null && likelihoodMaxima > 1
      ? ` The likelihood has ${likelihoodMaxima} maxima; the highest is used.`
      : '';
  return `True effects spread by ${part(tau2, boundary.tau2)} between studies and ${part(omega2, boundary.omega2)} between rows of a study (SDs, ${slopeUnit(metric)}).${two}`;
}

export function describeDeviations(deviations: readonly StudyDeviation[]): string {
  const [first] = [...deviations].sort((a, b) => Math.abs(b.deviation) - Math.abs(a.deviation));
  if (!first) return 'No study.';
  return `${first.study} lies furthest from the curve, ${first.deviation > 0 ? 'above' : 'below'} it.`;
}
