/**
 * The score interval of a share (Wilson 1927, J Am Stat Assoc 22:209):
 *
 *     (p + z²/2n ± z √(p (1 − p)/n + z²/4n²)) / (1 + z²/n)
 *
 * with p = count / n. It stays within 0 and 1 and has a width also where p is 0 or 1.
 */
import { normalQuantile } from './distributions.ts';

/** A share of a whole, with the interval that as few as these leave it. */
export interface ShareInterval {
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/**
 * @param count how many of `of`, 0 to `of`
 * @param of at least 1
 * @param confidence 0 to 1 open
 * @throws where the count is none of as many
 */
export function inferShare(count: number, of: number, confidence: number): ShareInterval {
  if (!(of >= 1 && count >= 0 && count <= of)) throw new Error(`invalid count; not from 0 to ${of}: ${count}`);
  const share = count / of;
  const z = normalQuantile((1 + confidence) / 2);
  const scale = 1 + z ** 2 / of;
  const centre = (share + z ** 2 / (2 * of)) / scale;
  const reach = (z / scale) * Math.sqrt((share * (1 - share)) / of + z ** 2 / (4 * of ** 2));
  // Of none and of all the end is 0 and 1 exactly, which the last digit may miss.
  return { share, low: count === 0 ? 0 : centre - reach, high: count === of ? 1 : centre + reach };
}
