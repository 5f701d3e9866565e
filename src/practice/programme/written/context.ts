/** Days and weeks as they stand before sets: “Monday”, “Mon/Thu”, “Day 1 – lower”, “Week 2, Wed”, “W2D3”. */
import { LAST_DAY, readDay, WEEKDAYS } from '../columns.ts';

export interface WrittenDay {
  /** Of the week where it is a weekday, else as numbered; NaN where two days stand together and it is not clear what is meant. */
  readonly day: number;
  readonly isNumbered: boolean;
}

export interface Context {
  readonly week: number | null;
  /** None where only a week is named. */
  readonly days: readonly WrittenDay[];
  /** As it stood. */
  readonly text: string;
  /** What follows it. */
  readonly rest: string;
}

const WEEK = /^(?:week|wk\.?|w)\s?#?(\d{1,2})(?![\d.,%])/iu;
const NUMBERED = /^(?:day|training day|session|workout|d)\s?#?(\d{1,2})(?![\d.,%])/iu;
const WEEKDAY = /^(\p{L}{2,9})(?![\p{L}\p{N}])\.?/iu;
/** Between the days that one line is meant for. */
const AND = /^\s?(?:\/|&|\+|,|and\s)\s?/iu;
const BETWEEN = /^[\s:;,.|()–—-]+/u;
const UNCLEAR: WrittenDay = { day: Number.NaN, isNumbered: false };
/** Other usual short forms than the first letters. */
const SHORT: ReadonlyMap<string, number> = new Map([['weds', 3]]);

/** null where the text begins with neither a day nor a week. */
export function readContext(text: string): Context | null {
  let rest = text.trim();
  const week = WEEK.exec(rest);
  if (week) rest = rest.slice(week[0].length).replace(BETWEEN, '');
  const { days, rest: after } = takeDays(rest);
  if (!week && days.length === 0) return null;
  rest = days.length > 0 ? after : rest;
  // “Mon-Fri” may be two days or five.
  const isUnclear = days.length > 0 && takeDay(rest.replace(BETWEEN, '')) !== null;
  const taken = text.trim();
  return {
    week: week ? Number(week[1]) : null,
    days: isUnclear ? [UNCLEAR] : days,
    text: taken.slice(0, taken.length - rest.length).trim(),
    rest: trimRest(rest),
  };
}

/** Day 1 to 28 from the first Monday; null where the week does not have it, or it is beyond the last. */
export function absoluteDay(week: number | null, { day, isNumbered }: WrittenDay): number | null {
  const first = ((week ?? 1) - 1) * WEEKDAYS.length;
  const isOfWeek = isNumbered && day > first && day <= first + WEEKDAYS.length;
  const found = week === null || isOfWeek ? day : first + day;
  const isTooLate = isNumbered && week !== null && !isOfWeek && day > WEEKDAYS.length;
  return found >= 1 && found <= LAST_DAY && !isTooLate ? found : null;
}

/** Without what stood between it and the day, a bracket round it among that. */
function trimRest(rest: string): string {
  const trimmed = rest.replace(BETWEEN, '').replace(/[\s:]+$/u, '');
  return trimmed.includes('(') ? trimmed : trimmed.replace(/\)$/u, '');
}

function takeDays(text: string): { readonly days: readonly WrittenDay[]; readonly rest: string } {
  const first = takeDay(text);
  if (!first) return { days: [], rest: text };
  const days = [first.day];
  let rest = first.rest;
  for (;;) {
    const and = AND.exec(rest);
    const next = and && takeDay(rest.slice(and[0].length));
    if (!next) return { days, rest };
    days.push(next.day);
    rest = next.rest;
  }
}

function takeDay(text: string): { readonly day: WrittenDay; readonly rest: string } | null {
  const numbered = NUMBERED.exec(text);
  if (numbered) {
    return { day: { day: Number(numbered[1]), isNumbered: true }, rest: text.slice(numbered[0].length) };
  }
  const word = WEEKDAY.exec(text);
  const day = word && weekdayOf(word[1]);
  return word && day !== null && day !== undefined
    ? { day: { day, isNumbered: false }, rest: text.slice(word[0].length) }
    : null;
}

function weekdayOf(word: string): number | null {
  return SHORT.get(word.toLowerCase()) ?? readDay(word);
}
