/** Robust inference that is known from the start, for tests of what is made of it. */
import type { ContrastInference } from '../../src/model/robust.ts';

/**
 * Coefficients with a covariance and the same degrees of freedom for every contrast: forms whose trace is
 * |h|² and whose squares are |h|⁴/df.
 *
 * @param covariance p×p, by rows
 */
export function knownInference(
  coefficients: readonly number[],
  covariance: readonly (readonly number[])[],
  df: number,
): ContrastInference {
  const p = coefficients.length;
  const places = coefficients.map((_, i) => i);
  const pairs = places.flatMap((i) => places.slice(i).map((j) => [i, j] as const));
  // |h|⁴ is Σ hᵢ⁴ + 2 Σ hᵢ²hₖ², i < k.
  const square = (i: number, j: number, k: number, l: number) => (i !== j || k !== l ? 0 : i === k ? 1 : 2);
  return {
    p,
    coefficients: Float64Array.from(coefficients),
    covariance: Float64Array.from(covariance.flat()),
    root: Float64Array.from(places.flatMap((i) => places.map((j) => (i === j ? 1 : 0)))),
    forms: {
      trace: Float64Array.from(pairs, ([i, j]) => Number(i === j)),
      squares: Float64Array.from(
        pairs.flatMap(([i, j]) => pairs.filter(([k]) => k >= j).map(([k, l]) => square(i, j, k, l) / df)),
      ),
    },
  };
}

/** Every x at which |a + b x| ≤ t √(var of a + b x): the roots of the quadratic, which must be real, and its side. */
export function fieller(
  [a, b]: readonly [number, number],
  [aa, ab, bb]: readonly [number, number, number],
  t: number,
): { low: number; high: number; isBetween: boolean } {
  const square = b * b - t * t * bb;
  const half = a * b - t * t * ab;
  const constant = a * a - t * t * aa;
  const root = Math.sqrt(half * half - square * constant);
  const ends = [(-half - root) / square, (-half + root) / square].sort((x, y) => x - y);
  return { low: ends[0], high: ends[1], isBetween: square > 0 };
}
