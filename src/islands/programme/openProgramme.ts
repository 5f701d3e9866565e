/** A file as the text of a programme: CSV, a spreadsheet, or what this page saved. Loaded when the first file comes. */
import { columnNamed, PROGRAMME_COLUMNS } from '../../practice/programme/columns.ts';
import { type OpenedText, openText } from './openText.ts';

export function openProgramme(bytes: Uint8Array, name: string): Promise<OpenedText> {
  return openText(bytes, name, (cell) => Object.hasOwn(PROGRAMME_COLUMNS, columnNamed(cell)));
}
