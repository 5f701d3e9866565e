/** What a notation of sets is, and the pieces that notations are made of. */
import type { Field, Found } from './understood.ts';

export interface Refusal {
  /** null where it is not known what was meant. */
  readonly field: Field | null;
  readonly expected: string;
  readonly remedy: string;
}

export interface Said {
  readonly found?: readonly Found[];
  readonly refused?: Refusal;
  readonly assumed?: string;
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
