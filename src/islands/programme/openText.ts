/** A file as text: CSV, a spreadsheet, or what this site saved; with how it was read, or why not. Loaded when the first file comes. */
import { foldProblems, formatFold } from '../../evidence/foldProblems.ts';
import { openFile } from '../../evidence/opening/openFile.ts';

export interface OpenedText {
  readonly text: string;
  /** Why the file cannot be read; null where it was. */
  readonly refused: string | null;
  /** How it was read, where that is not plain; else empty. */
  readonly said: string;
}

/** @param isName whether a cell is the name of a column that is looked for */
export async function openText(
  bytes: Uint8Array,
  name: string,
  isName: (cell: string) => boolean,
): Promise<OpenedText> {
  const { text, problems, said, isRefused } = await openFile(bytes, name, isName);
  const found = foldProblems(problems).map(formatFold);
  if (isRefused) return { text: '', refused: `${name}: ${found.join(' ')}`, said: '' };
  const told = [...said, ...found];
  return { text, refused: null, said: told.length > 0 ? `${name}: ${told.join(' ')}` : '' };
}
