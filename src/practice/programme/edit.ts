/**
 * A list of lines as it is edited: each step gives another list and leaves the one before as it was, so
 * that going back is taking it again. A step that changes nothing gives the very same list.
 */
import { type Cells, cleanCell, type EditorColumn, EMPTY_CELLS } from './editorColumns.ts';

export interface EditorLine {
  /** Of this line for as long as there is one, wherever it moves to. */
  readonly id: number;
  readonly cells: Cells;
}

export interface LineList {
  readonly lines: readonly EditorLine[];
  /** Above all that were given, those of deleted lines among them. */
  readonly nextId: number;
}

export const NO_LINES: LineList = { lines: [], nextId: 1 };

/**
 * @param place index before which it comes; at the end where it is beyond that
 * @param cells what it starts with, the day of the line above for instance
 */
export function addLine(list: LineList, place: number, cells: Partial<Cells> = {}): LineList {
  const line = { id: list.nextId, cells: cleanCells(cells) };
  return { lines: list.lines.toSpliced(Math.max(0, place), 0, line), nextId: list.nextId + 1 };
}

/** A second line with the same cells, right below. */
export function copyLine(list: LineList, id: number): LineList {
  const at = placeOf(list, id);
  return at < 0 ? list : addLine(list, at + 1, list.lines[at].cells);
}

export function deleteLine(list: LineList, id: number): LineList {
  const at = placeOf(list, id);
  return at < 0 ? list : { ...list, lines: list.lines.toSpliced(at, 1) };
}

/** @param by lines, below 0 up and above 0 down; as far as the list goes */
export function moveLine(list: LineList, id: number, by: number): LineList {
  const at = placeOf(list, id);
  const to = Math.min(list.lines.length - 1, Math.max(0, at + by));
  if (at < 0 || to === at) return list;
  return { ...list, lines: list.lines.toSpliced(at, 1).toSpliced(to, 0, list.lines[at]) };
}

export function changeCell(list: LineList, id: number, column: EditorColumn, text: string): LineList {
  const at = placeOf(list, id);
  const cleaned = cleanCell(text);
  if (at < 0 || list.lines[at].cells[column] === cleaned) return list;
  const { cells } = list.lines[at];
  return { ...list, lines: list.lines.with(at, { id, cells: { ...cells, [column]: cleaned } }) };
}

/** Other lines in place of all; a line that is the same at its place stays the one that it was. */
export function replaceLines(list: LineList, all: readonly Partial<Cells>[]): LineList {
  let { nextId } = list;
  const lines = all.map((cells, i): EditorLine => {
    const cleaned = cleanCells(cells);
    const before = list.lines[i];
    if (!before) return { id: nextId++, cells: cleaned };
    return isSame(before.cells, cleaned) ? before : { id: before.id, cells: cleaned };
  });
  const isUnchanged = lines.length === list.lines.length && lines.every((line, i) => line === list.lines[i]);
  return isUnchanged ? list : { lines, nextId };
}

function placeOf({ lines }: LineList, id: number): number {
  return lines.findIndex((line) => line.id === id);
}

function cleanCells(cells: Partial<Cells>): Cells {
  const all = { ...EMPTY_CELLS, ...cells };
  // The same columns, each text cleaned.
  return Object.fromEntries(Object.entries(all).map(([column, text]) => [column, cleanCell(text)])) as Cells;
}

function isSame(a: Cells, b: Cells): boolean {
  return Object.entries(a).every(([column, text]) => b[column as EditorColumn] === text);
}
