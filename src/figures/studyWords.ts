/** Cells of the Studies pages: what is known of a study in the fewest words, missing things named. */
import type { Recovered } from '../evidence/recover.ts';
import type { Band, Estimate, Target } from '../model/result.ts';
import type { Metric } from '../model/settings.ts';
import type { RowReport } from '../model/studyReports.ts';
import {
  formatChange,
  formatNumber,
  formatRange,
  formatSlope,
  formatSlopeRange,
  shownDigits,
  shownUnit,
  toShown,
} from './format.ts';

/** “30 to 75”, “75” where both ends are the same, “not reported” without any. */
export function showSpan(span: { readonly low: number; readonly high: number } | null): string {
  if (!span) return 'not reported';
  return span.low === span.high ? String(span.low) : `${span.low} to ${span.high}`;
}

/** A mean slope a repetition, in hundredths of the log ratio or SDs, with its interval where asked. */
export function showSlope(slope: Estimate | null, metric: Metric, interval: boolean): string {
  if (!slope) return 'none';
  return interval ? formatSlopeRange(slope, metric) : formatSlope(slope.estimate, metric);
}

/** “1.45 (1.08 to 1.91)”, to a hundredth where targets are compared; the interval where asked; “none” without a target. */
export function showFineTarget(
  { point, low, high }: Pick<Target, 'point' | 'low' | 'high'>,
  interval: boolean,
): string {
  if (point === null) return 'none';
  return interval ? `${formatNumber(point, 2)} (${formatRange(low, high, 2)})` : formatNumber(point, 2);
}

/** “5.2 % (2.9 to 7.6)”; without a variance the change alone, or why there is no effect at all. */
export function showChange({ effect, noEffect, alone, metric, ciLow, ciHigh }: RowReport): string {
  if (alone !== null)
    return `${formatNumber(toShown(alone, 'log-ratio'), shownDigits('log-ratio'))}\u00a0${shownUnit('log-ratio')}, without an interval: ${noEffect}`;
  if (!effect || ciLow === null || ciHigh === null) return `none: ${noEffect}`;
  return formatChange({ estimate: effect.y, ciLow, ciHigh }, metric);
}

/** Share of weight in per cent; small shares with two digits. */
export function showWeight(share: number): string {
  const percent = 100 * share;
  return `${percent >= 0.1 || percent === 0 ? formatNumber(percent, 1) : percent.toPrecision(1)}\u00a0%`;
}

/**
 * How a row's numbers were obtained, in a few words: “reported”, “recovered: SD of the change; assumed:
 * SD after”. A number that rests on an assumption is called assumed, whatever else it rests on.
 */
export function outlineNumbers(numbers: readonly Recovered[]): string {
  const made = numbers.filter(({ how }) => how !== 'reported');
  const isPooled = ({ restsOn }: Recovered) => restsOn === 'pooled';
  // Equal SDs and an assumed correlation say so in their words only: a row does not rest on them (restsOn.ts).
  const isAssumed = ({ how, restsOn }: Recovered) => restsOn === 'assumed' || /\bassumed\b/u.test(how);
  const assumed = made.filter((one) => isAssumed(one) && !isPooled(one));
  // Effect and variance are always worked out; they are worth a word only where that took an assumption.
  const recovered = made.filter(
    (one) => !isAssumed(one) && !isPooled(one) && one.quantity !== 'effect' && one.quantity !== 'variance',
  );
  const list = (name: string, of: readonly Recovered[]) =>
    of.length > 0 ? [`${name}: ${of.map(({ quantity }) => quantity).join(', ')}`] : [];
  return (
    [
      ...list('recovered', recovered),
      ...list('assumed', assumed),
      ...list('from other rows', made.filter(isPooled)),
    ].join('; ') || 'all reported'
  );
}

/** What was measured: “muscle thickness of quadriceps, mm”, “jump height, cm, 24 h after”. */
export function stateMeasurement({ arm: { measure, muscle, unit, hours_after, outcome } }: RowReport): string {
  const where = muscle !== null && outcome === 'growth' ? ` of ${muscle}` : '';
  return [`${measure}${where}`, unit, hours_after === null ? null : `${hours_after} h after`]
    .filter(Boolean)
    .join(', ');
}

/** Why a band gives no slope and no target; null where it gives both. */
export function whyNone({ failure, target }: Band): string | null {
  return failure?.reason ?? (target.point === null ? target.reason : null);
}
