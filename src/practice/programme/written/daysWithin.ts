/** A weekday that stands within a line, or behind its sets, and not before it: “Squat 4x6 80% 2 RIR Saturday”. */
import { type Context, readContext } from './context.ts';
import { isJoint, scan, type Token } from './scan.ts';

export interface DaysWithin {
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

/** null where none stands there; days that are named apart from each other are all given. */
export function takeDaysWithin(text: string): DaysWithin | null {
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
