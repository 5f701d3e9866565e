/**
 * A target as people are told it: in tenths of a repetition, and in whole ones, which alone can be counted.
 *
 * The range of whole repetitions runs from the first whole number inside the interval that is shown to the last one
 * that the shown estimate reaches. Where there is none it is the nearest to the estimate, if that is inside; else the
 * one below the estimate, which keeps more, and the interval is shown down to it. So no number that is told lies
 * outside the interval beside it.
 */

/** Fewest and most repetitions to leave, whole numbers. */
export interface WholeRange {
  readonly least: number;
  readonly most: number;
}

/** In repetitions; `high` null where it is not limited. */
export interface TargetInterval {
  readonly point: number;
  readonly low: number;
  readonly high: number | null;
}

export interface ShownTarget {
  /** In tenths of a repetition. */
  readonly shown: TargetInterval;
  readonly whole: WholeRange;
}

/** Tenths of a repetition, finer than anybody can judge. */
const PARTS = 10;
/** @param interval with low ≤ point ≤ high, none below 0 */
export function showTarget({ point, low, high }: TargetInterval): ShownTarget {
  const round = (value: number) => Math.round(value * PARTS) / PARTS;
  const shown = { point: round(point), low: round(low), high: high === null ? null : round(high) };
  const [first, last] = [Math.ceil(shown.low), Math.floor(shown.point)];
  if (first <= last) return { shown, whole: { least: first, most: last } };
  const nearest = Math.round(shown.point);
  if (shown.low <= nearest && nearest <= (shown.high ?? nearest)) {
    return { shown, whole: { least: nearest, most: nearest } };
  }
  return { shown: { ...shown, low: last }, whole: { least: last, most: last } };
}

/** Where the interval is drawn from: its lower end to the last digit, or where it is told from, if that is further down; null without one. */
export function drawnLow({ low, shown }: { readonly low: number | null; readonly shown: TargetInterval | null }) {
  if (low === null || shown === null) return low;
  // Half a part is rounding, and a little for the arithmetic.
  return low - shown.low <= 0.5 / PARTS + 1e-9 ? low : shown.low;
}
