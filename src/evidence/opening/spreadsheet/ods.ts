/** Sheets of an OpenDocument spreadsheet (.ods; OASIS OpenDocument 1.3, part 3, chapter 9). */
import { type Parts, refusePassword } from './parts.ts';
import { type CellKind, makeSheetBuilders, type Sheet, type SheetBuilder, writeNumber, writeShare } from './sheet.ts';
import { type Attributes, readXml } from './xml.ts';

export const ODS_CONTENT = 'content.xml';
const MANIFEST = 'META-INF/manifest.xml';
/** What stands in a cell beside its text: a remark of somebody, and drawings. */
const ASIDE = new Set(['annotation', 'annotation-end', 'frame', 'custom-shape', 'shapes', 'g', 'line', 'control']);

/** @throws FileRefusal */
export async function readOds(parts: Parts): Promise<readonly Sheet[]> {
  await refuseProtected(parts);
  const sheets: Sheet[] = [];
  const makeBuilder = makeSheetBuilders();
  let sheet: SheetBuilder | null = null;
  let row = 0;
  let column = 0;
  let repeatedRows = 1;
  let values: Repeated[] = [];
  let cell: ReadCell | null = null;
  /** Tags open inside one that stands aside; 0 outside. */
  let aside = 0;
  const add = (text: string) => {
    if (cell && aside === 0) cell.text += text;
  };
  const openers: Readonly<Record<string, (attributes: Attributes) => void>> = {
    table: (attributes) => {
      sheet = makeBuilder(attributes['table:name'] ?? `Sheet ${sheets.length + 1}`);
      row = 0;
    },
    'table-row': (attributes) => {
      repeatedRows = countOf(attributes['table:number-rows-repeated']);
      column = 0;
      values = [];
      if (/^(?:collapse|filter)$/u.test(attributes['table:visibility'] ?? '')) sheet?.hideRow();
    },
    'table-cell': (attributes) => {
      const repeated = countOf(attributes['table:number-columns-repeated']);
      cell = { column, repeated, attributes, text: '', paragraphs: 0, isInParagraph: false };
      column += cell.repeated;
      const [columns, rows] = ['columns', 'rows'].map((of) => countOf(attributes[`table:number-${of}-spanned`]));
      if (columns * rows > 1) {
        sheet?.merge({
          fromRow: row,
          toRow: row + rows - 1,
          fromColumn: cell.column,
          toColumn: cell.column + columns - 1,
        });
      }
    },
    'covered-table-cell': (attributes) => {
      column += countOf(attributes['table:number-columns-repeated']);
    },
    p: () => {
      if (!cell) return;
      if (cell.paragraphs++ > 0) add('\n');
      cell.isInParagraph = true;
    },
    s: (attributes) => add(' '.repeat(Math.min(countOf(attributes['text:c']), MOST_SPACES))),
    tab: () => add('\t'),
    'line-break': () => add('\n'),
  };
  const closers: Readonly<Record<string, () => void>> = {
    'table-cell': () => {
      const value = cell && readValue(cell);
      // A million empty cells may follow the last one, as one that is repeated.
      if (cell && value && value.text.trim() !== '') values.push({ ...value, from: cell.column, to: column });
      cell = null;
    },
    p: () => {
      if (cell) cell.isInParagraph = false;
    },
    'table-row': () => {
      for (let i = 0; i < repeatedRows && values.length > 0; i++) {
        for (const { from, to, kind, text } of values) {
          for (let at = from; at < to; at++) sheet?.put(row + i, at, kind, text);
        }
      }
      row += repeatedRows;
    },
    table: () => {
      if (sheet) sheets.push(sheet.finish());
      sheet = null;
    },
  };
  await readXml(parts, ODS_CONTENT, {
    open: (name, attributes) => {
      if (aside > 0 || (cell && ASIDE.has(name))) aside++;
      else if (name === 'table' || sheet) openers[name]?.(attributes);
    },
    close: (name) => {
      if (aside > 0) aside--;
      else closers[name]?.();
    },
    text: (text) => {
      // Between paragraphs stand line breaks of the file, not of the cell.
      if (cell?.isInParagraph) add(text);
    },
  });
  return sheets;
}

/** Spaces in a row that one tag may stand for; as many as a text of the table may have. */
const MOST_SPACES = 500;

interface ReadCell {
  readonly column: number;
  readonly repeated: number;
  readonly attributes: Attributes;
  text: string;
  /** Begun so far; their breaks are the cell's. */
  paragraphs: number;
  isInParagraph: boolean;
}

interface Value {
  readonly kind: CellKind;
  readonly text: string;
}

/** A value in columns from one to before another. */
interface Repeated extends Value {
  readonly from: number;
  readonly to: number;
}

function readValue({ attributes, text }: ReadCell): Value {
  const value = attributes['office:value'] ?? '';
  if (attributes['calcext:value-type'] === 'error') return { kind: 'error', text: text || 'an error' };
  switch (attributes['office:value-type']) {
    case 'float':
    case 'currency':
      return { kind: 'number', text: writeNumber(value) };
    case 'percentage':
      return { kind: 'share', text: writeShare(value) };
    case 'boolean':
      return { kind: 'truth', text: attributes['office:boolean-value'] === 'true' ? 'yes' : 'no' };
    case 'date':
      return { kind: 'date', text: (attributes['office:date-value'] ?? text).replace(/T00:00:00$/u, '') };
    case 'time':
      return { kind: 'date', text };
    default:
      return { kind: 'text', text: text || (attributes['office:string-value'] ?? '') };
  }
}

function countOf(attribute: string | undefined): number {
  const count = Number(attribute ?? 1);
  return Number.isInteger(count) && count > 0 ? count : 1;
}

/** With a password every part is there, but unreadable: the list of parts says so. */
async function refuseProtected(parts: Parts): Promise<void> {
  let isProtected = parts.names.has('encrypted-package');
  if (parts.names.has(MANIFEST)) {
    await readXml(parts, MANIFEST, {
      open: (name) => {
        isProtected ||= name === 'encryption-data';
      },
    });
  }
  if (isProtected) throw refusePassword();
}
