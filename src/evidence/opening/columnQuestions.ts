/** Names of a header that are no column's, but are likely to mean one: asked about, never taken for it. */
import type { DescribedColumn } from '../column.ts';
import { openCsv, readBlocks } from '../csv.ts';
import { readHeader } from '../header.ts';
import { makeColumnFinder } from './likelyColumns.ts';
import { rewriteCells } from './rewriteCells.ts';

type Columns = Readonly<Record<string, DescribedColumn<unknown>>>;
type Synonyms = Readonly<Record<string, readonly string[] | undefined>>;

export interface ColumnQuestion {
  /** The name as it stands in the header. */
  readonly written: string;
  /** Its place in the header, from 0. */
  readonly place: number;
  /** The first cells below it that hold something. */
  readonly values: readonly string[];
  /** Columns that it may mean and that the table does not have. */
  readonly candidates: readonly { readonly name: string; readonly description: string; readonly unit: string | null }[];
  /** Other names of the header that may mean one of these, too. */
  readonly rivals: readonly string[];
}

/** Rows whose cells are held against a column before it is asked about. */
const LOOKED_AT = 50;
/** Share of these that must be what the column holds: some are slips. */
const LEAST_FITTING = 0.5;
/** Names of a header beyond which it is no header, and nothing is asked. */
const MOST_NAMES = 1000;
/** Cells that a question shows. */
const SHOWN_VALUES = 3;

/** Questions in the order of the header. @param declined names that were said to mean none of their candidates */
export function askColumns(
  text: string,
  file: string,
  columns: Columns,
  synonyms: Synonyms,
  declined: ReadonlySet<string> = new Set(),
): readonly ColumnQuestion[] {
  const { names, rows } = readStart(text, file, columns, synonyms);
  if (names.length > MOST_NAMES) return [];
  const find = makeColumnFinder(
    Object.keys(columns).filter((name) => !names.includes(name)),
    synonyms,
  );
  const asked = names.flatMap((written, place) => {
    if (Object.hasOwn(columns, written) || declined.has(written) || names.indexOf(written) !== place) return [];
    const cells = rows.map((row) => row[place]?.trim() ?? '').filter((cell) => cell !== '');
    const likely = find(written).filter((name) => fits(cells, columns[name]));
    return likely.length > 0 ? [{ written, place, likely, values: cells.slice(0, SHOWN_VALUES) }] : [];
  });
  return asked.map(({ written, place, values, likely }) => ({
    written,
    place,
    values,
    candidates: likely.map((name) => ({ name, description: columns[name].description, unit: columns[name].unit })),
    rivals: asked
      .filter((other) => other.place !== place && other.likely.some((name) => likely.includes(name)))
      .map((other) => other.written),
  }));
}

/** The text with a name of its header exchanged. */
export function renameColumn(
  text: string,
  file: string,
  columns: Columns,
  synonyms: Synonyms,
  place: number,
  name: string,
): string {
  const { delimiter } = readStart(text, file, columns, synonyms);
  return rewriteCells(text, delimiter, (_cell, row, column) => (row === 0 && column === place ? name : null));
}

/** Whether the reader of rows would take a name for a slip, and refuse the table for it. */
export function isRefusedName(
  text: string,
  file: string,
  columns: Columns,
  synonyms: Synonyms,
  written: string,
): boolean {
  const { names, delimiter } = readStart(text, file, columns, synonyms);
  const { problems } = readHeader({ line: 1, cells: names }, columns, file, delimiter);
  return problems.some(({ kind, column }) => kind === 'unknown-column' && column === written);
}

/** The header and the first rows. */
function readStart(text: string, file: string, columns: Columns, synonyms: Synonyms) {
  const all = Object.keys(columns);
  const find = makeColumnFinder(all, synonyms);
  // A header of strange names alone shows its delimiter by what they mean.
  const source = openCsv(text, file, new Set(all), (cell) =>
    Object.hasOwn(columns, cell) ? cell : (find(cell)[0] ?? cell),
  );
  const first = readBlocks(source, file).next();
  const [header, ...records] = first.done ? [] : first.value.records;
  return {
    delimiter: source.delimiter,
    names: (header?.cells ?? []).map((cell) => cell.trim()),
    rows: records.slice(0, LOOKED_AT).map(({ cells }) => cells),
  };
}

/** Whether cells may stand in a column; a number with a decimal comma may, once it is read as one. */
function fits(cells: readonly string[], { cell: schema }: DescribedColumn<unknown>): boolean {
  const fitting = cells.filter(
    (cell) => schema.safeParse(cell).success || schema.safeParse(cell.replace(',', '.')).success,
  );
  return fitting.length >= LEAST_FITTING * cells.length;
}
