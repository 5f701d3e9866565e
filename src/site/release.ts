/** Who is cited, and since when, as CITATION.cff says. */
import { readFileSync } from 'node:fs';

const citation = readFileSync('CITATION.cff', 'utf8');

/** Day of the release, YYYY-MM-DD. */
const date = read(/^date-released: (\d{4}-\d\d-\d\d)$/mu, 'a date of release');

export const release = {
  /** The authors as one name. */
  authors: read(/^ {2}- name: (.+)$/mu, 'an author’s name'),
  version: read(/^version: (\S+)$/mu, 'a version'),
  date,
  /** Year of the release. */
  year: Number(date.slice(0, 4)),
} as const;

function read(line: RegExp, what: string): string {
  const found = line.exec(citation)?.[1];
  if (found === undefined) throw new Error(`CITATION.cff: expected ${what}, a line like ${line.source}`);
  return found.trim();
}
