/** Numbers as people read them. Only here and in the figures are numbers rounded. */

import type { Estimate, Target } from '../model/result.ts';
import type { Metric } from '../model/settings.ts';
import type { WholeRange } from '../model/wholeRepetitions.ts';
import { toPercent } from '../numerics/percent.ts';
import { wholeHours } from '../practice/recovery.ts';

const MINUS = '−';

/** An estimate with its interval, analysis scale. */
type Interval = Pick<Estimate, 'estimate' | 'ciLow' | 'ciHigh'>;

/** Size from which a number is only said to be beyond it: an interval of a few studies can reach any distance. */
const MOST_SHOWN = 1e6;

/** Fixed digits with a true minus sign; “above 1,000,000” from there on. */
export function formatNumber(value: number, digits: number): string {
  if (Math.abs(value) >= MOST_SHOWN) return value < 0 ? `below ${MINUS}1,000,000` : 'above 1,000,000';
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? `${MINUS}${text}` : text;
}

/** So many significant digits, without zeros that say nothing, with a true minus sign. */
export function formatSignificant(value: number, digits: number): string {
  return String(Number(value.toPrecision(digits))).replaceAll('-', MINUS);
}

/** “<0.001” or three digits. */
export function formatP(p: number): string {
  return p < 0.001 ? '<0.001' : p.toFixed(3);
}

/** An effect as shown: per cent change under the log ratio, SDs under the standardised metric; a million at most. */
export function toShown(effect: number, metric: Metric): number {
  const shown = metric === 'log-ratio' ? toPercent(effect) : effect;
  return Math.min(MOST_SHOWN, Math.max(-MOST_SHOWN, shown));
}

/** Unit of a shown effect. */
export function shownUnit(metric: Metric): string {
  return metric === 'log-ratio' ? '%' : 'baseline SDs';
}

/** Digits that a shown effect is worth. */
export function shownDigits(metric: Metric): number {
  return metric === 'log-ratio' ? 1 : 2;
}

/** A slope is shown in hundredths of the log ratio (near points of per cent) or in SDs. */
export function toShownSlope(slope: number, metric: Metric): number {
  return metric === 'log-ratio' ? 100 * slope : slope;
}

/** Unit of a shown slope, and of a distance on the analysis scale. */
export function slopeUnit(metric: Metric): string {
  return metric === 'log-ratio' ? 'hundredths of the log ratio' : 'baseline SDs';
}

/** A slope, or a distance on the analysis scale, as shown: “−0.53”; SDs are worth a digit more. */
export function formatSlope(slope: number, metric: Metric): string {
  return formatNumber(toShownSlope(slope, metric), metric === 'log-ratio' ? 2 : 3);
}

/** A slope with its interval: “−0.53 (−0.68 to −0.38)”. */
export function formatSlopeRange({ estimate, ciLow, ciHigh }: Interval, metric: Metric): string {
  const [point, low, high] = [estimate, ciLow, ciHigh].map((value) => formatSlope(value, metric));
  return `${point} (${low} to ${high})`;
}

/** “1.3 to 2.4”, “at least 1.3” where the upper end is missing, “none” without a lower end. */
export function formatRange(low: number | null, high: number | null, digits: number): string {
  if (low === null) return 'none';
  return high === null
    ? `at least ${formatNumber(low, digits)}`
    : `${formatNumber(low, digits)} to ${formatNumber(high, digits)}`;
}

/** A target with its interval, as it is shown everywhere: “3.1 (1.6 to 4.5)”; “none” without one. */
export function formatTarget({ shown }: Pick<Target, 'shown'>): string {
  return shown === null ? 'none' : `${formatNumber(shown.point, 1)} (${formatRange(shown.low, shown.high, 1)})`;
}

/** Whole repetitions to tell: “2 to 3”, “1”; “none” without a target. */
export function formatWhole(whole: WholeRange | null): string {
  if (whole === null) return 'none';
  return whole.least === whole.most ? String(whole.most) : `${whole.least} to ${whole.most}`;
}

/** Ends of a time of recovery in whole hours: “14 to 31”, “at least 14”. */
export function formatHours(low: number | null, high: number | null): string {
  return formatRange(low === null ? null : wholeHours(low), high === null ? null : wholeHours(high), 0);
}

interface Share {
  readonly estimate: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** A share of 1 in per cent with its interval: “91 % (88 to 95 %)”. @param digits of a per cent */
export function formatShare({ estimate, low, high }: Share, digits = 0): string {
  const percent = (share: number) => formatNumber(100 * share, digits);
  if (low === estimate && high === estimate) return `${percent(estimate)}\u00a0%`;
  const from = low === null ? 'no lower limit' : percent(low);
  const to = high === null ? 'no upper limit' : `${percent(high)}\u00a0%`;
  return `${percent(estimate)}\u00a0% (${from} to ${to})`;
}

/** A reserve or load as it was written: a decimal only where there is one. */
export function formatPlain(value: number): string {
  return formatNumber(value, Number(value.toFixed(1)) % 1 === 0 ? 0 : 1);
}

/** A change on the analysis scale, as shown, with its interval: “0.8 % (0.5 to 1.0)”. */
export function formatChange({ estimate, ciLow, ciHigh }: Interval, metric: Metric): string {
  const [point, low, high] = [estimate, ciLow, ciHigh].map((value) =>
    formatNumber(toShown(value, metric), shownDigits(metric)),
  );
  return `${point}\u00a0${shownUnit(metric)} (${low} to ${high})`;
}

/** A drop of performance on the log scale, above 0 a loss, as a loss in per cent. */
export function lossInPercent(drop: number): number {
  return -toPercent(-drop);
}
