/** What a notation of sets is, and the pieces that notations are made of. */
import { COUNTED } from './numbers.ts';
import type { Field, Found } from './understood.ts';

export interface Refusal {
  /** null where it is not known what was meant. */
  readonly field: Field | null;
  readonly expected: string;
  readonly remedy: string;
  /** True for words that only surround a number, where one is written beside them: “2 RIR, close to failure”. */
  readonly isVague?: boolean;
}

export interface Said {
  readonly found?: readonly Found[];
  readonly refused?: Refusal;
  readonly assumed?: string;
  /** What a sign round the number was taken for. */
  readonly taken?: string;
  /** The numbers of a list, one for each set, of which its column may say what they are. */
  readonly list?: string;
  /** True for what is understood and has no place in a programme: rest, tempo, seconds. */
  readonly isNote?: boolean;
  /** True for part of a name that begins with a digit. */
  readonly isWord?: boolean;
  /** True for a word that only says what follows. */
  readonly isLabel?: boolean;
}

export interface Notation {
  /** Sticky; matched in small and capital letters. */
  readonly pattern: RegExp;
  readonly say: (...groups: readonly string[]) => Said;
}

const NUMBER = String.raw`\d{1,4}(?:[.,]\d{1,3})?`;
const DASH = String.raw`\s?(?:-|–|—|to)\s?`;
export const SPAN = `${NUMBER}(?:${DASH}${NUMBER})?`;
export const TIMES = String.raw`\s?(?:x|×|✕|\*|by|times)\s?`;
export const REPS = '(?:reps?|repetitions?)';
export const SETS = '(?:sets?|rounds?)';
export const WEIGHT = '(?:kgs?|kilos?|kilograms?|lbs?|pounds?)';
export const TIME = `(?:s|secs?|seconds?|mins?|minutes?|"|″|'|′)`;
export const LENGTH = '(?:m|metres?|meters?|km|yds?|yards?|cals?|calories)';
/** What makes a number one of another field: the end of a range is followed by none of it. */
const OTHER = String.raw`[.,]?\d|\s?(?:%|${WEIGHT}|per\s?cent|pct|rir|rpe|rm|${REPS}\s(?:in|left|short|shy|from|off|away)|in\s|left|short|shy|from|off|away|possible|${SETS})`;
/** A number or a range that nothing of its own follows, so that “6 – 80 %” is no range. */
export const LAST_SPAN = `${NUMBER}(?:${DASH}${NUMBER}(?!${OTHER}))?`;
/** A number in words. */
export const COUNT_WORD = `zero|${COUNTED.join('|')}`;
const COUNT = String.raw`(?:${NUMBER}|(?:${COUNT_WORD})(?!\p{L}))`;
/** A number in digits or words, or a range. */
export const COUNT_SPAN = String.raw`${COUNT}(?:(?:${DASH}|\sor\s)${COUNT})?`;
/** The same in words only. */
export const COUNT_WORDS = String.raw`(?:${COUNT_WORD})(?:(?:${DASH}|\sor\s)(?:${COUNT_WORD}))?(?!\p{L})`;
/** Numbers set by set: two or more with a stroke between them, three or more with another sign. */
export const LIST = String.raw`${NUMBER}(?:(?:\s?\/\s?${NUMBER})+|(?:[,;>→–-]${NUMBER}){2,})(?!\d|[.,\/]\d)`;
/** The same behind what says of what, where a space parts them too. */
export const LOOSE_LIST = String.raw`${NUMBER}(?:(?:\s?\/\s?${NUMBER})+|(?:\s?[,;>→–-]\s?${NUMBER}){2,})(?!\d|[.,\/]\d)`;
/** The same of whole numbers. */
export const WHOLE = String.raw`\d{1,3}(?:${DASH}\d{1,3}(?!${OTHER}))?`;
export const FAILURE = '(?:(?:muscular|technical|absolute|concentric|momentary)\\s)?failure';
export const MANY = `(?:amrap|as\\smany(?:\\s${REPS})?\\sas\\spossible|max(?:imum)?\\s${REPS}|max(?:imum)?(?=\\s*(?:$|[,;@|)])))`;
/** Neither letter nor digit follows. */
export const END = String.raw`(?![\p{L}\p{N}])`;

/** Its pattern is made when a text is first held against it: a page that shows lines reads none. */
export function makeNotation(pattern: string, say: Notation['say']): Notation {
  let made: RegExp | null = null;
  return {
    get pattern() {
      made ??= new RegExp(pattern, 'iuy');
      return made;
    },
    say,
  };
}

export const REPETITIONS_EXPECTED = 'a number of repetitions, or a range of them';
