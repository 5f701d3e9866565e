/**
 * Whether growth with reserve can be told from growth at reserve 0: at which reserves the contrast
 * x(r) − x(0) is rejected, of any curve. A straight line or a logarithm rises or falls throughout, so that for
 * these it is the test of their one slope; a curve that bends may lose at one reserve and gain at another.
 *
 * Each reserve is tested by itself, at the level of the intervals that are shown.
 */
import type { CurveBasis } from './curve.ts';
import type { Estimate, ReserveDifference } from './result.ts';
import { type ContrastInference, inferContrast, makeAcceptance } from './robust.ts';

/** Distance of the reserves asked, repetitions: as fine as reserve is reported. */
const STEP = 0.5;

/**
 * @param x design row at a reserve
 * @param furthest largest reserve studied, repetitions
 */
export function findReserveDifference(
  inference: ContrastInference,
  x: CurveBasis['at'],
  furthest: number,
  confidence: number,
): ReserveDifference {
  const isOpen = makeAcceptance(inference, confidence);
  const sure = listContrasts(x, furthest)
    .filter((contrast) => !isOpen(contrast))
    .map((contrast) => inferContrast(inference, contrast, confidence));
  const clearest = (found: readonly Estimate[]) =>
    found.reduce<Estimate | null>((best, one) => (best === null || one.p < best.p ? one : best), null);
  return {
    less: clearest(sure.filter(({ estimate }) => estimate < 0)),
    more: clearest(sure.filter(({ estimate }) => estimate > 0)),
  };
}

/** Whether any difference at all can be told from none, without saying which. */
export function isDifferenceSeen(
  inference: ContrastInference,
  x: CurveBasis['at'],
  furthest: number,
  confidence: number,
): boolean {
  const isOpen = makeAcceptance(inference, confidence);
  return listContrasts(x, furthest).some((contrast) => !isOpen(contrast));
}

function listContrasts(x: CurveBasis['at'], furthest: number): readonly (readonly number[])[] {
  const start = x(0);
  const steps = Math.max(1, Math.ceil(furthest / STEP));
  return Array.from({ length: steps }, (_, i) => x(i + 1 === steps ? furthest : (i + 1) * STEP)).map((row) =>
    row.map((value, j) => value - start[j]),
  );
}
