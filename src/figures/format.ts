/** Numbers as people read them. Only here and in the figures are numbers rounded. */
import type { Metric } from '../model/settings.ts';

const MINUS = '−';

/** Fixed digits with a true minus sign. */
export function formatNumber(value: number, digits: number): string {
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

/** An effect as shown: per cent change under the log ratio, SDs under the standardised metric. */
export function toShown(effect: number, metric: Metric): number {
  return metric === 'log-ratio' ? 100 * Math.expm1(effect) : effect;
}

/** Unit of a shown effect. */
export function shownUnit(metric: Metric): string {
  return metric === 'log-ratio' ? '%' : 'baseline SDs';
}

/** Digits that a shown effect is worth. */
export function shownDigits(metric: Metric): number {
  return metric === 'log-ratio' ? 1 : 2;
}

/** “1.3 to 2.4”, “at least 1.3” where the upper end is missing, “none” without a lower end. */
export function formatRange(low: number | null, high: number | null, digits: number): string {
  if (low === null) return 'none';
  return high === null
    ? `at least ${formatNumber(low, digits)}`
    : `${formatNumber(low, digits)} to ${formatNumber(high, digits)}`;
}
