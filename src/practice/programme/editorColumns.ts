/** The columns of an editor's line: those of a programme as they are typed, the week before them and a note after. */
import { PROGRAMME_COLUMNS } from './columns.ts';

export type ProgrammeColumn = keyof typeof PROGRAMME_COLUMNS;
export type EditorColumn = 'week' | ProgrammeColumn | 'note';

const READ = Object.keys(PROGRAMME_COLUMNS) as readonly ProgrammeColumn[];
/** In the order in which they are written. */
export const EDITOR_COLUMNS: readonly EditorColumn[] = ['week', ...READ, 'note'];
/** Written even where they are empty on every line: those of the site's own form. */
export const USUAL_COLUMNS: readonly EditorColumn[] = [
  'day',
  'exercise',
  'sets',
  'repetitions',
  'load',
  'reserve',
  'company',
];

/** Texts as typed; empty where nothing was. */
export type Cells = Readonly<Record<EditorColumn, string>>;

// Every column is given.
export const EMPTY_CELLS = Object.fromEntries(EDITOR_COLUMNS.map((column) => [column, ''])) as Cells;

/** What is done on a line; its day, company and note come with it. */
const DONE: readonly EditorColumn[] = ['exercise', 'sets', 'repetitions', 'load', 'possible', 'reserve'];

/** False for a line that was added and says nothing yet of what is done: it is left out of the check. */
export function isBegun(cells: Cells): boolean {
  return DONE.some((column) => cells[column].trim() !== '');
}

/** A text as one line of a form holds it: a line break that was pasted becomes a space. */
export function cleanCell(text: string): string {
  return text.replace(/[\r\n\u2028\u2029]+/gu, ' ');
}
