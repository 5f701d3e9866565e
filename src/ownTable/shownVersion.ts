/** The version of a table as people see it. */
import { ownVersionOf } from './tableInUse.ts';
import { UNHASHED } from './version.ts';

/** In place of a version that is not known. */
export const UNKNOWN_VERSION = 'unknown';

/** First characters of the table's SHA-256, as the build shows it; “unknown” where that is not known. */
export function shownVersionOf(address: string): string {
  const version = ownVersionOf(address) ?? address.split('#')[1] ?? UNHASHED;
  return version.startsWith(UNHASHED) ? UNKNOWN_VERSION : version.slice(0, 8);
}
