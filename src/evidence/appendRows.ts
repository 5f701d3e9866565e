/** Rows to put behind what a CSV file holds already, written as the file is (RFC 4180). */
import Papa from 'papaparse';
import type { Column } from './column.ts';
import { openCsv, readBlocks } from './csv.ts';
import { readHeader } from './header.ts';

export interface Addition {
  /** To be appended to the file as it is; empty where there are no rows. */
  readonly text: string;
  /** Columns that the table does not have although a row has something to say there. */
  readonly unwritten: readonly string[];
}

/**
 * Line breaks, delimiter and order of columns are the file's own; a column that is not of the
 * dictionary stays empty. The cells must have passed the schema, which lets no formula through.
 *
 * @param existing the whole content of the file, with a header that has no problem
 * @param rows cells by column; one that is not named is empty
 */
export function appendRows(
  existing: string,
  rows: readonly Readonly<Record<string, string>>[],
  columns: Readonly<Record<string, Column<unknown>>>,
  file: string,
): Addition {
  if (rows.length === 0) return { text: '', unwritten: [] };
  const source = openCsv(existing, file, new Set(Object.keys(columns)));
  const [block] = readBlocks(source, file);
  const { names } = readHeader(block.records[0], columns, file, source.delimiter);
  const newline = /\r\n|\n|\r/u.exec(existing)?.[0] ?? '\n';
  const data = rows.map((row) => names.map((name) => (name === null ? '' : (row[name] ?? ''))));
  const before = /[\r\n]$/u.test(existing) ? '' : newline;
  const lines = Papa.unparse(data, { delimiter: source.delimiter, newline: '\n' }).replaceAll('\n', newline);
  return {
    text: `${before}${lines}${newline}`,
    unwritten: Object.keys(columns).filter((column) => !names.includes(column) && rows.some((row) => row[column])),
  };
}
