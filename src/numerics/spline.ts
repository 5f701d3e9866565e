/** Restricted cubic spline with three knots: a curve that is straight beyond the outer knots. */
import { quantileOfSorted } from './quantile.ts';

export type Knots = readonly [number, number, number];

/** Quantiles at which three knots stand (Harrell 2015, Regression Modeling Strategies, ch. 2). */
const KNOT_SHARES = [0.1, 0.5, 0.9] as const;

/** Knots at the 10th, 50th and 90th percentile of a sample of at least one value. */
export function threeKnots(sample: ArrayLike<number>): Knots {
  const sorted = Float64Array.from(sample).sort();
  return [
    quantileOfSorted(sorted, KNOT_SHARES[0]),
    quantileOfSorted(sorted, KNOT_SHARES[1]),
    quantileOfSorted(sorted, KNOT_SHARES[2]),
  ];
}

/**
 * The nonlinear term beside 1 and x (Harrell 2015, ch. 2), divided by (k₃ − k₁)² so that it has
 * the unit of x. Finite only for k₁ < k₂ < k₃.
 */
export function splineTerm(x: number, [first, middle, last]: Knots): number {
  const cube = (knot: number) => Math.max(x - knot, 0) ** 3;
  return (
    (cube(first) -
      (cube(middle) * (last - first)) / (last - middle) +
      (cube(last) * (middle - first)) / (last - middle)) /
    (last - first) ** 2
  );
}
