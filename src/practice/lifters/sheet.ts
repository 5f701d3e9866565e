/** Lines of a lifter as pages for the gym: a page a week, days in their order. */
import { groupRows } from '../../evidence/groupRows.ts';
import { weekdayOf, weekOfDay } from '../programme/columns.ts';
import type { LifterLine } from './judge.ts';

export interface SheetDay {
  /** 1 is the first Monday; null for lines whose day cannot be read. */
  readonly day: number | null;
  /** At least one. */
  readonly lines: readonly LifterLine[];
}

export interface SheetWeek {
  /** From 1; null for lines whose day cannot be read. */
  readonly week: number | null;
  /** At least one. */
  readonly days: readonly SheetDay[];
}

/** Lines of a day stand as in the programme; those without a day come last. */
export function weeksOf(lines: readonly LifterLine[]): readonly SheetWeek[] {
  const days = [...groupRows(lines, ({ day }) => String(day)).values()]
    .map((all): SheetDay => ({ day: all[0].day, lines: all }))
    .sort((a, b) => (a.day ?? Number.POSITIVE_INFINITY) - (b.day ?? Number.POSITIVE_INFINITY));
  return [...groupRows(days, ({ day }) => String(weekOf(day))).values()].map((all) => ({
    week: weekOf(all[0].day),
    days: all,
  }));
}

function weekOf(day: number | null): number | null {
  return day === null ? null : weekOfDay(day);
}

/** “Monday”, of any week. */
export function headDay(day: number | null): string {
  return day === null ? 'Day not known' : weekdayOf(day);
}
