/** What an address says of a reader's own table, which never leaves the browser: so much that no other is taken for it. */
import type { CitedTable } from './citedTable.ts';
import { UNKNOWN_VERSION } from './shownVersion.ts';
import { ownVersionOf } from './tableInUse.ts';
import { UNHASHED } from './version.ts';

/** Characters of a version in an address. */
const LETTERS = 8;

/** null for a table of the site. */
export function citedVersionOf(address: string): string | null {
  const version = ownVersionOf(address);
  if (version === null) return null;
  return version.slice(0, LETTERS + (version.startsWith(UNHASHED) ? UNHASHED.length : 0));
}

/** Whether the version that an address names is one that others can hold a file to. */
export function isHashed({ version }: CitedTable): boolean {
  return version !== UNKNOWN_VERSION && !version.startsWith(UNHASHED);
}
