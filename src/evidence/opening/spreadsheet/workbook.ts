/** What the sheets of an Office Open XML workbook share: their names and parts, texts and formats (ECMA-376, part 1, 18). */
import { type NumberFormat, recogniseFormat } from './dates.ts';
import { type Parts, refuseBroken } from './parts.ts';
import { readXml } from './xml.ts';

export interface Workbook {
  /** In the order of their tabs. */
  readonly sheets: readonly { readonly name: string; readonly part: string }[];
  /** True where days are counted from 1904 instead of 1900. */
  readonly is1904: boolean;
  /** Texts by their number in the list that cells share. */
  readonly texts: readonly string[];
  /** How a cell's number is shown, by the number of its style. */
  readonly formats: readonly NumberFormat[];
}

/** Name of the part that holds the workbook; null where the file is of another kind. @throws FileRefusal */
export async function findWorkbook(parts: Parts): Promise<string | null> {
  const main = (await readRelations(parts, '')).find(({ type }) => type === 'officeDocument');
  return main && /(?:^|\/)workbook\d*\.xml$/u.test(main.part) ? main.part : null;
}

/** @param part that holds the workbook @throws FileRefusal */
export async function readWorkbook(parts: Parts, part: string): Promise<Workbook> {
  const relations = await readRelations(parts, part);
  const partOf = (type: string) => relations.find((relation) => relation.type === type)?.part ?? null;
  const sheets: { name: string; part: string }[] = [];
  let is1904 = false;
  await readXml(parts, part, {
    open: (name, attributes) => {
      if (name === 'workbookPr') is1904 = isTrue(attributes.date1904);
      if (name !== 'sheet') return;
      const id = Object.entries(attributes).find(([attribute]) => attribute.endsWith(':id'))?.[1] ?? '';
      const target = relations.find((relation) => relation.id === id);
      if (!target) throw refuseBroken();
      // Sheets of charts, dialogues and macros hold no cells.
      if (target.type === 'worksheet') sheets.push({ name: attributes.name ?? '', part: target.part });
    },
  });
  const texts = await readTexts(parts, partOf('sharedStrings'));
  return { sheets, is1904, texts, formats: await readFormats(parts, partOf('styles')) };
}

interface Relation {
  readonly id: string;
  /** The last word of the address that names it. */
  readonly type: string;
  readonly part: string;
}

/** What a part refers to; of the file as a whole with ''. */
async function readRelations(parts: Parts, part: string): Promise<readonly Relation[]> {
  const folder = part.slice(0, part.lastIndexOf('/') + 1);
  const relations: Relation[] = [];
  const list = `${folder}_rels/${part.slice(folder.length)}.rels`;
  if (!parts.names.has(list)) return [];
  await readXml(parts, list, {
    open: (name, { Id = '', Target = '', Type = '' }) => {
      if (name !== 'Relationship') return;
      const type = Type.slice(Type.lastIndexOf('/') + 1);
      relations.push({ id: Id, type, part: Target.startsWith('/') ? Target.slice(1) : folder + Target });
    },
  });
  return relations;
}

/** `1` and `true`, as attributes say yes. */
export function isTrue(attribute: string | undefined): boolean {
  return attribute === '1' || attribute === 'true';
}

/** A text without what stands for characters that XML cannot hold, such as `_x000D_` (ECMA-376, part 1, 22.9.2.19). */
export function unescapeText(text: string): string {
  return text.includes('_x')
    ? text.replace(/_x([\dA-Fa-f]{4})_/gu, (_whole, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
    : text;
}

async function readTexts(parts: Parts, part: string | null): Promise<readonly string[]> {
  if (part === null) return [];
  const texts: string[] = [];
  let text = '';
  let isText = false;
  /** Of how a text is spoken, which is no part of it. */
  let isSpoken = false;
  await readXml(parts, part, {
    open: (name) => {
      if (name === 'si') text = '';
      if (name === 'rPh') isSpoken = true;
      isText = name === 't' && !isSpoken;
    },
    close: (name) => {
      if (name === 'si') texts.push(unescapeText(text));
      if (name === 'rPh') isSpoken = false;
      isText = false;
    },
    text: (piece) => {
      if (isText) text += piece;
    },
  });
  return texts;
}

async function readFormats(parts: Parts, part: string | null): Promise<readonly NumberFormat[]> {
  if (part === null) return [];
  const codes = new Map<number, string>();
  const formats: NumberFormat[] = [];
  let isOfCells = false;
  await readXml(parts, part, {
    open: (name, { numFmtId, formatCode }) => {
      if (name === 'numFmt') codes.set(Number(numFmtId), formatCode ?? '');
      if (name === 'cellXfs') isOfCells = true;
      if (name === 'xf' && isOfCells) {
        const id = Number(numFmtId ?? 0);
        formats.push(recogniseFormat(id, codes.get(id)));
      }
    },
    close: (name) => {
      if (name === 'cellXfs') isOfCells = false;
    },
  });
  return formats;
}
