/** A spreadsheet file as a table. What unpacks and reads such files is loaded with this file, when the first one comes. */
import { EXPECTED_FILE } from '../fileKind.ts';
import { FileRefusal } from '../refusal.ts';
import { chooseSheet } from './chooseSheet.ts';
import { ODS_CONTENT, readOds } from './ods.ts';
import { openParts, type Parts, type Report, refuseBroken } from './parts.ts';
import type { Sheet } from './sheet.ts';
import { type SheetTable, writeSheet } from './sheetTable.ts';
import { findWorkbook } from './workbook.ts';
import { readXlsx } from './xlsx.ts';

export interface SpreadsheetTable extends SheetTable {
  readonly sheet: string;
}

/**
 * @param isName whether a cell of a header names a column, or is likely to mean one
 * @param report told how much of a sheet is read
 * @throws FileRefusal with the reason why there is no table
 */
export async function readSpreadsheet(
  bytes: Uint8Array,
  file: string,
  isName: (cell: string) => boolean,
  report?: Report,
): Promise<SpreadsheetTable> {
  const parts = await openParts(bytes, undefined, report);
  const chosen = chooseSheet(await readSheets(parts), isName);
  return { ...writeSheet(chosen, file, isName), sheet: chosen.sheet.name };
}

const OPEN_DOCUMENT = 'application/vnd.oasis.opendocument.';
const ODS_TYPE = /^application\/vnd\.oasis\.opendocument\.spreadsheet(?:-template)?$/u;

/** What else is such an archive, by the name of a part, with what to do. */
const OTHERS: readonly (readonly [part: RegExp, value: string, remedy: string])[] = [
  [/^xl\/workbook\.bin$/u, 'a binary workbook (.xlsb)', 'Save it as .xlsx, .ods or CSV.'],
  [
    /^word\//u,
    'a text of a word processor (.docx)',
    'Copy its table into a spreadsheet, and save that as .xlsx, .ods or CSV.',
  ],
  [/^ppt\//u, 'a presentation (.pptx)', 'Copy its table into a spreadsheet, and save that as .xlsx, .ods or CSV.'],
  [/^Index(?:\/|\.zip)/u, 'a file of another spreadsheet program', 'Export it as .xlsx or CSV.'],
];

async function readSheets(parts: Parts): Promise<readonly Sheet[]> {
  const workbook = await findWorkbook(parts);
  if (workbook !== null) return readXlsx(parts, workbook);
  let type = '';
  await parts.read('mimetype', (text) => {
    if (type.length <= LONGEST_TYPE) type += text;
  });
  if (ODS_TYPE.test(type.trim()) && parts.names.has(ODS_CONTENT)) return readOds(parts);
  const other = OTHERS.find(([part]) => [...parts.names].some((name) => part.test(name)));
  if (other) throw new FileRefusal({ value: other[1], expected: EXPECTED_FILE, remedy: other[2] });
  if (type.startsWith(OPEN_DOCUMENT)) {
    throw new FileRefusal({
      value: `an OpenDocument file of another kind (${type.trim().slice(OPEN_DOCUMENT.length)})`,
      expected: EXPECTED_FILE,
      remedy: 'Copy its table into a spreadsheet, and save that as .xlsx, .ods or CSV.',
    });
  }
  if (parts.names.size === 0) throw refuseBroken();
  throw new FileRefusal({
    value: 'a zip archive without a spreadsheet in it',
    expected: EXPECTED_FILE,
    remedy: 'Unpack it, and open the table that is in it.',
  });
}

/** Characters of a media type that are looked at. */
const LONGEST_TYPE = 200;
