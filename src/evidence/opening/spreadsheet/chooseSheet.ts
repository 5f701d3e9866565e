/** Which sheet of a spreadsheet file is the table, and in which row its header stands. */
import { FileRefusal } from '../refusal.ts';
import type { Sheet } from './sheet.ts';

export interface ChosenSheet {
  readonly sheet: Sheet;
  /** Row of the header, from 0. */
  readonly header: number;
  /** Names of other sheets whose header fits as well. */
  readonly alike: readonly string[];
}

/** Rows from the top that are looked at: titles and remarks stand above a header. */
const LOOKED_AT = 20;
/** Names of columns that make a row a header: a single one may be a word of a title. */
const LEAST_NAMES = 3;
/** Sheets that a message names. */
const SHOWN_SHEETS = 10;

/**
 * The sheet with most names of columns in one row, the first of several. One with nothing below its header, as an empty
 * table that was left in the file, is taken only where no other has enough names.
 *
 * @param isName whether a cell names, or nearly names, a column
 * @throws FileRefusal where none has enough
 */
export function chooseSheet(sheets: readonly Sheet[], isName: (cell: string) => boolean): ChosenSheet {
  const found = sheets.map((sheet) => ({ sheet, ...findHeader(sheet, isName) }));
  const fitting = found.filter(({ names }) => names >= LEAST_NAMES);
  const filled = fitting.filter(({ isFilled }) => isFilled);
  const candidates = filled.length > 0 ? filled : fitting;
  const most = Math.max(...candidates.map(({ names }) => names));
  const best = candidates.find(({ names }) => names === most);
  if (!best) throw refuseAll(sheets);
  const others = fitting.filter((one) => one !== best && one.names >= most);
  return { sheet: best.sheet, header: best.header, alike: others.map(({ sheet }) => sheet.name) };
}

function findHeader(
  { rows }: Sheet,
  isName: (cell: string) => boolean,
): { readonly header: number; readonly names: number; readonly isFilled: boolean } {
  let header = 0;
  let most = 0;
  for (let row = 0; row < Math.min(rows.length, LOOKED_AT); row++) {
    const cells = (rows[row] ?? []).filter((cell) => cell !== undefined && isName(cell.trim()));
    const names = new Set(cells).size;
    if (names > most) [header, most] = [row, names];
  }
  const isFilled = rows.slice(header + 1).some((row) => row?.some((cell) => cell !== undefined && cell.trim() !== ''));
  return { header, names: most, isFilled };
}

function refuseAll(sheets: readonly Sheet[]): FileRefusal {
  const names = sheets
    .slice(0, SHOWN_SHEETS)
    .map(({ name, rows }) => `“${name}”${rows.length === 0 ? ' (empty)' : ''}`);
  const more = sheets.length > SHOWN_SHEETS ? ` and ${sheets.length - SHOWN_SHEETS} more` : '';
  return new FileRefusal({
    value: sheets.length === 0 ? 'a spreadsheet file without sheets' : 'no sheet that has them',
    expected: `a sheet with the column names of the data dictionary in one of its first ${LOOKED_AT} rows`,
    remedy: `${sheets.length === 0 ? '' : `Its sheets are ${names.join(', ')}${more}. `}Write the names in a header as the data dictionary has them.`,
  });
}
