/**
 * A file as the text of a table, whatever it is: CSV in one of several encodings, or a spreadsheet. Every surface that
 * opens a table comes by here.
 */
import type { Problem } from '../problem.ts';
import { decodeText, ENCODING_NAMES, type Encoding, findLetters } from './encoding.ts';
import { recogniseFile } from './fileKind.ts';
import { FileRefusal, reportRefused } from './refusal.ts';

export interface OpenedFile {
  /** CSV; empty where the file was refused. */
  readonly text: string;
  /** What the text was in; text that was made here is UTF-8. */
  readonly encoding: Encoding;
  /** Name of the sheet that the text was made from; null for a file that was text. */
  readonly sheet: string | null;
  /** How the file was read, where that is not plain: a sentence each. */
  readonly said: readonly string[];
  /** What keeps the file from being read, or cells of a sheet that are not what was typed. */
  readonly problems: readonly Problem[];
  readonly isRefused: boolean;
}

/** Letters that are shown of a text in Windows-1252. */
const SHOWN_LETTERS = 8;

/**
 * @param bytes of the whole file
 * @param file name for messages
 * @param isName whether a cell of a header names a column, or is likely to mean one: so is the sheet found
 * @param report told, of a spreadsheet, how much of a sheet is read
 */
export async function openFile(
  bytes: Uint8Array,
  file: string,
  isName: (cell: string) => boolean,
  report?: (done: number, total: number) => void,
): Promise<OpenedFile> {
  const kind = recogniseFile(bytes);
  try {
    if (kind.kind === 'other') throw new FileRefusal(kind.refused);
    if (kind.kind === 'text') return openText(bytes);
    const { readSpreadsheet } = await import('./spreadsheet/readSpreadsheet.ts');
    const table = await readSpreadsheet(bytes, file, isName, report);
    return { ...table, encoding: 'utf-8', isRefused: false };
  } catch (error) {
    if (!(error instanceof FileRefusal)) throw error;
    const problems = [reportRefused(error.refused, file)];
    return { text: '', encoding: 'utf-8', sheet: null, said: [], problems, isRefused: true };
  }
}

function openText(bytes: Uint8Array): OpenedFile {
  const { text, encoding } = decodeText(bytes);
  return { text, encoding, sheet: null, said: stateEncoding(text, encoding), problems: [], isRefused: false };
}

/** What was taken, in a sentence; nothing of UTF-8. */
export function stateEncoding(text: string, encoding: Encoding): readonly string[] {
  if (encoding === 'utf-8') return [];
  if (encoding !== 'windows-1252') return [`The file was read as ${ENCODING_NAMES[encoding]}.`];
  const letters = findLetters(text, SHOWN_LETTERS).join(' ');
  return [
    `The file is not UTF-8 and was read as ${ENCODING_NAMES[encoding]}: look whether these are right: ${letters}`,
  ];
}
