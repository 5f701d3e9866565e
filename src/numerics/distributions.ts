/**
 * Distribution functions the inference needs, in full double precision, from the stdlib project.
 *
 * Degrees of freedom are real-valued: Satterthwaite's approximation gives fractions, often near 1.
 */
import normalQuantileOf from '@stdlib/stats-base-dists-normal-quantile';
import studentCdf from '@stdlib/stats-base-dists-t-cdf';
import studentQuantileOf from '@stdlib/stats-base-dists-t-quantile';

/** Value of Student's t that a share `p` (0 to 1) lies below, `df` > 0; NaN outside. */
export function studentQuantile(p: number, df: number): number {
  return studentQuantileOf(p, df);
}

/** Probability that |T| exceeds |t| for Student's t with `df` > 0; NaN outside. */
export function studentTwoSidedP(t: number, df: number): number {
  return 2 * studentCdf(-Math.abs(t), df);
}

/** Value of the standard normal distribution that a share `p` (0 to 1) lies below. */
export function normalQuantile(p: number): number {
  return normalQuantileOf(p, 0, 1);
}

/** Value of χ² with 1 df that a share `p` (0 to 1) lies below: the square of a standard normal, so that |Z| is asked. */
export function chiSquareOneQuantile(p: number): number {
  return normalQuantile((1 + p) / 2) ** 2;
}
