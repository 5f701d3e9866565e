/** Week and day of an editor's line as the day that the check reads. */
import { MOST_WEEKS, readDay, WEEKDAYS, writeDay } from './columns.ts';
import type { Cells } from './editorColumns.ts';
import { absoluteDay } from './written/context.ts';
import { readContextCell } from './written/days.ts';

interface ResolvedDay {
  readonly cell: string;
  readonly assumed: string | null;
  /** Of the week; of the day the check says what is wrong. */
  readonly problem: { readonly expected: string; readonly remedy: string | null } | null;
}

/** The day as typed where no week is and it is of the form already, or where it cannot be read. */
export function resolveDay({ week: writtenWeek, day: writtenDay }: Pick<Cells, 'week' | 'day'>): ResolvedDay {
  const asTyped = { cell: writtenDay, assumed: null, problem: null };
  // As the editor itself writes it: most lines, and nothing to be read out of words.
  if (writtenWeek === '' && WEEKDAYS.some((name) => name === writtenDay)) return asTyped;
  const week = writtenWeek.trim() === '' ? null : (readContextCell(writtenWeek, 'week')?.week ?? Number.NaN);
  if (week !== null && !(week >= 1 && week <= MOST_WEEKS)) {
    const expected = `the number of a week from 1 to ${MOST_WEEKS}`;
    return { ...asTyped, cell: '', problem: { expected, remedy: null } };
  }
  const read = writtenDay.trim() === '' ? null : readContextCell(writtenDay, 'day');
  if (read?.days.length !== 1 || read.rest !== '') return asTyped;
  if (read.week !== null && week !== null && read.week !== week) {
    return { ...asTyped, problem: { expected: `the week that the day names, ${read.week}`, remedy: null } };
  }
  const [one] = read.days;
  const day = absoluteDay(week ?? read.week, one);
  if (day === null) return asTyped;
  const isNumber = /^\d+$/u.test(writtenDay.trim());
  const isOfForm = week === null && readDay(writtenDay.trim()) === day;
  return {
    cell: isOfForm ? writtenDay : String(day),
    assumed: one.isNumbered && !isNumber ? `${writtenDay.trim()} is taken as ${writeDay(day)}.` : null,
    problem: null,
  };
}
