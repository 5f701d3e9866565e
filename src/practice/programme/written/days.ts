/** The day that lines stand under: the last that was named, in a heading, a cell or before the sets. */
import { distance } from 'fastest-levenshtein';
import { MOST_WEEKS, PROGRAMME_COLUMNS, readDay, WEEKDAYS, writeDay } from '../columns.ts';
import { absoluteDay, type Context, readContext, type WrittenDay } from './context.ts';
import { type Assumed, type NotRead, notRead, type Place, type Reading } from './understood.ts';

export interface Days {
  readonly week: number | null;
  /** The week as written; empty where none was. */
  readonly weekText: string;
  readonly days: readonly WrittenDay[];
  /** Where they were named; null before any day was. */
  readonly readFrom: Place | null;
  /** What stood for the day or the week last and names none: what stands below it waits for it too. */
  readonly refused: RefusedDay | null;
}

export interface RefusedDay {
  readonly kind: 'day' | 'week';
  readonly text: string;
  /** Physical line on which it stood. */
  readonly line: number;
}

/** Cells that say a line’s day. */
export const OF_A_DAY = ['week', 'day'] as const;

export const NO_DAY: Days = { week: null, weekText: '', days: [], readFrom: null, refused: null };

/** What a context changes: a new week has no day until one is named. */
export function enter(before: Days, { week, days }: Context, place: Place): Days {
  // A day alone does not say of which week it is.
  const refused = week === null && before.refused?.kind === 'week' ? before.refused : null;
  if (days.length > 0) {
    const isOfEarlierWeek = week === null && before.weekText !== '';
    const text = isOfEarlierWeek ? `${before.weekText}, ${place.text}` : place.text;
    const weekText = week === null ? before.weekText : place.text;
    return { week: week ?? before.week, weekText, days, readFrom: { ...place, text }, refused };
  }
  return week === null ? before : { week, weekText: place.text, days: [], readFrom: place, refused };
}

/** A column of a week beside the exercises: its cells are of the day of their row. */
export function enterColumn(before: Days, context: Context, place: Place): Days {
  const entered = enter(before, context, place);
  if (context.days.length > 0) return entered;
  const refused = before.refused?.kind === 'day' ? before.refused : entered.refused;
  if (before.days.length === 0) return { ...entered, refused };
  const text = [place.text, before.readFrom?.text].filter(Boolean).join(', ');
  return { ...entered, days: before.days, readFrom: { ...place, text }, refused };
}

/** What a cell or heading changes that stands for a day or a week and names none: no earlier day holds below it. */
export function enterRefused(before: Days, refused: RefusedDay): Days {
  return { ...before, days: refused.kind === 'day' ? [] : before.days, refused };
}

/** A cell of a column of days or weeks; null where it names neither. */
export function readContextCell(text: string, kind: 'day' | 'week'): Context | null {
  const number = /^\d{1,2}$/u.test(text.trim()) ? Number(text.trim()) : null;
  if (number === null) return readContext(text);
  const common = { text, rest: '' };
  return kind === 'week'
    ? { ...common, week: number, days: [] }
    : { ...common, week: null, days: [{ day: number, isNumbered: true }] };
}

export interface ReadDays {
  /** One for each day that the line stands for. */
  readonly days: readonly Reading<number>[];
  readonly assumed: readonly Assumed[];
  readonly notRead: readonly NotRead[];
}

/** Of a line that stands under them. */
export function readDays({ week, days, readFrom, refused }: Days, line: number): ReadDays {
  if (refused) return { days: [], assumed: [], notRead: [refuseDay(line, refused)] };
  if (!readFrom || (days.length === 0 && !Number.isNaN(week))) return { days: [], assumed: [], notRead: [] };
  const read = days.map((one) => ({ written: one, day: absoluteDay(week, one) }));
  const known = read.flatMap(({ day }) => (day === null ? [] : [{ value: day, readFrom }]));
  if (Number.isNaN(week)) {
    const remedy = `Write one week, “Week 1”, and copy it as the others once it is taken over.`;
    const told = notRead(line, 'day', { value: readFrom.text, expected: 'lines of one week', remedy });
    return { days: [], assumed: [], notRead: [told] };
  }
  if (known.length < read.length) {
    const value = week === null ? readFrom.text : `${readFrom.text} (week ${week})`;
    const remedy = days.some(({ day }) => Number.isNaN(day))
      ? 'Name each of the days, with “and” or a comma between them: “Mon, Wed and Fri”.'
      : `A programme spans ${MOST_WEEKS} weeks of seven days.`;
    return {
      days: [],
      assumed: [],
      notRead: [notRead(line, 'day', { value, expected: PROGRAMME_COLUMNS.day.expected, remedy })],
    };
  }
  const numbered = read.flatMap(({ written, day }) => (written.isNumbered && day !== null ? [{ written, day }] : []));
  return {
    days: known,
    assumed: [
      ...numbered.map(({ written, day }) => `Day ${written.day} is taken as ${writeDay(day)}.`),
      ...(known.length > 1 ? [`It stands for ${known.map(({ value }) => writeDay(value)).join(' and ')}.`] : []),
    ].map((said) => ({ said, of: OF_A_DAY })),
    notRead: [],
  };
}

/** Of a day that stands among the sets or behind them. */
export function sayDayWithin({ text }: Context): Assumed {
  return { said: `“${text}” stands with the sets: it is taken as the day of this line only.`, of: OF_A_DAY };
}

/** The days as they would be typed: “Monday”, “Day 1 and Day 3”. */
export function writeDays(days: readonly WrittenDay[]): string {
  return days.map(({ day, isNumbered }) => (isNumbered ? `Day ${day}` : WEEKDAYS[day - 1])).join(' and ');
}

/** What stands for a day, or a week, and names none; of a line below it that has none of its own, too. */
export function refuseDay(line: number, refused: RefusedDay): NotRead {
  const { kind, text: value } = refused;
  const above = refused.line === line ? '' : `It stands on line ${refused.line}, and no ${kind} is named since. `;
  if (kind === 'week') {
    return notRead(line, 'week', { value, expected: 'a week', remedy: `${above}Write its number, “2” or “Week 2”.` });
  }
  const near = nearestDays(value);
  const { expected } = PROGRAMME_COLUMNS.day;
  const remedy = `${above}${near.length > 0 ? `Is it ${near.join(', or ')}?` : 'Write “Monday”, “Mon” or “Day 1”.'}`;
  return notRead(line, 'day', { value, expected, remedy }, near);
}

/** Letters that differ in a misspelt weekday. */
const MISSPELT = 2;
/** Longer than any weekday, misspelt or not. */
const LONGEST = 20;

function nearestDays(written: string): readonly string[] {
  const word = written.trim().toLowerCase().slice(0, LONGEST);
  const near = WEEKDAYS.map((name) => ({ name, letters: distance(word, name.toLowerCase()) }));
  return near
    .filter(({ letters }) => letters <= MISSPELT)
    .sort((a, b) => a.letters - b.letters)
    .map(({ name }) => name);
}

/** Letters of which every weekday is made at its end, some of them in the wrong order or left out. */
const LIKE_A_DAY = /^(\p{L}{2,7}d(?:ay|ya|y|a)s?)(?:\s*[:,–—-]+\s*|\s+|$)(.*)$/iu;

/** A misspelt weekday that a line begins with, “Tusday: squat”; null where it begins with none. */
export function takeMisspeltDay(text: string): { readonly day: string; readonly rest: string } | null {
  const [, day, rest] = LIKE_A_DAY.exec(text.trim()) ?? [];
  return day !== undefined && readDay(day) === null && nearestDays(day).length > 0 ? { day, rest } : null;
}
