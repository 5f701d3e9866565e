/** Which column of a table a strange name in a header is likely to mean: by its letters, its words, or a usual word for it. */
import { distance } from 'fastest-levenshtein';
import type { Column } from '../column.ts';

type Columns = Readonly<Record<string, Column<unknown>>>;
type Synonyms = Readonly<Record<string, readonly string[] | undefined>>;

/** Letters that may differ, by the letters of the shorter name: with more, short words would mean one another. */
const DIFFERENT_LETTERS = [
  { from: 7, letters: 2 },
  { from: 4, letters: 1 },
] as const;
/** Characters of a name beyond which it is a sentence. */
const LONGEST_NAME = 60;

/**
 * Gives what finds the columns that a name may mean, the likeliest kind of likeness only: the same words in any order,
 * else nearly the same letters. It gives none for a name that is like none of them.
 *
 * @param absent names of columns that the header does not have
 */
export function makeColumnFinder(
  absent: readonly string[],
  synonyms: Synonyms,
): (written: string) => readonly string[] {
  const known = absent.map((name) => ({ name, likenesses: [name, ...(synonyms[name] ?? [])].map(describe) }));
  const found = new Map<string, readonly string[]>();
  const find = (written: string) => {
    const given = describe(written);
    if (given.letters === '') return [];
    const named = (isLike: (one: Likeness) => boolean) =>
      known.filter(({ likenesses }) => likenesses.some(isLike)).map(({ name }) => name);
    const same = named(({ letters }) => letters === given.letters);
    if (same.length > 0) return same;
    const reordered = named(({ sorted }) => sorted === given.sorted);
    return reordered.length > 0 ? reordered : named(({ letters }) => isNear(given.letters, letters));
  };
  return (written) => {
    if (written.length > LONGEST_NAME) return [];
    const names = found.get(written) ?? find(written);
    found.set(written, names);
    return names;
  };
}

/** What is compared of a name. */
interface Likeness {
  readonly letters: string;
  /** The same with its words in the order of the alphabet. */
  readonly sorted: string;
}

function describe(name: string): Likeness {
  const words = splitWords(name);
  return { letters: words.join(''), sorted: [...words].sort().join('') };
}

/** Gives what tells whether a cell is the name of a column, or is likely to mean one. */
export function makeNameTest(columns: Columns, synonyms: Synonyms): (cell: string) => boolean {
  const find = makeColumnFinder(Object.keys(columns), synonyms);
  return (cell) => Object.hasOwn(columns, cell) || find(cell).length > 0;
}

/** Small words of a name: “FollowUp-Mean (mm)” and “follow_up mean” are follow, up, mean; a unit in brackets is none. */
function splitWords(name: string): readonly string[] {
  return name
    .replace(/[([][^)\]]*[)\]]/gu, ' ')
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .toLowerCase()
    .replace(/%/gu, ' % ')
    .split(/[^\p{L}\p{N}%]+/u)
    .filter(Boolean);
}

function isNear(given: string, meant: string): boolean {
  const length = Math.min(given.length, meant.length);
  const allowed = DIFFERENT_LETTERS.find(({ from }) => length >= from)?.letters ?? 0;
  return Math.abs(given.length - meant.length) <= allowed && distance(given, meant) <= allowed;
}
