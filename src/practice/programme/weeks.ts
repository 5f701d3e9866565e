/**
 * Weeks of a list as it is edited. A line says its week in a cell of its own, empty for the first, or in its day,
 * “day 9”; so a week is there as long as a line of it is. Each step gives another list and leaves the one before as
 * it was. The cells of a day are written anew only where they would no longer say the day that is meant.
 */
import { dayInWeek, dayOf, MOST_WEEKS, readDay, weekdayOf, weekOfDay } from './columns.ts';
import { addLine, type EditorLine, type LineList } from './edit.ts';
import type { Cells } from './editorColumns.ts';
import { resolveDay } from './resolveDay.ts';
import { readContextCell } from './written/days.ts';

interface Placed {
  /** 1 is the first Monday; null where no day can be read. */
  readonly day: number | null;
  /** From 1; null where the cell of the week cannot be read. */
  readonly week: number | null;
}

const placed = new WeakMap<EditorLine, Placed>();

/** Where a line stands in its block. */
export function placeLine(line: EditorLine): Placed {
  const known = placed.get(line);
  if (known) return known;
  const found = findPlace(line.cells);
  placed.set(line, found);
  return found;
}

function findPlace(cells: Pick<Cells, 'week' | 'day'>): Placed {
  const day = readDay(resolveDay(cells).cell.trim());
  if (day !== null) return { day, week: weekOfDay(day) };
  if (cells.week.trim() === '') return { day, week: 1 };
  const week = readContextCell(cells.week, 'week')?.week ?? Number.NaN;
  return { day, week: week >= 1 && week <= MOST_WEEKS ? week : null };
}

/** Weeks that have a line, in their order. */
export function listWeeks({ lines }: LineList): readonly number[] {
  const weeks = new Set(lines.flatMap((line) => placeLine(line).week ?? []));
  return [...weeks].sort((a, b) => a - b);
}

/** Weeks without a line that come before one that has lines: in them nobody trains. */
export function listGaps(list: LineList): readonly number[] {
  const weeks = listWeeks(list);
  const last = weeks.at(-1) ?? 0;
  return Array.from({ length: last }, (_, i) => i + 1).filter((week) => !weeks.includes(week));
}

/** Weeks without a line: a copy can come there. The one after the last comes first. */
export function listFreeWeeks(list: LineList): readonly number[] {
  const weeks = listWeeks(list);
  const last = weeks.at(-1) ?? 0;
  const free = Array.from({ length: MOST_WEEKS }, (_, i) => i + 1).filter((week) => !weeks.includes(week));
  return [...free.filter((week) => week > last), ...free.filter((week) => week < last)];
}

/** An empty line on the Monday of a week, after all lines of it and those before. */
export function addWeek(list: LineList, week: number): LineList {
  return addLine(list, placeAfter(list, week), { week: writeWeek(week), day: weekdayOf(1) });
}

/** The lines of a week once more, as another that has none; the same list where it has some. */
export function copyWeek(list: LineList, from: number, to: number): LineList {
  const own = list.lines.filter((line) => placeLine(line).week === from);
  if (own.length === 0 || listWeeks(list).includes(to) || !isWeek(to)) return list;
  const place = placeAfter(list, to);
  const copies = own.map((line, i) => ({ id: list.nextId + i, cells: { ...line.cells, ...moveDay(line, to) } }));
  return { lines: list.lines.toSpliced(place, 0, ...copies), nextId: list.nextId + copies.length };
}

/** Without the lines of a week; all others stay where they are. */
export function deleteWeek(list: LineList, week: number): LineList {
  const lines = list.lines.filter((line) => placeLine(line).week !== week);
  return lines.length === list.lines.length ? list : { ...list, lines };
}

/** A week with the one before (−1) or after it (1): each takes the other's place, in the list too. */
export function swapWeek(list: LineList, week: number, by: -1 | 1): LineList {
  const other = week + by;
  const own = list.lines.filter((line) => placeLine(line).week === week);
  if (own.length === 0 || !isWeek(other)) return list;
  const others = list.lines.filter((line) => placeLine(line).week === other);
  const moved = [own.map((line) => inWeek(line, other)), others.map((line) => inWeek(line, week))];
  const inOrder = (by < 0 ? moved : moved.toReversed()).flat();
  const isOfTwo = new Set([...own, ...others]);
  let next = 0;
  return { ...list, lines: list.lines.map((line) => (isOfTwo.has(line) ? inOrder[next++] : line)) };
}

/** All weeks after one without lines come a week earlier; the same list where it has lines. */
export function closeGap(list: LineList, gap: number): LineList {
  if (listWeeks(list).includes(gap)) return list;
  const isLater = ({ week }: Placed) => week !== null && week > gap;
  if (!list.lines.some((line) => isLater(placeLine(line)))) return list;
  const lines = list.lines.map((line) => {
    const { week } = placeLine(line);
    return week !== null && week > gap ? inWeek(line, week - 1) : line;
  });
  return { ...list, lines };
}

/** The lines by their days; one whose day cannot be read stays below the line that it stands below. */
export function sortByDay(list: LineList): LineList {
  const keyed = withKeys(list);
  if (keyed.every(({ key }, i) => i === 0 || keyed[i - 1].key <= key)) return list;
  return { ...list, lines: keyed.toSorted((a, b) => a.key - b.key).map(({ line }) => line) };
}

export function isByDay(list: LineList): boolean {
  return sortByDay(list) === list;
}

function withKeys({ lines }: LineList) {
  let key = 0;
  return lines.map((line) => {
    const { day, week } = placeLine(line);
    const isWeekOnly = day === null && week !== null && line.cells.week.trim() !== '';
    key = day ?? (isWeekOnly ? Math.max(weekOfDay(key) === week ? key : 0, dayOf(week, 0)) : key);
    return { line, key };
  });
}

function inWeek(line: EditorLine, week: number): EditorLine {
  return { id: line.id, cells: { ...line.cells, ...moveDay(line, week) } };
}

/** The cells of the same day of another week: the day as it was typed, as long as it says that day. */
function moveDay(line: EditorLine, week: number): Pick<Cells, 'week' | 'day'> {
  const { day } = placeLine(line);
  const moved = { week: writeWeek(week), day: line.cells.day };
  if (day === null) return moved;
  const wanted = dayOf(week, dayInWeek(day));
  return findPlace(moved).day === wanted ? moved : { ...moved, day: weekdayOf(wanted) };
}

/** As the cell of the week holds it: the first needs none. */
export function writeWeek(week: number): string {
  return week === 1 ? '' : String(week);
}

function isWeek(week: number): boolean {
  return week >= 1 && week <= MOST_WEEKS;
}

/** After the last line of the week or one before it. */
function placeAfter({ lines }: LineList, week: number): number {
  return lines.findLastIndex((line) => (placeLine(line).week ?? MOST_WEEKS + 1) <= week) + 1;
}
