/**
 * Names that look alike and are not the same: other normal forms, letters in another case or of another script,
 * invisible characters, unusual spaces and dashes. A table counts them as two.
 */
import { pairWithFirst } from './groupRows.ts';
import { type Problem, showValue } from './problem.ts';
import type { Arm, ArmColumn, Study } from './schema.ts';

/** What nobody sees: joiners, variation selectors, fillers, the blank of Braille. */
const INVISIBLE = /[\p{Default_Ignorable_Code_Point}\u2800]/gu;
/** Dashes and minus signs, apostrophes and quotation marks: one of each stands for all. */
const DASHES = /[\p{Pd}\u2212\u2043\u02d7]/gu;
const APOSTROPHES = /[\u2018\u2019\u201b\u02bc\u02b9\u2032\u0060\u00b4]/gu;
const QUOTES = /[\u201c\u201d\u201f\u2033]/gu;
/** Small letters of Greek and Cyrillic that look like Latin ones, as do their capitals (Unicode, UTS 39: confusables). */
const CONFUSED: readonly (readonly [foreign: string, latin: string])[] = [
  ['авсԁеһіјкӏмпоԛрѕтухԝ', 'abcdehijklmnoqpstyxw'],
  ['αβεζηικμνορτυχ', 'abeznikmvoptyx'],
];
const LATIN = new Map(
  CONFUSED.flatMap(([foreign, latin]) => [...foreign].map((letter, i) => [letter, [...latin][i]] as const)),
);

/** Equal for two names exactly where they look alike. */
export function blurName(name: string): string {
  const folded = name.normalize('NFKC').toUpperCase().toLowerCase().normalize('NFKC');
  return [...folded.replace(INVISIBLE, '').replace(/\s+/gu, '')]
    .map((letter) => LATIN.get(letter) ?? letter)
    .join('')
    .replace(DASHES, '-')
    .replace(APOSTROPHES, "'")
    .replace(QUOTES, '"');
}

/** How one name differs from another at the first place: “U+00A0 where the other has U+0020”. */
export function stateDifference(name: string, other: string): string {
  const [ours, theirs] = [[...name], [...other]];
  const at = ours.findIndex((letter, i) => letter !== theirs[i]);
  const place = at === -1 ? ours.length : at;
  return `character ${place + 1} is ${writeCharacter(ours[place])}, and ${writeCharacter(theirs[place])} there`;
}

/** “U+0041 (A)”; what leaves no mark of its own by its code point alone. */
function writeCharacter(character: string | undefined): string {
  if (character === undefined) return 'the end';
  const code = `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
  return /[\p{L}\p{N}\p{P}\p{S}]/u.test(character) && !/[\p{Default_Ignorable_Code_Point}\u2800]/u.test(character)
    ? `${code} (${character})`
    : code;
}

/** Columns whose names tell rows apart, and what they are told apart in. */
const NAMES: readonly { readonly column: ArmColumn & keyof Arm; readonly within: (arm: Arm) => string }[] = [
  { column: 'study', within: () => '' },
  { column: 'arm', within: ({ study }) => study },
  { column: 'cohort', within: ({ study }) => study },
  { column: 'exercise', within: () => '' },
  { column: 'muscle', within: () => '' },
];

/** Warnings for names of `arms.csv` that look like an earlier one; each spelling at its first row. */
export function findLookAlikes(arms: readonly Arm[], file: string): Problem[] {
  return NAMES.flatMap(({ column, within }) =>
    compareNames(
      arms.flatMap((arm) => {
        const name = arm[column];
        return typeof name === 'string' ? [{ name, line: arm.line, within: within(arm) }] : [];
      }),
      column,
      file,
    ),
  );
}

/** The same for the studies of `studies.csv`. */
export function findLookAlikeStudies(studies: readonly Study[], file: string): Problem[] {
  return compareNames(
    studies.map(({ study, line }) => ({ name: study, line, within: '' })),
    'study',
    file,
  );
}

interface Name {
  readonly name: string;
  readonly line: number;
  readonly within: string;
}

function compareNames(names: readonly Name[], column: string, file: string): Problem[] {
  // Each spelling once; a table repeats its names, and few are worth the folding.
  const seen = new Set<string>();
  const spellings = names.filter(({ name, within }) => {
    const key = `${within}\u0000${name}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  return pairWithFirst(spellings, ({ name, within }) => `${within}\u0000${blurName(name)}`).map(({ row, first }) => ({
    kind: 'unusual',
    file,
    line: row.line,
    column,
    value: row.name,
    expected: `“${showValue(first.name)}”, as line ${first.line} writes what looks the same: ${stateDifference(row.name, first.name)}`,
    remedy: 'Write one name everywhere, or tell the two apart by more than this.',
  }));
}
