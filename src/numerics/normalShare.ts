/** Shares of the normal distribution, apart from the quantiles: no page but those of practice asks for them. */
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';

/** Share (0 to 1) of the standard normal distribution that lies below `z`. */
export function normalShareBelow(z: number): number {
  return normalCdf(z, 0, 1);
}
