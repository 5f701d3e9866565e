/**
 * Signs and words round a number that make another of it: “≥2”, “5+”, “at least 2”, “~75%”, “about 2”. They are taken
 * out before the notations are looked for, so that each notation is known with and without them, and are then said of
 * what was found: a bound is refused, since it leaves open what is to be checked; “about” is taken as the number.
 */
import { PROGRAMME_COLUMNS } from '../columns.ts';
import { EXAMPLES } from './examples.ts';
import { COUNT_WORD, REPS, type Refusal, type Said, TIMES, WHOLE } from './notation.ts';
import { parseSpan } from './numbers.ts';
import type { Field, Found } from './understood.ts';

export interface Sign {
  readonly kind: 'bound' | 'about';
  /** As it stood. */
  readonly text: string;
  /** True where it stands after its number. */
  readonly isAfter: boolean;
  /** Place, in the text without signs, of the character that it is of. */
  readonly at: number;
}

export interface Unsigned {
  readonly text: string;
  readonly signs: readonly Sign[];
  /** Place in the text as it stood of what ends, and begins, before each character of the one without signs. */
  readonly boundaries: readonly number[];
}

const UNIT = String.raw`(?:%|per\s?cent|kgs?|lbs?|rir|rpe|reps?|repetitions?|sets?)`;
const NUMBER_NEXT = String.raw`\s?(?=(?:(?:rir|rpe)\s?[:=@]?\s?)?(?:\d|(?:${COUNT_WORD})(?!\p{L})))`;
const NO_WORD = String.raw`(?<![\p{L}\p{N}])`;
const AFTER_NUMBER = String.raw`(?<=\d(?:\s?${UNIT})?)`;
const ABOUT_BEFORE = String.raw`(?:[~≈∼≃≅]|${NO_WORD}(?:about|around|approx(?:imately|\.)?|roughly|circa|ca?\.)(?!\p{L}))${NUMBER_NEXT}`;
const BOUND_BEFORE = [
  // Neither an arrow nor what stands between two numbers of a list.
  String.raw`(?<![-–—\d])=?[<>≤≥±⩽⩾]=?`,
  String.raw`\+\s?\/\s?[-–−]`,
  String.raw`${NO_WORD}(?:at\s(?:least|most)|up\sto|(?:no|not)\s(?:more|less|fewer)\sthan|(?:more|less|fewer|greater)\sthan|under|below|above)(?!\p{L})`,
  // Neither “3 min” nor “80% of max”.
  String.raw`(?<![\p{L}\p{N}]|\d\s?)min(?:imum)?(?:\.|(?!\p{L}))(?:\sof)?`,
  String.raw`(?<![\p{L}\p{N}]|(?:%|\d|of|cent|pct|rm)\s?)max(?:imum)?(?:\.|(?!\p{L}))(?:\sof)?`,
  // Not “bent over”.
  String.raw`(?<!\p{L}[\s-]?)over(?!\p{L})`,
].map((pattern) => `(?:${pattern})${NUMBER_NEXT}`);
const BOUND_AFTER = [
  String.raw`(?<=(?<![\p{L}\d])\d{1,3}${TIMES}${WHOLE})\s?\+`,
  String.raw`${AFTER_NUMBER}(?:\+(?!\d)|\?)`,
  String.raw`${AFTER_NUMBER}\s(?:or\s(?:more|less|fewer|better|higher|lower|above|below|over|under)|and\s(?:up|above|over|more)|at\s(?:least|most)(?!\s?(?:\d|rir|rpe|${COUNT_WORD})))(?!\p{L})`,
  String.raw`(?<=(?:rir|rpe)\s?[:=@]?\s?[\d.,]+|\d\s?(?:rir|rpe))\s(?:max(?:imum)?|minimum)(?!\p{L})`,
  String.raw`(?<=\d)\s(?:minimum|maximum)(?!\p{L}|\s?(?:${REPS}))`,
];
const ABOUT_AFTER = String.raw`${AFTER_NUMBER}\sor\sso(?!\p{L})`;
const SIGNS = new RegExp(
  `(?<aboutBefore>${ABOUT_BEFORE})|(?<boundBefore>${BOUND_BEFORE.join('|')})|(?<boundAfter>${BOUND_AFTER.join('|')})|(?<aboutAfter>${ABOUT_AFTER})`,
  'giu',
);

export function takeSigns(written: string): Unsigned {
  const signs: Sign[] = [];
  const boundaries: number[] = [];
  let text = '';
  let from = 0;
  const keep = (end: number) => {
    for (; from < end; from += 1) {
      // What follows a sign after a number begins where the sign ends.
      boundaries[text.length] ??= from;
      text += written[from];
    }
  };
  for (const found of written.matchAll(SIGNS)) {
    const { boundBefore, boundAfter, aboutAfter } = found.groups ?? {};
    keep(found.index);
    const isAfter = (boundAfter ?? aboutAfter) !== undefined;
    // A sign before a number begins what the number is of; one after it ends it.
    boundaries[text.length] = isAfter ? found.index + found[0].length : (boundaries[text.length] ?? found.index);
    signs.push({
      kind: (boundBefore ?? boundAfter) !== undefined ? 'bound' : 'about',
      text: found[0].trim(),
      isAfter,
      at: isAfter ? text.length - 1 : text.length,
    });
    from = found.index + found[0].length;
  }
  keep(written.length);
  boundaries[text.length] ??= written.length;
  return { text, signs, boundaries };
}

/** A sign and the number that it is of, as written. */
export interface WrittenSign {
  readonly sign: Sign;
  readonly number: string;
}

/** What a notation says with signs round its numbers. @param plain its text without them */
export function applySigns(said: Said, signs: readonly WrittenSign[], plain: string): Said {
  if (said.refused || !said.found || said.found.length === 0) return said;
  const about = signs.filter(({ sign }) => sign.kind === 'about');
  const taken = about.map((one) => `“${writeSigned(one)}” is taken as ${one.number}.`).join(' ');
  let { found } = said;
  let refused: Refusal | undefined;
  for (const one of signs.filter(({ sign }) => sign.kind === 'bound')) {
    const bounded = findBounded(found, one);
    refused ??= refuseBound((bounded ?? said.found[0]).field, one.sign.text === '+', plain);
    // A number that was worked out from what is written cannot be told apart.
    found = bounded ? found.filter((other) => other !== bounded) : [];
  }
  if (!refused) return taken === '' ? said : { ...said, taken };
  return found.length === 0 ? { refused } : { ...said, found, refused, ...(taken === '' ? {} : { taken }) };
}

function writeSigned({ sign: { text, isAfter }, number }: WrittenSign): string {
  if (isAfter) return `${number}${/^\p{L}/u.test(text) ? ' ' : ''}${text}`;
  return `${text}${/\p{L}\.?$/u.test(text) ? ' ' : ''}${number}`;
}

/** Of two equal numbers a sign is of the one that it stands beside. */
function findBounded(found: readonly Found[], { sign, number }: WrittenSign): Found | undefined {
  const { least, most } = parseSpan(number);
  return (sign.isAfter ? [...found].reverse() : found).find(
    ({ value }) => typeof value !== 'string' && (value.least === least || value.most === most),
  );
}

function refuseBound(field: Field, isPlus: boolean, plain: string): Refusal {
  const { expected } = PROGRAMME_COLUMNS[field];
  const range = field === 'company' ? '' : `, or both ends of a range, “${EXAMPLES[field].range}”`;
  return {
    field,
    expected: `${expected}, or a range of which both ends are written`,
    remedy:
      field === 'repetitions' && isPlus
        ? `Write “${plain}” without the plus; for a last set to failure a line of its own, with the repetitions that you expect and 0 in reserve.`
        : `Write “${plain}” if that is what is meant${range}.`,
  };
}
