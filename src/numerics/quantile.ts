/** Sample quantiles by linear interpolation of the order statistics. */

/**
 * Quantile of a sample, Hyndman & Fan 1996 (Am Stat 50:361) type 7: h = (n − 1) p.
 * (simple-statistics takes an order statistic without interpolating, which would move spline knots.)
 *
 * @param sorted ascending, at least one value
 * @param share 0 to 1, closed
 */
export function quantileOfSorted(sorted: ArrayLike<number>, share: number): number {
  const h = (sorted.length - 1) * share;
  const below = Math.floor(h);
  const low = sorted[below];
  const high = sorted[Math.min(below + 1, sorted.length - 1)];
  return low + (h - below) * (high - low);
}
