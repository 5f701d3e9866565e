/** Numbers set by set, “12/10/8”, “RPE 7/8/9”, “70/75/80%”: refused, since a line has one number for all its sets. */
import type { WrittenColumn } from './headings.ts';
import { END, LIST, LOOSE_LIST, makeNotation, type Notation, REPS, type Refusal, TIMES, WEIGHT } from './notation.ts';
import type { Field } from './understood.ts';

const PERCENT = String.raw`%|per\s?cent|pct`;
const LEFT = String.raw`(?:${REPS}\s)?(?:in\s(?:the\s)?(?:reserve|tank)|left|short\sof|shy\sof)`;
/** What makes the end of a list the beginning of something else. */
const OTHER = String.raw`\s?(?:${PERCENT}|${WEIGHT}${END}|rir|rpe|rm|${LEFT}|possible|(?:x|×|✕|\*)\s?\d)`;

const ONE = {
  sets: 'one number of sets',
  load: 'one load',
  possible: 'one number of repetitions possible',
  reserve: 'one reserve',
} as const satisfies Partial<Record<Field, string>>;

const ofSets = (field: keyof typeof ONE, list: string, write: (number: string) => string): { refused: Refusal } => ({
  refused: {
    field,
    expected: `${ONE[field]} for all sets of a line`,
    remedy: `Write a line for each set, ${parts(list)
      .map((number) => `one with “${write(number)}”`)
      .join(', ')}; or, if a range is meant, its two ends, “${write(ends(list))}”.`,
  },
});
const ofRating = (list: string) => ofSets('reserve', list, (number) => `RPE ${number}`);
const ofReserve = (list: string) => ofSets('reserve', list, (number) => `${number} RIR`);

export const LISTS: readonly Notation[] = [
  makeNotation(String.raw`@?\s?rpe\s?(?:of|:|=|@)?\s?(${LOOSE_LIST})${END}(?!${OTHER})`, ofRating),
  makeNotation(String.raw`@?\s?(${LIST})\s?rpe${END}`, ofRating),
  makeNotation(
    String.raw`@?\s?(?:rir|(?:${REPS}\s)?in\sreserve|reserve)\s?(?:of|:|=|@)?\s?(${LOOSE_LIST})${END}(?!${OTHER})`,
    ofReserve,
  ),
  makeNotation(String.raw`@?\s?(${LIST})\s?(?:rir|${LEFT})${END}`, ofReserve),
  makeNotation(String.raw`@?\s?(${LIST})\s?(%|per\s?cent|pct|${WEIGHT})(?!\p{L})`, (list, unit) =>
    ofSets('load', list, (number) => (unit === '%' ? `${number}%` : `${number} ${unit}`)),
  ),
  makeNotation(
    String.raw`(?:(\d{1,3})${TIMES})?(\d{1,3}(?:\s?\/\s?\d{1,3})+)${END}(?![.,\/]\d|\s\/\s?\d|${OTHER})`,
    refuseRepetitions,
  ),
  makeNotation(
    String.raw`(\d{1,3})${TIMES}(\d{1,3}(?:,\d{1,3})+)(?!\d|[.,]\d|\s?(?:%|${WEIGHT}|rir|rpe|reps?\s|in\s|left))`,
    refuseRepetitions,
  ),
];

/** A list of which its column says what its numbers are; null where it is one of repetitions there too. */
export function refuseListOf(column: WrittenColumn | null, list: string): Refusal | null {
  switch (column?.kind) {
    case 'rating':
      return ofRating(list).refused;
    case 'reserve':
      return ofReserve(list).refused;
    case 'load':
      return ofSets('load', list, (number) => (column.unit === null ? number : number + unitOf(column.unit))).refused;
    case 'sets':
    case 'possible':
      return ofSets(column.kind, list, (number) => number).refused;
    default:
      return null;
  }
}

function unitOf(unit: '%' | 'kg' | 'lb' | 'form'): string {
  return unit === 'kg' || unit === 'lb' ? ` ${unit}` : '%';
}

/** “1x5”, “1x3”, “1x1” */
function refuseRepetitions(sets: string | undefined, list: string) {
  const each = parts(list).map((repetitions) => `“1x${repetitions}”`);
  return {
    refused: {
      field: 'repetitions',
      expected: 'one number of repetitions for all sets of a line',
      remedy: `Write a line for each set: ${each.join(', ')}, each with its load.`,
    },
    ...(sets === undefined ? { list } : {}),
  } as const;
}

function parts(list: string): readonly string[] {
  // Where only commas stand they part numbers, since a list has three of them or more.
  const sign = /[/;>→–-]/u.test(list) ? /\s?[/;>→–-]\s?/u : /\s?,\s?/u;
  return list.split(sign).map((number) => number.trim());
}

function ends(list: string): string {
  const numbers = [...parts(list)].sort((a, b) => Number(a.replace(',', '.')) - Number(b.replace(',', '.')));
  return `${numbers[0]}-${numbers.at(-1)}`;
}
