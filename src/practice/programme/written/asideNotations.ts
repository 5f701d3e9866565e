/** Rest, tempo, angles, times and labels: understood, and no part of what is checked. */
import { END, LENGTH, makeNotation, type Notation, REPS, SETS, SPAN, TIME } from './notation.ts';

const note = (pattern: string) => makeNotation(pattern + END, () => ({ isNote: true }));

export const ASIDE: readonly Notation[] = [
  note(String.raw`(?:rest|pause|break|recovery)s?\s?(?:of|:|=|for)?\s?\d[\d:.,–-]*\s?${TIME}?`),
  note(String.raw`\d[\d:.,–-]*[\s-]?${TIME}\s?(?:of\s)?(?:rest|pauses?|breaks?|holds?)`),
  note(String.raw`tempo\s?:?\s?[\dx]{1,2}(?:[-/. ]?[\dx]){2,3}`),
  makeNotation(String.raw`\d{1,3}\s?(?:°|degrees?${END}|deg${END})|\d{1,3}-(?!${REPS}|${SETS})\p{L}[\p{L}-]*`, () => ({
    isWord: true,
  })),
  makeNotation(String.raw`(?:exercise|lift|load|weight|intensity|company)\s?[:=]`, () => ({ isLabel: true })),
];

/** Times and lengths that stand alone; asked for last. */
export const TIMES_ALONE: Notation = note(String.raw`${SPAN}\s?(?:${TIME}|${LENGTH})`);
