/** Which table an address is of, where it says so: `table=` and the version of the site's, `own-` before that of a reader's. */

export const TABLE = 'table';
export const OWN = 'own-';

export interface CitedTable {
  /** First characters of the SHA-256 of the table, or of the name of an own table that could not be hashed; “unknown” without either. */
  readonly version: string;
  /** True of a table that never left the browser it was opened in. */
  readonly own: boolean;
}

/** null where the address names none, or what is no version: that of the site's table is always known. */
export function readCitedTable(query: URLSearchParams): CitedTable | null {
  const written = query.get(TABLE) ?? '';
  const own = written.startsWith(OWN);
  const version = own ? written.slice(OWN.length) : written;
  const isVersion = own ? /^(?:(?:unhashed-)?[\da-f]{8}|unknown)$/u : /^[\da-f]{8}$/u;
  return isVersion.test(version) ? { version, own } : null;
}
