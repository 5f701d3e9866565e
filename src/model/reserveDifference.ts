/**
 * Whether growth with reserve can be told from growth at reserve 0, or at the least reserve studied where nobody
 * trained near 0: at which reserves the contrast with that one, x(r) − x(from), is rejected, of any curve. A straight line
 * or a logarithm rises or falls throughout, so that for these it is the test of their one slope; a curve that bends may
 * lose at one reserve and gain at another.
 *
 * Each reserve is tested by itself, at the level of the intervals that are shown.
 */
import type { CurveBasis } from './curve.ts';
import type { Estimate, ReserveDifference } from './result.ts';
import { type ContrastInference, inferContrast, makeAcceptance } from './robust.ts';

/** Distance of the reserves asked, repetitions: as fine as reserve is reported. */
const STEP = 0.5;
/** Share of p below which two are equally clear: a straight line's are, at all reserves, but for rounding. */
const AS_CLEAR = 1e-9;

/**
 * @param x design row at a reserve
 * @param furthest largest reserve studied, repetitions
 * @param from reserve that the others are compared with, repetitions
 */
export function findReserveDifference(
  inference: ContrastInference,
  x: CurveBasis['at'],
  furthest: number,
  confidence: number,
  from = 0,
): ReserveDifference {
  const start = x(from);
  const isOpen = makeAcceptance(inference, confidence);
  const sure = Array.from({ length: Math.max(1, Math.ceil((furthest - from) / STEP)) }, (_, i) =>
    Math.min(furthest, from + (i + 1) * STEP),
  )
    .map((reserve) => x(reserve).map((value, j) => value - start[j]))
    .filter((contrast) => !isOpen(contrast))
    .map((contrast) => inferContrast(inference, contrast, confidence));
  // Of equally clear ones that at the least reserve, so that no last digit chooses.
  const clearest = (found: readonly Estimate[]) =>
    found.reduce<Estimate | null>((best, one) => (best === null || one.p < (1 - AS_CLEAR) * best.p ? one : best), null);
  return {
    less: clearest(sure.filter(({ estimate }) => estimate < 0)),
    more: clearest(sure.filter(({ estimate }) => estimate > 0)),
  };
}
