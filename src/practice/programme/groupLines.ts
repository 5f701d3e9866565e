/**
 * Lines of a list as they are laid out: in runs of one week, and in pages that are filled with whole weeks as far
 * as they hold them. A week that holds more than a page is parted.
 */
import type { EditorLine, LineList } from './edit.ts';
import { placeLine } from './weeks.ts';

export interface LinePage {
  /** Index of its first line. */
  readonly start: number;
  readonly lines: readonly EditorLine[];
  /** Weeks that begin on it or go on, in the order of the lines. */
  readonly weeks: readonly number[];
}

/** @param most lines of a page; at least one page, empty where there are no lines */
export function pageLines({ lines }: LineList, most: number): readonly LinePage[] {
  const pages: LinePage[] = [];
  let start = 0;
  const close = (end: number) => {
    if (end > start) pages.push(toPage(lines, start, end));
    start = end;
  };
  for (let at = 0; at < lines.length; ) {
    let end = at + 1;
    while (end < lines.length && weekAt(lines, end) === weekAt(lines, at)) end++;
    if (end - start > most) close(at);
    while (end - start > most) close(start + most);
    at = end;
  }
  close(lines.length);
  return pages.length > 0 ? pages : [{ start: 0, lines: [], weeks: [] }];
}

function toPage(lines: readonly EditorLine[], start: number, end: number): LinePage {
  const own = lines.slice(start, end);
  const weeks = [...new Set(own.flatMap((line) => placeLine(line).week ?? []))];
  return { start, lines: own, weeks };
}

/** A line whose week cannot be read is shown with the line above. */
function weekAt(lines: readonly EditorLine[], at: number): number | null {
  for (let i = at; i >= 0; i--) {
    const { week } = placeLine(lines[i]);
    if (week !== null) return week;
  }
  return null;
}
