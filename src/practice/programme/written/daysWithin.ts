/** A weekday that stands within a line, or behind its sets, and not before it: “Squat 4x6 80% 2 RIR Saturday”. */
import { type Context, readContext, type WrittenDay } from './context.ts';
import { isJoint, scan, type Token } from './scan.ts';
import { type NotRead, notRead } from './understood.ts';

interface DaysWithin {
  readonly context: Context;
  /** False where one may be part of a remark: “heavier Monday”. */
  readonly isClear: boolean;
  /** What is left of the line without them. */
  readonly rest: string;
}

const FULL = '(?:mon|tues|wednes|thurs|fri|satur|sun)days?';
const SHORT = '(?:mon|tues?|weds?|thur?s?|fri|sat|sun)';
const FULL_DAYS = new RegExp(String.raw`^${FULL}(?:\/${FULL})*\.?$`, 'iu');
const SHORT_DAYS = new RegExp(String.raw`^${SHORT}(?:\/${SHORT})*\.?$`, 'iu');
/** Before a day that only something else is compared with: “same as Monday”. */
const COMPARED = /^(?:as|than|like|from|since|after|before|until|till|see|of|that|last|next|to)$/iu;
/** What goes on behind a day. */
const JOINS = /^(?:and|with|w)$/iu;
/** Behind a day that nothing is trained on. */
const REST = /^(?:off|rest|free)\.?$/iu;

export interface DayBeside {
  /** Without the day; with it where it is not taken as one. */
  readonly rest: string;
  /** null where none stands there, or the same as before it. */
  readonly within: Context | null;
  /** What cannot stand beside the day before it, or may be either a day or part of a remark; null else. */
  readonly refused: DayRefusal | null;
}

export interface DayRefusal {
  readonly text: string;
  readonly isClear: boolean;
}

/**
 * The day within a line, or a cell, beside the one that is named before it. Where one is, a remark that speaks of a
 * day, “heavier Monday”, is a remark.
 *
 * @param under days that are named before it; none where none is
 */
export function takeDayBeside(text: string, under: readonly WrittenDay[]): DayBeside {
  const found = takeDaysWithin(text);
  if (!found) return { rest: text, within: null, refused: null };
  const { context, isClear, rest } = found;
  if (!isClear) {
    return { rest: text, within: null, refused: under.length > 0 ? null : { text: context.text, isClear } };
  }
  // Before the sets and behind them the same day may stand, and no other.
  const isSame = isSameDays(under, context.days);
  return {
    rest,
    within: isSame ? null : context,
    refused: under.length > 0 && !isSame ? { text: context.text, isClear } : null,
  };
}

export function isSameDays(a: readonly WrittenDay[], b: readonly WrittenDay[]): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

export function refuseDayWithin(line: number, refused: readonly DayRefusal[]): NotRead {
  const isRemark = refused.every(({ isClear }) => !isClear);
  return notRead(line, 'day', {
    value: [...new Set(refused.map(({ text }) => text))].join(', '),
    expected: 'one day, before the sets that are done on it',
    remedy: isRemark
      ? 'Write the sets with the day before them: “Mon squat 4x6 80%”; a remark behind them that speaks of another day then stays a note.'
      : 'Write the sets of each day on a line of their own, with the day before them: “Mon squat 4x6 80%”; the same sets on two days as “Mon and Thu squat 4x6 80%”.',
  });
}

/** null where none stands there; days that are named apart from each other are all given. */
function takeDaysWithin(text: string): DaysWithin | null {
  const tokens = scan(text);
  const days = tokens.flatMap((token, i) => {
    const standing = standingOf(tokens, i);
    return standing === null ? [] : [{ token, standing }];
  });
  if (days.length === 0) return null;
  const named = days.map(({ token }) => token.text.replace(/\.$/u, '').replace(/days(?!\p{L})/giu, 'day'));
  const context = readContext(named.join(', '));
  if (context?.rest !== '') return null;
  return {
    context: { ...context, text: days.map(({ token }) => token.text).join(', ') },
    isClear: days.every(({ standing }) => standing === 'apart'),
    rest: days.reduceRight((left, { token }) => cut(left, token), text),
  };
}

/** apart: it can only be the day of the sets; among words: it may be part of a remark; null for no day of theirs. */
function standingOf(tokens: readonly Token[], i: number): 'apart' | 'among words' | null {
  const token = tokens[i];
  if (token.kind !== 'word' || !isDayName(token)) return null;
  const after = tokens[i + 1];
  const before = tokens.slice(0, i).reverse();
  const word = before.find((one) => !isJoint(one) && !isDayName(one));
  if ((word && COMPARED.test(word.text)) || (after && REST.test(after.text))) return null;
  const isLast = after?.kind !== 'word' || JOINS.test(after.text) || isDayName(after);
  const isAfterSigns = before[0]?.kind !== 'word' || isJoint(before[0]) || isDayName(before[0]);
  // “Squat Saturday 4x6”: the words before it are the name.
  const isAfterName = before.every(({ kind }) => kind === 'word');
  if (SHORT_DAYS.test(token.text) && !/^\p{Lu}/u.test(token.text)) return isLast && isAfterSigns ? 'apart' : null;
  if (isLast && (isAfterSigns || isAfterName)) return 'apart';
  return SHORT_DAYS.test(token.text) && !isLast ? null : 'among words';
}

function isDayName({ text }: Token): boolean {
  return SHORT_DAYS.test(text) || FULL_DAYS.test(text);
}

function cut(text: string, { start, end }: Token): string {
  return `${text.slice(0, start).trimEnd()} ${text.slice(end).trimStart()}`.trim();
}
