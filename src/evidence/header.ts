/** The header row: which column stands where, and what is missing, unknown or doubled. */
import { distance } from 'fastest-levenshtein';
import type { Column } from './column.ts';
import type { Problem } from './problem.ts';

export interface Header {
  /** Names of the known columns at their places; null at a column that is not read. */
  readonly names: readonly (string | null)[];
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
}

/** Letters that may differ for a name to count as a misspelling of another. */
const MISSPELLED_LETTERS = 3;

export function readHeader(
  cells: readonly string[],
  columns: Readonly<Record<string, Column<unknown>>>,
  file: string,
): Header {
  const known = Object.keys(columns);
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  const seen = new Set<string>();
  const given = cells.map((cell) => cell.trim());
  const absent = known.filter((name) => !given.includes(name));
  const place = { file, line: 1 } as const;
  const names = given.map((name) => {
    if (Object.hasOwn(columns, name)) {
      if (!seen.has(name)) {
        seen.add(name);
        return name;
      }
      problems.push({
        ...place,
        kind: 'header',
        column: name,
        value: name,
        expected: 'every column once',
        remedy: 'Remove one of the two columns.',
      });
      return null;
    }
    const meant = absent.find((candidate) => isMisspelling(name, candidate));
    if (meant) {
      problems.push({
        ...place,
        kind: 'unknown-column',
        column: name,
        value: name,
        expected: `a column of the table; \`${meant}\` is missing`,
        remedy: `Rename the column to ${meant}.`,
      });
    } else {
      warnings.push({
        ...place,
        kind: 'unknown-column',
        column: name || null,
        value: name,
        expected: 'a column that the data dictionary names',
        remedy: 'The column is not read.',
      });
    }
    return null;
  });
  for (const name of known) {
    if (columns[name].required && !seen.has(name)) {
      problems.push({
        ...place,
        kind: 'missing-column',
        column: name,
        value: '',
        expected: `a column named ${name}`,
        remedy: 'Add the column; the data dictionary says what stands in it.',
      });
    }
  }
  return { names, problems, warnings };
}

/** The same letters in another case or with other separators, or nearly the same letters. */
function isMisspelling(name: string, candidate: string): boolean {
  const plain = (word: string) => word.toLowerCase().replace(/[^a-z0-9]/gu, '');
  if (plain(name) === plain(candidate)) return true;
  return candidate.length > MISSPELLED_LETTERS * 2 && distance(plain(name), plain(candidate)) < MISSPELLED_LETTERS;
}
