/** Sheets of an Office Open XML workbook (.xlsx; ECMA-376, part 1, 18.3), strict or transitional. */
import { writeSerialDate } from './dates.ts';
import { type Parts, refuseBroken } from './parts.ts';
import {
  type CellKind,
  type MergedCells,
  makeSheetBuilders,
  type Sheet,
  type SheetBuilder,
  writeNumber,
  writeShare,
} from './sheet.ts';
import { isTrue, readWorkbook, unescapeText, type Workbook } from './workbook.ts';
import { type Attributes, readXml } from './xml.ts';

/** @param part that holds the workbook @throws FileRefusal */
export async function readXlsx(parts: Parts, part: string): Promise<readonly Sheet[]> {
  const workbook = await readWorkbook(parts, part);
  const makeBuilder = makeSheetBuilders();
  const sheets: Sheet[] = [];
  for (const { name, part: ofSheet } of workbook.sheets) {
    const builder = makeBuilder(name);
    await readSheet(parts, ofSheet, workbook, builder);
    sheets.push(builder.finish());
  }
  return sheets;
}

/** The cell that is being read. */
interface OpenCell {
  readonly row: number;
  readonly column: number;
  readonly attributes: Attributes;
  text: string;
}

async function readSheet(parts: Parts, part: string, workbook: Workbook, sheet: SheetBuilder): Promise<void> {
  // Rows and cells may leave out their place, and then follow the one before.
  let row = -1;
  let column = -1;
  let cell: OpenCell | null = null;
  let isText = false;
  let isSpoken = false;
  await readXml(parts, part, {
    open: (name, attributes) => {
      if (name === 'row') {
        row = attributes.r === undefined ? row + 1 : Number(attributes.r) - 1;
        column = -1;
        if (isTrue(attributes.hidden)) sheet.hideRow();
      } else if (name === 'c') {
        const place = attributes.r === undefined ? null : readPlace(attributes.r);
        column = place ? place.column : column + 1;
        cell = { row: place ? place.row : row, column, attributes, text: '' };
      } else if (name === 'mergeCell') {
        const range = readRange(attributes.ref ?? '');
        if (range) sheet.merge(range);
      }
      if (name === 'rPh') isSpoken = true;
      isText = !isSpoken && (name === 'v' || name === 't');
    },
    close: (name) => {
      if (name === 'rPh') isSpoken = false;
      if (name === 'c' && cell) {
        const { kind, text } = readValue(cell, workbook);
        sheet.put(cell.row, cell.column, kind, text);
        cell = null;
      }
      isText = false;
    },
    text: (piece) => {
      // A formula's own text stands in `f`; `v` is what it came to when the file was saved.
      if (cell && isText) cell.text += piece;
    },
  });
}

function readValue({ attributes, text }: OpenCell, workbook: Workbook): { kind: CellKind; text: string } {
  switch (attributes.t) {
    case 's':
      return { kind: 'text', text: readShared(text, workbook) };
    case 'str':
    case 'inlineStr':
      return { kind: 'text', text: unescapeText(text) };
    case 'b':
      return { kind: 'truth', text: isTrue(text) ? 'yes' : 'no' };
    case 'e':
      return { kind: 'error', text };
    case 'd':
      return { kind: 'date', text: text.replace(/T00:00:00(?:\.0+)?Z?$/u, '') };
    default:
  }
  if (text.trim() === '') return { kind: 'text', text: '' };
  const format = workbook.formats[Number(attributes.s ?? 0)] ?? 'number';
  if (format === 'date') return { kind: 'date', text: writeSerialDate(Number(text), workbook.is1904) };
  return format === 'share' ? { kind: 'share', text: writeShare(text) } : { kind: 'number', text: writeNumber(text) };
}

/** @throws FileRefusal where the list has no such text */
function readShared(number: string, { texts }: Workbook): string {
  const text = texts[Number(number)];
  if (text === undefined) throw refuseBroken();
  return text;
}

const LETTERS = 26;

/** Place of a cell by its name, “B3” being row 2 and column 1; null for what is no name. */
export function readPlace(name: string): { readonly row: number; readonly column: number } | null {
  const found = /^\$?([A-Za-z]{1,7})\$?(\d{1,15})$/u.exec(name);
  if (!found) return null;
  const column = [...found[1].toUpperCase()].reduce((sum, letter) => sum * LETTERS + letter.charCodeAt(0) - 64, 0);
  return { row: Number(found[2]) - 1, column: column - 1 };
}

function readRange(name: string): MergedCells | null {
  const [from, to] = name.split(':').map(readPlace);
  return from && to ? { fromRow: from.row, toRow: to.row, fromColumn: from.column, toColumn: to.column } : null;
}

/** Name of a column, 0 being A; the inverse of `readPlace`. */
export function writeColumn(column: number): string {
  const rest = Math.floor(column / LETTERS);
  return (rest > 0 ? writeColumn(rest - 1) : '') + String.fromCharCode(65 + (column % LETTERS));
}
