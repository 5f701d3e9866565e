/** The sentence of finding of each panel on the Evidence page, computed from its numbers. */
import type { BootstrapTest } from '../model/checks/bootstrap.ts';
import type { ReserveErrorCheck } from '../model/checks/reserveError.ts';
import type { StudyDeviation, WeightingComparison } from '../model/checks/studies.ts';
import { type Band, isUnreliable, LEAST_RELIABLE_DF, type Target, type WithinBetween } from '../model/result.ts';
import type { Metric } from '../model/settings.ts';
import { countOf } from '../numerics/countOf.ts';
import {
  formatNumber,
  formatP,
  formatSlope,
  formatSlopeRange,
  formatTarget,
  formatWhole,
  slopeUnit,
} from './format.ts';

export function stateTarget({
  point,
  shown,
  whole,
  reason,
}: Pick<Target, 'point' | 'shown' | 'whole' | 'reason'>): string {
  if (point === null) return reason ?? 'no target';
  return `target ${formatTarget({ shown })}, in practice ${formatWhole(whole)}${reason ? `; ${reason}` : ''}`;
}

export function stateWeightings(comparisons: readonly WeightingComparison[]): string {
  const most = comparisons.map(({ weighting, shares }) => {
    const top = [...shares].sort((a, b) => b.share - a.share)[0];
    return top
      ? `${weighting}: ${top.study} counts most, ${formatNumber(100 * top.share, 0)}\u00a0% of all`
      : `${weighting}: no fit`;
  });
  return `${most.join('; ')}.`;
}

export function stateWithinBetween({ within, between, difference, reason }: WithinBetween, metric: Metric): string {
  if (!within || !between || !difference) return `Not separable: ${reason}.`;
  const apart = difference.ciLow > 0 || difference.ciHigh < 0;
  const verdict = apart
    ? 'the two differ, so studies that differ in reserve differ in something else too'
    : 'the two cannot be told apart';
  const few = isUnreliable([within, between, difference])
    ? ` One of these rests on fewer than ${LEAST_RELIABLE_DF} degrees of freedom: its interval is unreliable.`
    : '';
  return `Inside studies the straight line’s slope is ${formatSlopeRange(within, metric)}, between them ${formatSlopeRange(between, metric)} ${slopeUnit(metric)} a repetition; ${verdict}.${few}`;
}

/** The average slope of the straight line, whatever curve is fitted; empty where there is none. */
export function stateAverageSlope(curves: Band['curves'], metric: Metric): string {
  const slope = curves.find(({ curve }) => curve === 'line')?.slope;
  if (!slope) return '';
  const few = isUnreliable([slope]) ? ', unreliable: too few degrees of freedom' : '';
  return `The straight line’s slope is ${formatSlopeRange(slope, metric)} ${slopeUnit(metric)} a repetition, the average over all reserves studied${few}.`;
}

export function stateReserveError(
  { naive, corrected, ratio, standardError, rowsWithError, rowsTakenAsExact, reason }: ReserveErrorCheck,
  metric: Metric,
): string {
  if (naive === null || corrected === null || ratio === null) return `Not corrected: ${reason}.`;
  const error = standardError === null ? '' : ` (standard error ${formatSlope(standardError, metric)})`;
  // Corrected to the other side of 0, a slope is no multiple of what it was.
  const times = ratio > 0 ? `: ${formatNumber(ratio, 2)} times as steep` : ', of the other sign';
  const stated = `${countOf(rowsWithError, 'row states', 'rows state')} an error; ${countOf(rowsTakenAsExact, 'does', 'do')} not and ${rowsTakenAsExact === 1 ? 'is' : 'are'} taken as exact.`;
  return `The straight line's slope of ${formatSlope(naive, metric)} ${slopeUnit(metric)} a repetition becomes ${formatSlope(corrected, metric)}${error} when the stated error in reserve is taken out${times}. ${stated}`;
}

export function stateBootstrap({ p, resamples, weights, t }: BootstrapTest): string {
  return `Without degrees of freedom: p ${formatP(p)} for the mean slope from reserve 0 to the largest studied, from ${resamples} resamples of whole studies with ${weights} (t = ${formatNumber(t, 2)}).`;
}

export function stateHeterogeneity(
  { tau2, omega2, boundary, likelihoodMaxima, rows, studies }: Band,
  metric: Metric,
): string {
  if (tau2 === null || omega2 === null) return 'This weighting estimates no variance between studies.';
  const part = (variance: number, atBound: boolean) =>
    `${formatSlope(Math.sqrt(variance), metric)}${atBound ? ' (at its bound)' : ''}`;
  const two =
    likelihoodMaxima !== null && likelihoodMaxima > 1
      ? ` The likelihood has ${likelihoodMaxima} maxima; the highest is used.`
      : '';
  // With one row a study only the sum of the two variances is to be had.
  const spread =
    rows > studies
      ? `${part(tau2, boundary.tau2)} between studies and ${part(omega2, boundary.omega2)} between rows of a study (SDs`
      : `${part(tau2, boundary.tau2)} between studies of one row each (SD`;
  return `True effects spread by ${spread}, ${slopeUnit(metric)}).${two}`;
}

export function stateDeviations(deviations: readonly StudyDeviation[]): string {
  const [first] = [...deviations].sort((a, b) => Math.abs(b.deviation) - Math.abs(a.deviation));
  if (!first) return 'No study.';
  return `${first.study} lies furthest from the curve, ${first.deviation > 0 ? 'above' : 'below'} it.`;
}
