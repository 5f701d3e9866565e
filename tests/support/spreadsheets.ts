/** Spreadsheet files for tests, written by hand as their standards have them: the smallest that programs open. */
import { configure, TextReader, Uint8ArrayWriter, ZipWriter } from '@zip.js/zip.js';

configure({ useWebWorkers: false });

/** A zip archive of parts. */
export async function zip(parts: Readonly<Record<string, string>>): Promise<Uint8Array> {
  const archive = new ZipWriter(new Uint8ArrayWriter());
  for (const [name, text] of Object.entries(parts)) {
    await archive.add(name, new TextReader(text), { level: name === 'mimetype' ? 0 : 6, extendedTimestamp: false });
  }
  return archive.close();
}

export const escapeXml = (text: string) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

/** A cell as XML, given where it stands from 0. */
type WriteCell = (text: string, row: number, column: number) => string;

const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006/relationships';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';

/** Name of a cell, A1. */
export function nameCell(row: number, column: number): string {
  const letters = column < 26 ? '' : String.fromCharCode(64 + Math.floor(column / 26));
  return `${letters}${String.fromCharCode(65 + (column % 26))}${row + 1}`;
}

/** Numbers as numbers, all else as text in the cell. */
export const xlsxCell: WriteCell = (text, row, column) => {
  if (text === '') return '';
  const place = `r="${nameCell(row, column)}"`;
  return isPlainNumber(text)
    ? `<c ${place}><v>${text}</v></c>`
    : `<c ${place} t="inlineStr"><is><t xml:space="preserve">${escapeXml(text)}</t></is></c>`;
};

/** XML of a sheet's rows and of what follows them. */
export interface XlsxSheet {
  readonly name: string;
  readonly rows: string;
  readonly after?: string;
}

export function xlsxRows(cells: readonly (readonly string[])[], write: WriteCell = xlsxCell): string {
  return cells.map((row, i) => `<row r="${i + 1}">${row.map((cell, j) => write(cell, i, j)).join('')}</row>`).join('');
}

/** @param extra parts that take the place of others, or are added */
export function writeXlsx(sheets: readonly XlsxSheet[], extra: Readonly<Record<string, string>> = {}) {
  const relation = (id: number, type: string, target: string) =>
    `<Relationship Id="rId${id}" Type="${OFFICE}/${type}" Target="${target}"/>`;
  return zip({
    '_rels/.rels': `<Relationships xmlns="${PACKAGE}">${relation(1, 'officeDocument', 'xl/workbook.xml')}</Relationships>`,
    'xl/workbook.xml': `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>${sheets
      .map(({ name }, i) => `<sheet name="${escapeXml(name)}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`)
      .join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="${PACKAGE}">${sheets
      .map((_sheet, i) => relation(i + 1, 'worksheet', `worksheets/sheet${i + 1}.xml`))
      .join('')}${Object.keys(extra)
      .filter((part) => /^xl\/(?:styles|sharedStrings)\.xml$/u.test(part))
      .map((part, i) => relation(98 + i, part.slice(3, -4), part.slice(3)))
      .join('')}</Relationships>`,
    ...Object.fromEntries(
      sheets.map(({ rows, after = '' }, i) => [
        `xl/worksheets/sheet${i + 1}.xml`,
        `<worksheet xmlns="${MAIN}"><sheetData>${rows}</sheetData>${after}</worksheet>`,
      ]),
    ),
    ...extra,
  });
}

export const odsCell = (text: string): string => {
  if (text === '') return '<table:table-cell/>';
  const p = `<text:p>${escapeXml(text).replace(/ {2,}/gu, (spaces) => `<text:s text:c="${spaces.length}"/>`)}</text:p>`;
  return isPlainNumber(text)
    ? `<table:table-cell office:value-type="float" office:value="${text}">${p}</table:table-cell>`
    : `<table:table-cell office:value-type="string">${p}</table:table-cell>`;
};

export function odsRows(cells: readonly (readonly string[])[], write: (text: string) => string = odsCell): string {
  return cells.map((row) => `<table:table-row>${row.map(write).join('')}</table:table-row>`).join('');
}

const ODS_SPACES = ['office', 'table', 'text']
  .map((name) => `xmlns:${name}="urn:oasis:names:tc:opendocument:xmlns:${name}:1.0"`)
  .join(' ');

/** @param extra parts that take the place of others, or are added */
export function writeOds(
  sheets: readonly { readonly name: string; readonly rows: string }[],
  extra: Readonly<Record<string, string>> = {},
) {
  const tables = sheets.map(({ name, rows }) => `<table:table table:name="${escapeXml(name)}">${rows}</table:table>`);
  return zip({
    mimetype: 'application/vnd.oasis.opendocument.spreadsheet',
    'content.xml': `<office:document-content ${ODS_SPACES} xmlns:calcext="urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0"><office:body><office:spreadsheet>${tables.join('')}</office:spreadsheet></office:body></office:document-content>`,
    'META-INF/manifest.xml': '<manifest:manifest xmlns:manifest="urn:oasis:names:tc:opendocument:xmlns:manifest:1.0"/>',
    ...extra,
  });
}

/** Digits that come back from a number as they were written: others a spreadsheet keeps as text. */
function isPlainNumber(text: string): boolean {
  return text.trim() !== '' && Number.isFinite(Number(text)) && String(Number(text)) === text;
}
