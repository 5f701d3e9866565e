/** Which table an address is of, where it says so: `table=` and the version of the site's, `own-` before that of a reader's. */

export const TABLE = 'table';
export const OWN = 'own-';

export interface CitedTable {
  /** First characters of the SHA-256 of the table, or of the name of a table that could not be hashed; “unknown” without either. */
  readonly version: string;
  /** True of a table that never left the browser it was opened in. */
  readonly own: boolean;
}

/** null where the address names none, or what is no version. */
export function readCitedTable(query: URLSearchParams): CitedTable | null {
  const [whole, own, version] = /^(own-)?((?:unhashed-)?[\da-f]{8}|unknown)$/u.exec(query.get(TABLE) ?? '') ?? [];
  return whole === undefined ? null : { version, own: own !== undefined };
}
