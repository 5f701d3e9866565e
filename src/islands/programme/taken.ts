/** What was taken without being written when lines came in: each sentence as long as the cells that it explains stay. */
import type { EditorLine } from '../../practice/programme/edit.ts';
import type { Cells, EditorColumn } from '../../practice/programme/editorColumns.ts';
import type { Assumed } from '../../practice/programme/written/understood.ts';

/** A sentence, and the cells that it explains as they were then. */
interface TakenSentence {
  readonly said: string;
  readonly of: readonly (readonly [EditorColumn, string])[];
}

/** By id of the line: what was said each time that lines came in at its place, the last time first. */
export type Taken = ReadonlyMap<number, readonly (readonly TakenSentence[])[]>;

/** Times that are kept for a line: undo can bring back the one before. */
const MOST_TIMES = 3;

/** @param said of each of the lines, in their order */
export function addTaken(
  taken: Taken,
  lines: readonly EditorLine[],
  said: readonly { readonly assumed: readonly Assumed[] }[],
): Taken {
  const all = new Map(taken);
  for (const [i, { id, cells }] of lines.entries()) {
    const sentences = said[i].assumed.map((one) => withCells(one, cells));
    if (sentences.length > 0 || all.has(id)) {
      all.set(id, [sentences, ...(all.get(id) ?? [])].slice(0, MOST_TIMES));
    }
  }
  return all;
}

/** The exercise is part of what every sentence is about: the line of another has nothing to do with it. */
function withCells({ said, of }: Assumed, cells: Cells): TakenSentence {
  const columns = [...new Set<EditorColumn>(['exercise', ...of])];
  return { said, of: columns.map((column) => [column, cells[column]]) };
}

/** The sentences of a line that hold still; of two times, those of the last of which any does. */
export function saidOf(taken: Taken, { id, cells }: EditorLine): readonly string[] {
  const hold = (taken.get(id) ?? []).map((sentences) =>
    sentences.filter(({ of }) => of.every(([column, text]) => cells[column] === text)),
  );
  return (hold.find((sentences) => sentences.length > 0) ?? []).map(({ said }) => said);
}
