/** The interval of one row's effect from its sampling variance alone. */
import { normalQuantile } from '../numerics/distributions.ts';

/** y ± z √v. @param confidence of the interval, 0 to 1 open */
export function intervalOf(
  { y, v }: { readonly y: number; readonly v: number },
  confidence: number,
): { readonly ciLow: number; readonly ciHigh: number } {
  const reach = normalQuantile((1 + confidence) / 2) * Math.sqrt(v);
  return { ciLow: y - reach, ciHigh: y + reach };
}
