/**
 * A sheet as CSV text of the same lines: line 17 is row 17 of the sheet, so that problems say where to look in both.
 */
import Papa from 'papaparse';
import type { Problem } from '../../problem.ts';
import type { ChosenSheet } from './chooseSheet.ts';
import type { MergedCells, OddCell } from './sheet.ts';
import { writeColumn } from './xlsx.ts';

export interface SheetTable {
  readonly text: string;
  /** Cells that are not what was typed, or stand for several. */
  readonly problems: readonly Problem[];
  /** What was done with the sheet, a sentence each. */
  readonly said: readonly string[];
}

/** @param isName whether a cell of the header names a column that is read */
export function writeSheet(chosen: ChosenSheet, file: string, isName: (cell: string) => boolean): SheetTable {
  const { sheet, header, alike } = chosen;
  const width = sheet.rows.reduce((most, row, at) => (at < header ? most : Math.max(most, row?.length ?? 0)), 0);
  let broken = 0;
  const write = (cell: string | undefined) => {
    if (cell === undefined || !/[\r\n]/u.test(cell)) return cell ?? '';
    broken++;
    return cell.trim().replace(/\s*[\r\n]+\s*/gu, ' ');
  };
  const lines = Array.from({ length: sheet.rows.length }, (_, at) => {
    const row = sheet.rows[at];
    // Rows above the header and rows without anything are empty lines, which are not read.
    return at < header || !row ? [''] : Array.from({ length: width }, (_cell, at) => write(row[at]));
  });
  const names = Array.from({ length: width }, (_, column) => (sheet.rows[header]?.[column] ?? '').trim());
  const above = sheet.rows.slice(0, header).filter((row) => row !== undefined).length;
  const counted = (count: number, one: string, many: string) =>
    count > 0 ? [count === 1 ? one : `${count.toLocaleString('en')} ${many}`] : [];
  return {
    text: `${Papa.unparse(lines, { newline: '\n' })}\n`,
    problems: [
      ...sheet.odd.flatMap((cell) => reportOdd(cell, header, names[cell.column] ?? '', file, isName)),
      ...sheet.merged.flatMap((range) => reportMerged(range, header, names, file, isName)),
    ],
    said: [
      `The sheet “${sheet.name}” was read.`,
      ...(alike.length > 0
        ? [`Its header is also that of ${alike.map((name) => `“${name}”`).join(', ')}, which was not read.`]
        : []),
      ...counted(above, 'A row above the header was left out.', 'rows above the header were left out.'),
      ...counted(
        sheet.truths,
        'A cell with TRUE or FALSE was read as yes or no.',
        'cells with TRUE or FALSE were read as yes or no.',
      ),
      ...counted(broken, 'A line break inside a cell became a space.', 'cells had line breaks, which became spaces.'),
      ...counted(sheet.hiddenRows, 'A hidden row was read too.', 'hidden rows were read too.'),
    ],
  };
}

function reportOdd(
  { row, kind, text }: OddCell,
  header: number,
  name: string,
  file: string,
  isName: (cell: string) => boolean,
): Problem[] {
  if (row <= header || !isName(name)) return [];
  const place = { kind: 'wrong-value', file, line: row + 1, column: name, value: text } as const;
  if (kind === 'error') {
    return [{ ...place, expected: 'what the formula comes to', remedy: 'Mend the formula, or clear the cell.' }];
  }
  return [
    {
      ...place,
      expected: 'what was typed, which the spreadsheet turned into a date or a time',
      remedy: `Format the cell as text, and type it again${suggestTyped(text)}.`,
    },
  ];
}

/** What people type that becomes such a day: the 12th of August is “8-12” or “12-8”. */
function suggestTyped(date: string): string {
  const [, month, day] = /^-?\d+-(\d\d)-(\d\d)$/u.exec(date) ?? [];
  if (!month) return '';
  return ` (perhaps ${Number(month)}-${Number(day)}, ${Number(day)}-${Number(month)} or ${Number(day)}/${Number(month)})`;
}

/** Of merged cells only the first holds the value; what the others mean, nobody can tell a machine. */
function reportMerged(
  range: MergedCells,
  header: number,
  names: readonly string[],
  file: string,
  isName: (cell: string) => boolean,
): Problem[] {
  const { fromRow, toRow, fromColumn, toColumn } = range;
  const name = names.slice(fromColumn, toColumn + 1).find(isName);
  if (toRow < header || name === undefined) return [];
  return [
    {
      kind: 'wrong-value',
      file,
      line: fromRow + 1,
      column: name,
      value: `merged cells ${writeColumn(fromColumn)}${fromRow + 1}:${writeColumn(toColumn)}${toRow + 1}`,
      expected: 'a cell for each row and column',
      remedy: 'Split the cells, and enter in each what it is to hold.',
    },
  ];
}
