/**
 * Lines of a list as they are laid out: in runs of one week and of one day, and in pages that are filled with whole
 * weeks as far as they hold them. A week that holds more than a page is parted.
 */
import { dayInWeek } from './columns.ts';
import type { EditorLine, LineList } from './edit.ts';
import { placeLine } from './weeks.ts';

export interface GroupedLine {
  readonly line: EditorLine;
  /** Its place in the list, from 1. */
  readonly number: number;
  /** The week that it begins, where the line before it is of another; null inside a week. */
  readonly beginsWeek: number | null;
  /** Day of the week, 1 to 7, that it begins; null inside a day, and where no day can be read. */
  readonly beginsDay: number | null;
}

const grouped = new WeakMap<LineList['lines'], readonly GroupedLine[]>();

/** Every line, with the week and day that begin at it. A line whose week cannot be read stands with the one above. */
export function groupLines({ lines }: LineList): readonly GroupedLine[] {
  const known = grouped.get(lines);
  if (known) return known;
  let [before, dayBefore] = [0, 0];
  const found = lines.map((line, i): GroupedLine => {
    const { day, week } = placeLine(line);
    const beginsWeek = week !== null && week !== before ? week : null;
    const beginsDay = day !== null && day !== dayBefore ? dayInWeek(day) : null;
    before = week ?? before;
    dayBefore = day ?? (beginsWeek === null ? dayBefore : 0);
    return { line, number: i + 1, beginsWeek, beginsDay };
  });
  grouped.set(lines, found);
  return found;
}

/** @param most lines of a page. At least one page, empty where there are no lines. */
export function pageLines(list: LineList, most: number): readonly (readonly GroupedLine[])[] {
  const all = groupLines(list);
  const pages: (readonly GroupedLine[])[] = [];
  let start = 0;
  const close = (end: number) => {
    if (end > start) pages.push(all.slice(start, end));
    start = end;
  };
  for (let at = 0; at < all.length; ) {
    let end = at + 1;
    while (end < all.length && all[end].beginsWeek === null) end++;
    if (end - start > most) close(at);
    while (end - start > most) close(start + most);
    at = end;
  }
  close(all.length);
  return pages.length > 0 ? pages : [[]];
}
