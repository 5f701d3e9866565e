/** A line of a written week with what the reader chose where it was asked, and the cells that it would come in with. */
import type { Cells } from '../../practice/programme/editorColumns.ts';
import { toCells } from '../../practice/programme/written/toCells.ts';
import type { Assumed, NotRead, UnderstoodLine } from '../../practice/programme/written/understood.ts';
import { holdsValue } from './problemsOfSets.ts';

/** Columns that what is written in them is asked about. */
const ASKED = ['exercise', 'day'] as const;

/** What the reader took for a value that was asked about, wherever it stands in its column. */
export interface Chosen {
  readonly column: (typeof ASKED)[number];
  /** As written. */
  readonly value: string;
  readonly taken: string;
}

export interface OfferedLine {
  readonly understood: UnderstoodLine;
  readonly cells: Cells;
  /** What was chosen for this line. */
  readonly chosen: readonly Chosen[];
  readonly assumed: readonly Assumed[];
}

/** @throws where nothing is to be chosen in the column of the problem */
export function choose({ column, value }: NotRead, taken: string): Chosen {
  const asked = ASKED.find((name) => name === column);
  if (!asked) throw new Error(`nothing is to be chosen in this column: ${column}`);
  return { column: asked, value, taken };
}

/** True where the problem is a question that was answered. */
export function isAnswered({ column, value, suggestions }: NotRead, chosen: readonly Chosen[]): boolean {
  return suggestions.length > 0 && chosen.some((one) => one.column === column && one.value === value);
}

export function offerLine(understood: UnderstoodLine, all: readonly Chosen[]): OfferedLine {
  const chosen = all.filter((one) => holdsValue(understood, one));
  const taken = Object.fromEntries(chosen.map((one) => [one.column, one.taken]));
  return {
    understood,
    cells: { ...toCells(understood), ...taken },
    chosen,
    assumed: [...understood.assumed, ...chosen.map(sayChosen)],
  };
}

function sayChosen({ column, value, taken }: Chosen): Assumed {
  return { said: `“${value}” was taken as ${taken}, as you chose.`, of: [column] };
}
