/**
 * Numbers with decimal commas, as most of the world writes them: told for a table as a whole, so that one answer reads
 * them all. A comma may also part thousands; what could be either, by its column, is left to the reader of rows.
 */
import type { Column } from '../column.ts';
import { openCsv, readBlocks } from '../csv.ts';
import { rewriteCells } from './rewriteCells.ts';

type Columns = Readonly<Record<string, Column<unknown>>>;

export interface DecimalCommas {
  readonly delimiter: string;
  /** Cells that would be read with decimal points. */
  readonly cells: number;
  /** Columns with such cells, with their places. */
  readonly columns: readonly { readonly name: string; readonly place: number }[];
  /** The first such cell. */
  readonly example: string;
  /** The first cell of each of these columns all of whose commas stand before three digits: it could mean thousands. */
  readonly couldBeThousands: readonly { readonly name: string; readonly cell: string }[];
}

/** Signs of numbers and of what stands with them: bounds, ranges, spreads. A cell with others is text. */
const NUMERIC = /^[\s\d.,+\-–—−<>=≤≥±~()%eE]*$/u;
const TOKEN = /\d[\d.,]*\d|\d|[.,]\d+/gu;
/** 41,25 and 1.593,5. */
const DECIMAL = /^(?:\d*|\d{1,3}(?:\.\d{3})+),\d+$/u;
const COULD_BE_EITHER = /^[1-9]\d{0,2},\d{3}$/u;
const THOUSANDS = /^[1-9]\d{0,2}(?:,\d{3}){2,}$/u;
const POINT = /\d?\.\d/u;
/** Times that numbers of one column may lie beyond the others before another reading of them is looked at. */
const FAR = 10;

/** What was seen in a column of numbers. */
interface Seen {
  readonly place: number;
  cells: number;
  example: string;
  /** Numbers that can only have a decimal comma, or none. */
  sure: number;
  readonly either: string[];
  thousands: boolean;
  least: number;
  most: number;
}

/**
 * Cells of a table that were written with decimal commas; null where there is none, where points were written too, so
 * that nobody can know which is which, and where commas part the cells and could part thousands in one of the columns.
 *
 * @param columns of the table, by name
 */
export function findDecimalCommas(text: string, file: string, columns: Columns): DecimalCommas | null {
  const source = openCsv(text, file, new Set(Object.keys(columns)));
  const seen = new Map<string, Seen>();
  let isHeader = true;
  for (const { records } of readBlocks(source, file)) {
    for (const { cells } of records) {
      if (isHeader) {
        cells.forEach((cell, place) => {
          const name = cell.trim();
          if (Object.hasOwn(columns, name) && readsNumbers(columns[name]) && !seen.has(name))
            seen.set(name, makeSeen(place));
        });
        isHeader = false;
        continue;
      }
      for (const column of seen.values()) {
        if (!look(column, cells[column.place] ?? '')) return null;
      }
    }
  }
  const found = [...seen].filter(([name, column]) => column.cells > 0 && isDecimal(column, columns[name]));
  if (!found.some(([, { sure }]) => sure > 0)) return null;
  const couldBeThousands = found.flatMap(([name, { sure, either }]) => (sure === 0 ? [{ name, cell: either[0] }] : []));
  if (source.delimiter === ',' && couldBeThousands.length > 0) return null;
  return {
    delimiter: source.delimiter,
    cells: found.reduce((sum, [, column]) => sum + column.cells, 0),
    columns: found.map(([name, { place }]) => ({ name, place })),
    example: found.find(([, { sure }]) => sure > 0)?.[1].example ?? '',
    couldBeThousands,
  };
}

/** The text with points in place of those commas, all else as it was. */
export function convertDecimalCommas(text: string, found: DecimalCommas): string {
  const places = new Set(found.columns.map(({ place }) => place));
  return rewriteCells(text, found.delimiter, (cell, row, column) =>
    row > 0 && places.has(column) && hasComma(cell) ? writePoints(cell) : null,
  );
}

function writePoints(cell: string): string {
  return cell.replace(TOKEN, (token) => (DECIMAL.test(token) ? token.replaceAll('.', '').replace(',', '.') : token));
}

/** Whether a column takes numbers, ranges of them or bounds, and no words. */
export function readsNumbers({ cell }: Column<unknown>): boolean {
  return !cell.safeParse('a').success && NUMBERS.some((number) => cell.safeParse(number).success);
}

/** One of these is within the limits of any column. */
const NUMBERS = ['1', '0.5', '20', '95', '2000'];

function hasComma(cell: string): boolean {
  return cell.includes(',') && NUMERIC.test(cell) && (cell.match(TOKEN) ?? []).some((token) => DECIMAL.test(token));
}

function makeSeen(place: number): Seen {
  return { place, cells: 0, example: '', sure: 0, either: [], thousands: false, least: Infinity, most: 0 };
}

/** Takes a cell into account; false where it has a decimal point, so that the table has no one sign. */
function look(column: Seen, cell: string): boolean {
  if (cell === '' || !NUMERIC.test(cell)) return true;
  for (const token of cell.match(TOKEN) ?? []) {
    if (THOUSANDS.test(token)) column.thousands = true;
    else if (COULD_BE_EITHER.test(token)) column.either.push(token);
    else if (DECIMAL.test(token)) {
      if (column.sure++ === 0) column.example = cell.trim();
      compare(column, Number(writePoints(token)));
    } else if (POINT.test(token)) return false;
    else compare(column, Number(token));
  }
  if (hasComma(cell)) column.cells++;
  return true;
}

function compare(column: Seen, value: number): void {
  if (!(value > 0)) return;
  column.least = Math.min(column.least, value);
  column.most = Math.max(column.most, value);
}

/** Whether the commas of a column are decimal ones, as far as its other numbers and its kind can tell. */
function isDecimal({ either, thousands, least, most }: Seen, { field }: Column<unknown>): boolean {
  if (thousands) return false;
  if (field.type === 'integer' && either.length > 0) return false;
  if (either.length === 0) return true;
  const isFar = (value: number) => value < least / FAR || value > FAR * most;
  const asDecimals = either.filter((token) => isFar(Number(writePoints(token))));
  const asThousands = either.filter((token) => isFar(Number(token.replace(',', ''))));
  // Without another number in the column there is nothing to hold them against, and the table's sign decides.
  return most === 0 || asDecimals.length <= asThousands.length;
}
