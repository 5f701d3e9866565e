/**
 * What a printed number stands for: every number that rounds to it. A contradiction between printed numbers is one
 * only where no numbers within their rounding agree.
 */

/** Numbers from `low` to `high`, both included; the ends may be infinite. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** Binary fractions of decimal numbers, and what is computed from them, are off by some such share. */
const HAIR = 1e-9;
/** Of a whole number so many first digits are taken as meant; zeros after them may be rounding (1230 for 1234). */
const MEANT_DIGITS = 2;
const PARTS = /^[+-]?0*(\d*)(?:\.(\d*))?(?:e([+-]?\d+))?$/iu;

/**
 * The numbers that round to a printed one: half a unit of its last digit to both sides.
 *
 * @param value of the number
 * @param text as it was printed, “3.10”: zeros after the point are digits
 */
export function rangeOfPrinted(value: number, text: string): Range {
  const half = halfUnit(text);
  return { low: value - half, high: value + half };
}

/** Half a unit of the last digit of a decimal number; 0 where the text is none. */
function halfUnit(text: string): number {
  const parts = PARTS.exec(text);
  if (!parts) return 0;
  const [, whole, fraction = '', exponent = '0'] = parts;
  const zeros = fraction === '' && exponent === '0' ? trailingZeros(whole) : 0;
  return 0.5 * 10 ** (Number(exponent) - fraction.length + zeros);
}

function trailingZeros(whole: string): number {
  const zeros = whole.length - whole.replace(/0+$/u, '').length;
  return Math.max(0, Math.min(zeros, whole.length - MEANT_DIGITS));
}

/** True where the two have no number in common, and miss one by more than a binary fraction. */
export function areApart(one: Range, other: Range): boolean {
  const hair = HAIR * Math.min(largest(one), largest(other));
  return one.low > other.high + hair || other.low > one.high + hair;
}

function largest({ low, high }: Range): number {
  return Math.max(...[low, high].filter(Number.isFinite).map(Math.abs), 0);
}

/** Later minus earlier. */
export function minus(later: Range, earlier: Range): Range {
  return { low: later.low - earlier.high, high: later.high - earlier.low };
}

/** Each end times a factor of at least 0. */
export function times({ low, high }: Range, factor: number): Range {
  return { low: low * factor, high: high * factor };
}

/** Quotient of two ranges from 0 up; without end where the divisor may be 0. */
export function over(dividend: Range, divisor: Range): Range {
  return {
    low: divisor.high === 0 ? 0 : dividend.low / divisor.high,
    high: divisor.low <= 0 ? Number.POSITIVE_INFINITY : dividend.high / divisor.low,
  };
}

/** Absolute values. */
export function sizes({ low, high }: Range): Range {
  const ends = [Math.abs(low), Math.abs(high)];
  return { low: low <= 0 && high >= 0 ? 0 : Math.min(...ends), high: Math.max(...ends) };
}

/** “0.902 to 0.921”; a range without end names the end that it has. */
export function writeRange({ low, high }: Range): string {
  if (!Number.isFinite(high)) return `at least ${writeStatistic(low)}`;
  if (!Number.isFinite(low)) return `at most ${writeStatistic(high)}`;
  const [from, to] = [writeStatistic(low), writeStatistic(high)];
  return from === to ? from : `${from} to ${to}`;
}

/** A statistic in the four digits that a message needs; in words where it is no number or has no end. */
export function writeStatistic(value: number): string {
  if (Number.isNaN(value)) return 'none that can be computed';
  if (!Number.isFinite(value)) return value > 0 ? 'more than can be computed' : 'less than can be computed';
  return String(Number(value.toPrecision(4)));
}
