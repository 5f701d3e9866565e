/** Days and weeks as they stand before sets: “Monday”, “Mon/Thu”, “Day 1 – lower”, “Week 2, Wed”, “W2D3”, “Wed, wk 2”. */
import { LAST_DAY, readDay, WEEKDAYS } from '../columns.ts';
import { COUNTED } from './numbers.ts';

export interface WrittenDay {
  /** Of the week where it is a weekday, else as numbered; NaN where two days stand together and it is not clear what is meant. */
  readonly day: number;
  readonly isNumbered: boolean;
}

export interface Context {
  /** NaN where several weeks are named at once. */
  readonly week: number | null;
  /** None where only a week is named. */
  readonly days: readonly WrittenDay[];
  /** As it stood. */
  readonly text: string;
  /** What follows it. */
  readonly rest: string;
}

/** First to last of a block. */
const ORDINALS = 'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth'.split(' ');
/** What makes a number one of a set: “4x6”, “4 sets”, “80 %”. */
const NO_SET = String.raw`(?![\d%]|[.,]\d|\s?(?:x|×|✕|\*|%|kg|lb|sets?|reps?|rounds?)(?!\p{L}))`;
const WEEK = new RegExp(
  String.raw`^(?:(?:weeks?|wks?\.?|w)\s?#?(?<number>\d{1,2})(?![\d%]|[.,]\d)|(?:week|wk\.?)\s(?<word>${COUNTED.join('|')})(?!\p{L})|(?<nth>\d{1,2})(?:st|nd|rd|th)\sweek(?!\p{L})|(?<ordinal>${ORDINALS.join('|')})\sweek(?!\p{L}))`,
  'iu',
);
/** Further weeks beside the first: “1-4”, “1 and 2”, “W1/W2”. */
const FURTHER_WEEKS = new RegExp(
  String.raw`^\s?(?:-|–|—|to\s|through\s|and\s|&|\+|\/|,)\s?(?:(?:weeks?|wks?\.?|w)\s?#?\d{1,2}${NO_SET}|\d{1,2}${NO_SET}(?!\s?\p{L}))`,
  'iu',
);
const NUMBERED = /^(?:day|training day|session|workout|d)\s?#?(\d{1,2})(?![\d%]|[.,]\d)/iu;
const WEEKDAY = /^(\p{L}{2,9})(?![\p{L}\p{N}])\.?/iu;
/** Between the days that one line is meant for. */
const AND = /^\s?(?:\/|&|\+|,|and\s)\s?/iu;
const BETWEEN = /^[\s:;,.|/()–—-]+/u;
const UNCLEAR: WrittenDay = { day: Number.NaN, isNumbered: false };
/** Other usual short forms than the first letters. */
const SHORT: ReadonlyMap<string, number> = new Map([['weds', 3]]);

/** null where the text begins with neither a day nor a week. */
export function readContext(text: string): Context | null {
  let rest = text.trim();
  let week = takeWeek(rest);
  if (week) rest = week.rest.replace(BETWEEN, '');
  const { days, rest: after } = takeDays(rest);
  if (!week && days.length === 0) return null;
  rest = days.length > 0 ? after : rest;
  if (!week) {
    // “Wed, week 2”
    week = takeWeek(rest.replace(BETWEEN, ''));
    if (week) rest = week.rest;
  }
  // “Mon-Fri” may be two days or five.
  const isUnclear = days.length > 0 && takeDay(rest.replace(BETWEEN, '')) !== null;
  const taken = text.trim();
  return {
    week: week?.week ?? null,
    days: isUnclear ? [UNCLEAR] : days,
    text: taken.slice(0, taken.length - rest.length).trim(),
    rest: trimRest(rest),
  };
}

function takeWeek(text: string): { readonly week: number; readonly rest: string } | null {
  const found = WEEK.exec(text);
  if (!found?.groups) return null;
  const { number, word, nth, ordinal } = found.groups;
  const inWords = word ? COUNTED.indexOf(word.toLowerCase()) : ORDINALS.indexOf((ordinal ?? '').toLowerCase());
  const week = Number(number ?? nth ?? inWords + 1);
  let rest = text.slice(found[0].length);
  let further = FURTHER_WEEKS.exec(rest);
  if (!further) return { week, rest };
  for (; further; further = FURTHER_WEEKS.exec(rest)) rest = rest.slice(further[0].length);
  return { week: Number.NaN, rest };
}

/** Day 1 to 84 from the first Monday; null where the week does not have it, or it is beyond the last. */
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

/** “SA row” is a single-arm row, not one of Saturday; “SA: row” is. */
const SINGLE_ARM = /^SA\s+\p{L}/u;

function takeDay(text: string): { readonly day: WrittenDay; readonly rest: string } | null {
  const numbered = NUMBERED.exec(text);
  if (numbered) {
    return { day: { day: Number(numbered[1]), isNumbered: true }, rest: text.slice(numbered[0].length) };
  }
  const word = WEEKDAY.exec(text);
  const day = word && !SINGLE_ARM.test(text) && weekdayOf(word[1]);
  return word && typeof day === 'number' ? { day: { day, isNumbered: false }, rest: text.slice(word[0].length) } : null;
}

function weekdayOf(word: string): number | null {
  return SHORT.get(word.toLowerCase()) ?? readDay(word);
}
