/** A sheet as both formats are read into it: the cells that hold something, as text, and what is odd about some. */
import { FileRefusal } from '../refusal.ts';
import { refuseBroken } from './parts.ts';

/**
 * What a cell is. `date` is also a time; `share` is shown by the spreadsheet as per cent, its text as shown; `error` is
 * the result of a formula that could not be worked out.
 */
export type CellKind = 'text' | 'number' | 'truth' | 'share' | 'date' | 'error';

export interface OddCell {
  /** From 0. */
  readonly row: number;
  readonly column: number;
  readonly kind: 'date' | 'error';
  readonly text: string;
}

/** Cells that were made one, both ends included, from 0. */
export interface MergedCells {
  readonly fromRow: number;
  readonly toRow: number;
  readonly fromColumn: number;
  readonly toColumn: number;
}

export interface Sheet {
  readonly name: string;
  /** Text of the cells at their places; rows and cells without any may be missing. */
  readonly rows: readonly (readonly (string | undefined)[] | undefined)[];
  readonly odd: readonly OddCell[];
  readonly merged: readonly MergedCells[];
  /** TRUE or FALSE, written as yes and no. */
  readonly truths: number;
  /** Rows that the spreadsheet hides or filters out. */
  readonly hiddenRows: number;
}

/** Sheet under construction. */
export interface SheetBuilder {
  readonly put: (row: number, column: number, kind: CellKind, text: string) => void;
  readonly merge: (range: MergedCells) => void;
  readonly hideRow: () => void;
  readonly finish: () => Sheet;
}

/** Columns of a sheet at most: ten times as many as the table has, and few enough to hold for every row. */
const MOST_COLUMNS = 1000;
/** Rows, as many as the programs have. */
const MOST_ROWS = 1_048_576;
/** Cells of a file that hold something: 100,000 rows with 100 columns. */
const MOST_CELLS = 10_000_000;
/** Characters of a file's cells: 20 a cell, and few enough for the text that is made of them. */
const MOST_CHARACTERS = 200_000_000;
/** Merged ranges that are kept; more are no table, and the first are told. */
const MOST_MERGED = 10_000;

/** Makes builders of the sheets of one file, which share its bound of cells. */
export function makeSheetBuilders(): (name: string) => SheetBuilder {
  let cells = 0;
  let characters = 0;
  return (name) => {
    const rows: string[][] = [];
    const odd: OddCell[] = [];
    const merged: MergedCells[] = [];
    let truths = 0;
    let hiddenRows = 0;
    return {
      put: (row, column, kind, text) => {
        if (text.trim() === '') return;
        if (!(row >= 0)) throw refuseBroken();
        if (column >= MOST_COLUMNS) throw refuse(name, `a cell in column ${column + 1}`, `${MOST_COLUMNS} columns`);
        if (row >= MOST_ROWS) throw refuse(name, `a cell in row ${row + 1}`, `${MOST_ROWS} rows`);
        characters += text.length;
        if (++cells > MOST_CELLS || characters > MOST_CHARACTERS)
          throw refuse(name, 'more', `${MOST_CELLS} filled cells with ${MOST_CHARACTERS} characters`);
        rows[row] ??= [];
        rows[row][column] = text;
        if (kind === 'date' || kind === 'error') odd.push({ row, column, kind, text });
        if (kind === 'truth') truths++;
      },
      merge: (range) => {
        if (merged.length < MOST_MERGED) merged.push(range);
      },
      hideRow: () => {
        hiddenRows++;
      },
      finish: () => ({ name, rows, odd, merged, truths, hiddenRows }),
    };
  };
}

function refuse(sheet: string, value: string, most: string): FileRefusal {
  return new FileRefusal({
    value: `${value} in the sheet “${sheet}”`,
    expected: `at most ${most}`,
    remedy: 'Delete what stands beside and below the table, or save the sheet as CSV and open that.',
  });
}

/** A number as text: the fewest digits that read back to the same number, however the spreadsheet rounds it for show. */
export function writeNumber(stored: string): string {
  const value = Number(stored);
  return stored.trim() !== '' && Number.isFinite(value) ? String(value) : stored;
}

/** Digits beyond which a share times a hundred has only its rounding: 0.57 is stored as 0.56999999999999995. */
const SHARE_DIGITS = 15;

/** A share as the spreadsheet shows it, “75%”: what people typed, and what a column of per cent refuses with its reason. */
export function writeShare(stored: string): string {
  const value = Number(stored);
  return Number.isFinite(value) ? `${Number((100 * value).toPrecision(SHARE_DIGITS))}%` : stored;
}
