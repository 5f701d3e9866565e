/** One written cell, or a line outside a table: what it says of a set, and what is left of it. */
import { PROGRAMME_COLUMNS } from '../columns.ts';
import { sayBare } from './bare.ts';
import { EXAMPLES } from './examples.ts';
import type { WrittenColumn } from './headings.ts';
import { refuseListOf } from './listNotations.ts';
import { COUNT_WORDS, type Refusal, type Said } from './notation.ts';
import { parseSpan } from './numbers.ts';
import { isJoint, scan, type Token } from './scan.ts';
import { applySigns } from './signs.ts';
import type { Assumed, Field, Found, Place } from './understood.ts';

export interface Piece {
  readonly place: Place;
  readonly column: WrittenColumn | null;
}

export interface ReadPiece {
  readonly place: Place;
  readonly found: readonly { readonly found: Found; readonly text: string }[];
  readonly refused: readonly { readonly refusal: Refusal; readonly text: string }[];
  /** Runs of words that are no notation, in their order. */
  readonly words: readonly string[];
  readonly notes: readonly string[];
  readonly assumed: readonly Assumed[];
}

/** A cell in which somebody wrote that there is nothing. */
const NOTHING = /^(?:[-–—.]+|n\/?a)$/iu;

export function isNothing(text: string): boolean {
  return text.trim() === '' || NOTHING.test(text.trim());
}

/** Cells of a column “Spotter”. */
const YES = /^(?:y|yes|x|✓|✔|1)$/iu;
const NO = /^(?:n|no|0)$/iu;

export function readPiece({ place, column }: Piece): ReadPiece {
  if (column?.kind === 'spotter' && (YES.test(place.text) || NO.test(place.text))) {
    const value = YES.test(place.text) ? 'spotter' : 'alone';
    const found = { found: { field: 'company', value }, text: place.text } as const;
    return { place, found: [found], refused: [], words: [], notes: [], assumed: [] };
  }
  const tokens = scanCell(place.text, column);
  const said = tokens.flatMap((token) => {
    const one = sayToken(token, column);
    return one ? [{ ...one, text: token.text.trim() }] : [];
  });
  const isReversed = column?.kind === 'scheme' && column.isReversed && !/set|rep/iu.test(place.text);
  const found = said.flatMap(({ found: all = [], text }) =>
    all.map((one) => ({ found: isReversed ? reverse(one) : one, text })),
  );
  const words = runsOfWords(tokens, place.text);
  const isLeft = found.some(({ found: one }) => one.field === 'reserve' && one.value.least > 0);
  const isRemark = ({ refused: refusal }: Said) => refusal?.isVague === true && isLeft;
  const refused = said.flatMap((one) =>
    one.refused && !isRemark(one) ? [{ refusal: one.refused, text: one.text }] : [],
  );
  const notes = said.flatMap((one) => (one.isNote || isRemark(one) ? [one.text] : []));
  const field = fieldOf(column);
  if (field && column?.kind !== 'scheme' && SIGNED.test(place.text.trim()) && refused.length === 0) {
    return refuseWhole(place, { field, expected: PROGRAMME_COLUMNS[field].expected, remedy: WITHOUT_SIGN });
  }
  const isMisread = found.length === 0 && refused.length === 0 && words.length + notes.length > 0;
  return {
    place,
    found,
    refused: isMisread && field ? [{ refusal: refuseWords(field, place.text), text: place.text }] : refused,
    words: isMisread && field ? [] : words,
    notes: isMisread && field ? [] : notes,
    assumed: said.flatMap(({ assumed, taken, found: all = [] }) =>
      [taken, assumed].flatMap((one) => (one === undefined ? [] : [{ said: one, of: all.map(({ field }) => field) }])),
    ),
  };
}

/** A cell that adds to another number, or takes from it. */
const SIGNED = /^[+−–-]\s?\d/u;
const WITHOUT_SIGN = 'Write the whole number that is meant, without a sign before it.';

function refuseWhole(place: Place, refusal: Refusal): ReadPiece {
  return { place, found: [], refused: [{ refusal, text: place.text }], words: [], notes: [], assumed: [] };
}

const IN_WORDS = new RegExp(`^(?:${COUNT_WORDS})$`, 'iu');

/** A cell of a column of reserves may hold a word for a number: “two”. */
function scanCell(written: string, column: WrittenColumn | null): readonly Token[] {
  const text = written.trim();
  if (fieldOf(column) !== 'reserve' || !IN_WORDS.test(text)) return scan(written);
  return [{ kind: 'number', start: 0, end: written.length, text, value: parseSpan(text), written: text, signs: [] }];
}

/** The field that a cell of a column has to say; null where it may say anything. */
function fieldOf(column: WrittenColumn | null): Field | null {
  switch (column?.kind) {
    case 'sets':
    case 'repetitions':
    case 'possible':
    case 'reserve':
    case 'load':
    case 'company':
      return column.kind;
    case 'rating':
      return 'reserve';
    case 'spotter':
      return 'company';
    case 'scheme':
      return 'repetitions';
    default:
      return null;
  }
}

/** What a spreadsheet makes of “6-8”. */
const DATE =
  /^\d{1,2}[-. /](?!(?:min|sec)\p{L}*$)\p{L}{3,9}\.?(?:[-. /]\d{2,4})?$|^\p{L}{3,9}[-. /]\d{1,4}$|^\d{1,4}[-./]\d{1,2}[-./]\d{1,4}$/u;

function refuseWords(field: Field, text: string): Refusal {
  return {
    field,
    expected: PROGRAMME_COLUMNS[field].expected,
    remedy: DATE.test(text.trim())
      ? 'It looks like a date that a spreadsheet made of a range: format the column as text and write the range again.'
      : field === 'company'
        ? ''
        : `Write a number, “${EXAMPLES[field].one}”, or a range, “${EXAMPLES[field].range}”; remarks stand in a column of notes.`,
  };
}

function sayToken(token: Token, column: WrittenColumn | null): Said | null {
  if (token.kind === 'notation') {
    const refused = token.said.list === undefined ? null : refuseListOf(column, token.said.list);
    return refused ? { refused } : token.said;
  }
  if (token.kind === 'number') {
    const said = sayBare(token.value, token.written, column);
    return applySigns(said, token.signs, token.written);
  }
  if (token.kind !== 'unknown') return null;
  return {
    refused: {
      field: null,
      expected: 'sets and repetitions, a load, or repetitions in reserve',
      remedy: DATE.test(token.text)
        ? 'It looks like a date that a spreadsheet made of a range: format the column as text and write the range again.'
        : 'Write for instance “4x6 80% 2 RIR”.',
    },
  };
}

function reverse(found: Found): Found {
  if (found.field === 'sets') return { ...found, field: 'repetitions' };
  return found.field === 'repetitions' ? { ...found, field: 'sets' } : found;
}

/** Words next to each other, with what joins them, as they stand in the text. */
function runsOfWords(tokens: readonly Token[], text: string): readonly string[] {
  const runs: { start: number; end: number }[] = [];
  let isOpen = false;
  for (const token of tokens) {
    if (token.kind === 'word' && !(isJoint(token) && !isOpen)) {
      const last = runs.at(-1);
      if (isOpen && last) last.end = isJoint(token) ? last.end : token.end;
      else runs.push({ start: token.start, end: token.end });
      isOpen = true;
    } else if (token.kind !== 'joint' && token.kind !== 'word') isOpen = false;
    else if (/[,;|]/u.test(token.text)) isOpen = false;
  }
  return runs.map(({ start, end }) => closeBrackets(text, start, end)).filter((run) => run !== '');
}

/** A bracket that was opened in a run and closed right after it is part of it. */
function closeBrackets(text: string, start: number, end: number): string {
  const run = text.slice(start, end);
  return run.includes('(') && !run.includes(')') && text[end] === ')' ? `${run})` : run;
}
