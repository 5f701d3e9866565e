/** A written text taken apart from left to right: notations, bare numbers, words, and what joins them. */
import { ASIDE, TIMES_ALONE } from './asideNotations.ts';
import { FAILURES, LEFT_OPEN } from './failureNotations.ts';
import { LISTS } from './listNotations.ts';
import { COUNT_WORD, LAST_SPAN, type Notation, type Said } from './notation.ts';
import { parseSpan } from './numbers.ts';
import { REFUSED } from './refusedNotations.ts';
import { SAYING } from './saidNotations.ts';
import { applySigns, takeSigns, type Unsigned, type WrittenSign } from './signs.ts';
import type { Span } from './understood.ts';

export type Token = { readonly start: number; readonly end: number; readonly text: string } & (
  | { readonly kind: 'notation'; readonly said: Said }
  /** A number that nothing is said of. */
  | { readonly kind: 'number'; readonly value: Span; readonly written: string; readonly signs: readonly WrittenSign[] }
  /** Digits and letters that are no notation. */
  | { readonly kind: 'unknown' }
  | { readonly kind: 'word' }
  /** Signs and small words between the others. */
  | { readonly kind: 'joint' }
);

const NOTATIONS: readonly Notation[] = [...ASIDE, ...LISTS, ...REFUSED, ...FAILURES, ...SAYING, LEFT_OPEN, TIMES_ALONE];
const BARE = new RegExp(String.raw`${LAST_SPAN}(?![\p{L}\d])(?![.,]\d)`, 'iuy');
const NUMBER_BEFORE = /(\d+(?:[.,]\d+)?)\D*$/u;
const NUMBER_AFTER = new RegExp(String.raw`\d+(?:[.,]\d+)?|(?:${COUNT_WORD})(?!\p{L})`, 'iu');
const MIXED = /\d[\d.,]*\p{L}[\p{L}\p{N}]*|\d+(?:[.,]\d+)*/iuy;
/** An x before a digit is a sign, not the beginning of a word. */
const WORD = /(?![x×]\d)\p{L}[\p{L}\p{M}\p{N}’']*(?:[-/]\p{L}[\p{L}\p{M}\p{N}’']*)*\.?/iuy;
/** What says of a number what it is, and has none. */
const LABEL = /%|(?:rir|rpe|kgs?|lbs?|amrap|1rm)(?![\p{L}\p{N}])/iuy;
/** Between notations; of “at”, “with” and the like nothing is left to be understood. */
const JOINT_WORD = /^(?:x|at|with|w|for|of|and|on|per|the|a|load|weight|intensity)\.?$/iu;

/** The same text is looked at several times: whether it is of sets, where it parts, and what it says. */
const recent = new Map<string, readonly Token[]>();
/** Texts that are remembered before all are forgotten: more than a long programme has lines. */
const MOST_RECENT = 2_000;

export function scan(text: string): readonly Token[] {
  const known = recent.get(text);
  if (known) return known;
  if (recent.size >= MOST_RECENT) recent.clear();
  const tokens = takeApart(text);
  recent.set(text, tokens);
  return tokens;
}

function takeApart(written: string): readonly Token[] {
  const unsigned = takeSigns(written);
  const { text, boundaries } = unsigned;
  const tokens: Token[] = [];
  let at = 0;
  while (at < text.length) {
    const token = readToken(unsigned, at);
    const [start, end] = [boundaries[at], boundaries[token.end]];
    if (token.text.trim() !== '') tokens.push({ ...token, start, end, text: written.slice(start, end) });
    at = token.end;
  }
  return tokens;
}

/** Signs round the numbers from start to end. */
function signsOf({ text, signs }: Unsigned, start: number, end: number): readonly WrittenSign[] {
  return signs.flatMap((sign) => {
    if (sign.at < start || sign.at >= end) return [];
    const number = sign.isAfter
      ? NUMBER_BEFORE.exec(text.slice(start, sign.at + 1))?.[1]
      : NUMBER_AFTER.exec(text.slice(sign.at, end))?.[0];
    return number === undefined ? [] : [{ sign, number }];
  });
}

/** True for words that say nothing by themselves. */
export function isJoint(token: Token): boolean {
  return token.kind === 'joint' || (token.kind === 'word' && JOINT_WORD.test(token.text));
}

/** Its places are those of the text without signs. */
function readToken(unsigned: Unsigned, start: number): Token {
  const { text } = unsigned;
  const match = (pattern: RegExp) => {
    pattern.lastIndex = start;
    return pattern.exec(text);
  };
  const place = (length: number) => ({ start, end: start + length, text: text.slice(start, start + length) });
  if (/\s/u.test(text[start])) return { ...place(1), kind: 'joint' };
  for (const { pattern, say } of NOTATIONS) {
    const found = match(pattern);
    if (!found) continue;
    const signs = signsOf(unsigned, start, start + found[0].length);
    const said = applySigns(say(...found.slice(1)), signs, found[0].trim());
    const kind = said.isWord ? 'word' : said.isLabel ? 'joint' : 'notation';
    return kind === 'notation' ? { ...place(found[0].length), kind, said } : { ...place(found[0].length), kind };
  }
  const bare = match(BARE);
  if (bare) {
    const signs = signsOf(unsigned, start, start + bare[0].length);
    return { ...place(bare[0].length), kind: 'number', value: parseSpan(bare[0]), written: bare[0], signs };
  }
  const mixed = match(MIXED);
  if (mixed) return { ...place(mixed[0].length), kind: 'unknown' };
  const label = match(LABEL);
  if (label) return { ...place(label[0].length), kind: 'unknown' };
  const word = match(WORD);
  if (word) return { ...place(word[0].length), kind: 'word' };
  return { ...place([...text.slice(start, start + 2)][0].length), kind: 'joint' };
}
