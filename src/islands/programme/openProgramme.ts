/** A file as the text of a programme: CSV, a spreadsheet, or what this page saved. Loaded when the first file comes. */
import { foldProblems, formatFold } from '../../evidence/foldProblems.ts';
import { openFile } from '../../evidence/opening/openFile.ts';
import { columnNamed, PROGRAMME_COLUMNS } from '../../practice/programme/columns.ts';

export interface ProgrammeText {
  readonly text: string;
  /** Why the file cannot be read; null where it was. */
  readonly refused: string | null;
  /** How it was read, where that is not plain; else empty. */
  readonly said: string;
}

export async function openProgramme(bytes: Uint8Array, name: string): Promise<ProgrammeText> {
  const isName = (cell: string) => Object.hasOwn(PROGRAMME_COLUMNS, columnNamed(cell));
  const { text, problems, said, isRefused } = await openFile(bytes, name, isName);
  const found = foldProblems(problems).map(formatFold);
  if (isRefused) return { text: '', refused: `${name}: ${found.join(' ')}`, said: '' };
  const told = [...said, ...found];
  return { text, refused: null, said: told.length > 0 ? `${name}: ${told.join(' ')}` : '' };
}
