/**
 * What the printed statistics of a row imply of one another, as ranges that their rounding allows. Formulas as in
 * recover.ts; each range holds what any unrounded numbers behind the printed ones would give.
 */
import { studentQuantile, studentTwoSidedP } from '../numerics/distributions.ts';
import { type CountedArm, levelOf } from './countedArm.ts';
import { minus, over, type Range, sizes, times } from './printed.ts';
import { correlationFromSds, standardErrorFromInterval } from './recover.ts';
import type { ArmColumn } from './schema.ts';

/** Columns of the statistics that are checked against one another. */
export type Statistic = Extract<
  ArmColumn,
  | `${'baseline' | 'followup' | 'change'}_${'mean' | 'sd'}`
  | `change_${'se' | 'ci_low' | 'ci_high' | 't' | 'f' | 'p'}`
  | `${'baseline' | 'followup'}_se`
  | `percent_change${'' | '_sd' | '_se' | '_ci_low' | '_ci_high'}`
  | 'correlation'
  | 'effect'
>;

/** The numbers a printed one may stand for; null where the cell is empty or already contradicts another. */
export type RangeOf = (column: Statistic) => Range | null;

/** A range and the columns that it comes from. */
export interface Implied {
  readonly range: Range;
  readonly from: readonly Statistic[];
}

/** The mean change, as printed or from the means. */
export function impliedChange(rangeOf: RangeOf): Implied | null {
  const printed = rangeOf('change_mean');
  if (printed) return { range: printed, from: ['change_mean'] };
  return changeOfMeans(rangeOf);
}

/** Mean after minus mean before. */
export function changeOfMeans(rangeOf: RangeOf): Implied | null {
  const [before, after] = [rangeOf('baseline_mean'), rangeOf('followup_mean')];
  return before && after && { range: minus(after, before), from: ['followup_mean', 'baseline_mean'] };
}

/** Standard error of the change from its own column or the SD. */
export function printedError(rangeOf: RangeOf, n: number): Implied | null {
  const [sd, error] = [rangeOf('change_sd'), rangeOf('change_se')];
  if (error) return { range: sizes(error), from: ['change_se'] };
  return sd && { range: times(sizes(sd), 1 / Math.sqrt(n)), from: ['change_sd'] };
}

/** Standard error of the change from the width of its interval. */
export function errorOfInterval(rangeOf: RangeOf, arm: CountedArm): Implied | null {
  // A credible interval need not be as wide as SD and people make a confidence interval.
  if (arm.ci_kind === 'credible') return null;
  const [low, high] = [rangeOf('change_ci_low'), rangeOf('change_ci_high')];
  if (!low || !high) return null;
  const width = minus(high, low);
  const perWidth = standardErrorFromInterval(0, 1, arm.n, levelOf(arm), dfOf(arm));
  return {
    range: times({ low: Math.max(0, width.low), high: Math.max(0, width.high) }, perWidth),
    from: ['change_ci_low', 'change_ci_high'],
  };
}

/** Size of t, as printed or the root of F. */
export function sizeOfTest(rangeOf: RangeOf): Implied | null {
  const [t, f] = [rangeOf('change_t'), rangeOf('change_f')];
  if (t) return { range: sizes(t), from: ['change_t'] };
  if (!f) return null;
  return { range: { low: Math.sqrt(Math.max(0, f.low)), high: Math.sqrt(Math.max(0, f.high)) }, from: ['change_f'] };
}

/** Degrees of freedom behind t, F, p and interval. */
export function dfOf({ change_df: df, n }: CountedArm): number {
  return df ?? n - 1;
}

/** Sizes of t that a p-value stands for. */
export function sizeOfTFromP(p: Range, df: number): Range {
  // The lower tail, since 1 − p/2 has no digits left for the p of a large t.
  const at = (value: number) => (value <= 0 ? Number.POSITIVE_INFINITY : -studentQuantile(Math.min(value, 1) / 2, df));
  return { low: at(p.high), high: at(p.low) };
}

/** p-values of a t of these sizes. */
export function pFromT(t: Range, df: number): Range {
  const { low, high } = sizes(t);
  return { low: studentTwoSidedP(high, df), high: studentTwoSidedP(low, df) };
}

/** SD of the change by the first way that the row gives, in the order in which statistics.ts takes them. */
export function impliedSdOfChange(rangeOf: RangeOf, arm: CountedArm): Implied | null {
  const { n } = arm;
  const ofError = (implied: Implied | null) => implied && { ...implied, range: times(implied.range, Math.sqrt(n)) };
  const sd = rangeOf('change_sd');
  if (sd) return { range: sizes(sd), from: ['change_sd'] };
  return ofError(printedError(rangeOf, n) ?? errorOfInterval(rangeOf, arm) ?? errorOfTest(rangeOf, arm));
}

/** Standard error of the change from the change and its t, F or p. */
export function errorOfTest(rangeOf: RangeOf, arm: CountedArm): Implied | null {
  const change = impliedChange(rangeOf);
  if (!change) return null;
  const [t, p] = [sizeOfTest(rangeOf), rangeOf('change_p')];
  if (t) return { range: over(sizes(change.range), t.range), from: [...t.from, ...change.from] };
  return p && { range: over(sizes(change.range), sizeOfTFromP(p, dfOf(arm))), from: ['change_p', ...change.from] };
}

/** Correlations that three SDs allow: the least and greatest over all that they may stand for. */
export function rangeOfCorrelation(before: Range, after: Range, change: Range): Range {
  // Scaled, so that no square overflows.
  const largest = Math.max(before.high, after.high);
  const [s1, s2, sc] = [before, after, change].map((sd) => times(sd, 1 / largest));
  // It falls as the SD of the change grows. In either other SD it has its greatest values at the ends, and its least
  // at one of them or where the SD's square is the difference of the other two squares.
  const turn = (sd: Range, other: number) => {
    const square = other ** 2 - sc.high ** 2;
    return square > 0 ? Math.min(Math.max(Math.sqrt(square), sd.low), sd.high) : sd.low;
  };
  const ends = [s1.low, s1.high].flatMap((one) => [s2.low, s2.high].map((other) => [one, other] as const));
  const turns = [
    ...[s2.low, s2.high].map((other) => [turn(s1, other), other] as const),
    ...[s1.low, s1.high].map((one) => [one, turn(s2, one)] as const),
  ];
  return {
    low: Math.min(...[...ends, ...turns].map(([one, other]) => correlationFromSds(one, other, sc.high))),
    high: Math.max(...ends.map(([one, other]) => correlationFromSds(one, other, sc.low))),
  };
}
