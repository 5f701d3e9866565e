/** Words of the cells that are edited in a line, in their order. */
import type { EditorColumn } from '../../practice/programme/editorColumns.ts';

/** Cells of numbers: their labels, and what stands beside the number. */
export const NUMBER_CELLS = [
  { column: 'sets', label: 'Sets' },
  { column: 'repetitions', label: 'Repetitions' },
  { column: 'load', label: 'Load, % of 1RM' },
  { column: 'possible', label: 'Or possible' },
  { column: 'reserve', label: 'In reserve' },
] as const satisfies readonly { readonly column: EditorColumn; readonly label: string }[];

export const LINE_HEADS = ['Day', 'Exercise', ...NUMBER_CELLS.map(({ label }) => label), 'Company'];

/** Columns that are edited among the details of a line; what stands in them is shown beside it. */
export const TEXT_CELLS = [
  { column: 'muscles', label: 'Muscles, with semicolons', isYesOrNo: false },
  { column: 'can_pin', label: 'Can pin the lifter', isYesOrNo: true },
  { column: 'stoppable', label: 'Can be stopped anywhere', isYesOrNo: true },
  { column: 'partials', label: 'Shortened repetitions feasible', isYesOrNo: true },
  { column: 'note', label: 'Note', isYesOrNo: false },
] as const satisfies readonly {
  readonly column: EditorColumn;
  readonly label: string;
  readonly isYesOrNo: boolean;
}[];

/** Value of the choice that keeps what is written, where that is none of the others. */
export const AS_WRITTEN = 'as written';
