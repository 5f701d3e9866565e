/**
 * Problems of many lines that point at the header: names exchanged, one missing, a column shifted. The lines are
 * still told one by one; this says first where to look.
 */
import type { Column } from './column.ts';
import type { Problem } from './problem.ts';

/** The header of a table that was read, and how much stood below it. */
export interface HeaderFacts {
  readonly file: string;
  readonly line: number;
  /** Names of the known columns at their places; null at a column that is not read. */
  readonly names: readonly (string | null)[];
  /** Records below the header. */
  readonly records: number;
}

/** Lines with a problem in a column before the column itself is suspected: fewer may well be slips. */
const LEAST_LINES = 3;
/** Share of the lines from which on it is suspected. */
const SUSPECT_SHARE = 0.5;

/** @param problems of the lines below the header */
export function suspectHeader(
  problems: readonly Problem[],
  header: HeaderFacts,
  columns: Readonly<Record<string, Column<unknown>>>,
): Problem[] {
  const lines = new Map<string | null, Set<number>>();
  for (const { line, column, kind } of problems) {
    if (line === null || line <= header.line || (column === null && kind !== 'ragged-line')) continue;
    const seen = lines.get(column);
    if (seen) seen.add(line);
    else lines.set(column, new Set([line]));
  }
  return [...lines].flatMap(([column, wrong]): Problem[] => {
    const first = [...wrong].reduce((least, line) => Math.min(least, line));
    const place = { file: header.file, line: header.line, column };
    if (column !== null && !header.names.includes(column)) {
      return [
        {
          ...place,
          kind: 'missing-column',
          value: '',
          expected: `a column named ${column}, which ${wrong.size} line(s) need, line ${first} first`,
          remedy: 'Add the column; the data dictionary says what stands in it.',
        },
      ];
    }
    if (wrong.size < LEAST_LINES || wrong.size < SUSPECT_SHARE * header.records) return [];
    const share = `${wrong.size} of ${header.records} lines`;
    if (column === null) {
      return [
        {
          ...place,
          kind: 'header',
          value: `${header.names.length} names, another number in ${share}`,
          expected: 'as many names as the lines have cells',
          remedy: 'Look for a missing or doubled name before you look at the lines.',
        },
      ];
    }
    return [
      {
        ...place,
        kind: 'header',
        value: `problems in ${share}`,
        expected: `cells that are ${columns[column]?.expected}`,
        remedy: 'Look whether the header names the right column before you look at the lines.',
      },
    ];
  });
}
