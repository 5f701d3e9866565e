/** The header row: which column stands where, and what is missing, unknown or doubled. */
import { distance } from 'fastest-levenshtein';
import type { Column } from './column.ts';
import type { CsvRecord } from './csv.ts';
import type { Problem } from './problem.ts';

export interface Header {
  /** Names of the known columns at their places; null at a column that is not read. */
  readonly names: readonly (string | null)[];
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
}

/** Letters that may differ for a name to count as a misspelling of another, by the letters of that other. */
const MISSPELLED_LETTERS = [
  { from: 7, letters: 2 },
  { from: 4, letters: 1 },
] as const;

/**
 * @param header the first record
 * @param columns of the table, by name
 * @param file name for messages
 * @param delimiter by which the record was split, to quote it whole
 */
export function readHeader(
  { cells, line }: CsvRecord,
  columns: Readonly<Record<string, Column<unknown>>>,
  file: string,
  delimiter: string,
): Header {
  const given = cells.map((cell) => cell.trim());
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  const place = { file, line } as const;
  const seen = new Set<string>();
  const absent = Object.keys(columns).filter((name) => !given.includes(name));
  const names = given.map((name) => {
    if (!Object.hasOwn(columns, name)) {
      const meant = nearestMisspelt(name, absent);
      if (meant === null) warnings.push(reportUnread(name, place));
      else problems.push(reportMisspelt(name, meant, place));
      return null;
    }
    if (seen.has(name)) {
      problems.push(reportDoubled(name, place));
      return null;
    }
    seen.add(name);
    return name;
  });
  if (seen.size === 0) problems.push(reportStrange(cells.join(delimiter), place));
  for (const [name, { required }] of Object.entries(columns)) {
    if (required && !seen.has(name)) problems.push(reportMissing(name, place));
  }
  return { names, problems, warnings };
}

type Place = Pick<Problem, 'file' | 'line'>;

function reportDoubled(name: string, place: Place): Problem {
  return {
    ...place,
    kind: 'header',
    column: name,
    value: name,
    expected: 'every column once',
    remedy: 'Remove one of the two columns.',
  };
}

function reportMisspelt(name: string, meant: string, place: Place): Problem {
  return {
    ...place,
    kind: 'unknown-column',
    column: name,
    value: name,
    expected: `a column of the table; \`${meant}\` is missing`,
    remedy: `Rename the column to ${meant}.`,
  };
}

function reportUnread(name: string, place: Place): Problem {
  return {
    ...place,
    kind: 'unknown-column',
    column: name || null,
    value: name,
    expected: 'a column that the data dictionary names',
    remedy: 'The column is not read.',
  };
}

function reportStrange(header: string, place: Place): Problem {
  return {
    ...place,
    kind: 'header',
    column: null,
    value: header,
    expected: 'the column names of the data dictionary, separated by commas, semicolons or tabs',
    remedy: 'Look at the delimiter, and whether the header is the first row.',
  };
}

function reportMissing(name: string, place: Place): Problem {
  return {
    ...place,
    kind: 'missing-column',
    column: name,
    value: '',
    expected: `a column named ${name}`,
    remedy: 'Add the column; the data dictionary says what stands in it.',
  };
}

/** The candidate with the same letters in another case or with other separators, else with nearly the same. */
function nearestMisspelt(name: string, candidates: readonly string[]): string | null {
  const plain = (word: string) => word.toLowerCase().replace(/[^a-z0-9]/gu, '');
  const given = plain(name);
  let nearest: string | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    const meant = plain(candidate);
    const allowed = MISSPELLED_LETTERS.find(({ from }) => meant.length >= from)?.letters ?? 0;
    // Lengths first: a header cell may be very long, and the distance takes the product of the lengths.
    if (Math.abs(given.length - meant.length) > allowed) continue;
    const letters = distance(given, meant);
    if (letters > allowed || letters >= least) continue;
    nearest = candidate;
    least = letters;
  }
  return nearest;
}
