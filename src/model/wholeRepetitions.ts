/**
 * A target as people are told it: in tenths of a repetition, and in whole ones, which alone can be counted.
 *
 * The range of whole repetitions runs from the first whole number inside the interval that is shown to the last one
 * that the shown estimate reaches. Where the interval begins above the estimate's whole number it is the first inside
 * alone; where no whole number is inside, the interval is shown out to the whole numbers around it, and the lower one
 * is told, which keeps more. So no number that is told lies outside the interval beside it.
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
  const first = Math.ceil(shown.low);
  if (shown.high !== null && first > shown.high) {
    const least = Math.floor(shown.low);
    return { shown: { ...shown, low: least, high: first }, whole: { least, most: least } };
  }
  return { shown, whole: { least: first, most: Math.max(first, Math.floor(shown.point)) } };
}
