/**
 * The exercise that a written name means. A name or a synonym of the list is taken; what is only near one
 * is asked about and never taken, since another exercise binds other cautions.
 */
import { distance } from 'fastest-levenshtein';
import { type ExerciseName, type NamedExercise, namesOf } from './exerciseNames.ts';
import { foldName, nameWords } from './foldName.ts';

export type FoundExercise =
  /** Of exactly this name, but for case, plural and hyphens. */
  | { readonly kind: 'named'; readonly exercise: NamedExercise }
  | { readonly kind: 'synonym'; readonly exercise: NamedExercise; readonly synonym: string }
  /** Not of the list; these may be meant, likeliest first, at least one. */
  | { readonly kind: 'near'; readonly suggestions: readonly NamedExercise[] }
  | { readonly kind: 'unknown' };

/** Suggestions that a reader can look over at once. */
const MOST_SUGGESTIONS = 5;
/** Letters that may differ for a name to count as a misspelling, by the letters of the shorter of the two. */
const MISSPELLED_LETTERS = [
  { from: 12, letters: 3 },
  { from: 7, letters: 2 },
  { from: 4, letters: 1 },
] as const;
/** Letters from which a word counts as misspelt where two have changed their places. */
const SWAPPED_LETTERS = 4;
/** Letters of a name above which no misspelling is looked for; the work grows with their square. */
const LONGEST_NAME = 60;

/** @param exercises the reader's own before the list's, so that they go first */
export function findNamed(exercises: readonly NamedExercise[], written: string): FoundExercise {
  const wanted = foldName(written);
  const { all, byFolded } = namesOf(exercises);
  const found = byFolded.get(wanted);
  if (found?.isSynonym) return { kind: 'synonym', exercise: found.exercise, synonym: found.written };
  if (found) return { kind: 'named', exercise: found.exercise };
  if (wanted === '') return { kind: 'unknown' };
  const near = [...findMisspelt(all, wanted), ...findByWords(all, written, wanted)];
  const suggestions = [...new Set(near.map(({ exercise }) => exercise))].slice(0, MOST_SUGGESTIONS);
  return suggestions.length > 0 ? { kind: 'near', suggestions } : { kind: 'unknown' };
}

/** True where one of them has the name, but for case, plural and hyphens; nothing is looked for that is only near. */
export function isNamed(exercises: readonly NamedExercise[], written: string): boolean {
  return namesOf(exercises).byFolded.has(foldName(written));
}

/**
 * True where a name or a synonym is misspelt, or is among the words written: “bech press”, “paused bench”. Words that
 * are only part of a name, “low bar”, may be anything.
 */
export function isNearlyNamed(exercises: readonly NamedExercise[], written: string): boolean {
  return isMisspelt(exercises, written) || findNarrower(namesOf(exercises).all, nameWords(written), '').length > 0;
}

/** True where it is a name or a synonym of which words are misspelt; a short word has to stand as it is: “chest up” is no chest dip. */
export function isMisspelt(exercises: readonly NamedExercise[], written: string): boolean {
  const words = nameWords(written);
  return (
    words.length > 0 &&
    namesOf(exercises).all.some(
      (name) => name.words.length === words.length && name.words.every((word, i) => isSameWord(word, words[i])),
    )
  );
}

function isSameWord(a: string, b: string): boolean {
  const isSwapped = a.length >= SWAPPED_LETTERS && [...a].sort().join('') === [...b].sort().join('');
  return a === b || isSwapped || Number.isFinite(lettersApart(a, b));
}

/** Those that differ in few letters, the fewest first. */
function findMisspelt(names: readonly ExerciseName[], wanted: string): readonly ExerciseName[] {
  if (wanted.length > LONGEST_NAME) return [];
  return names
    .map((name) => ({ name, letters: lettersApart(wanted, name.folded) }))
    .filter(({ letters }) => Number.isFinite(letters))
    .sort((a, b) => a.letters - b.letters)
    .map(({ name }) => name);
}

/** Infinity where they are too many for a misspelling. */
function lettersApart(wanted: string, name: string): number {
  const shorter = Math.min(wanted.length, name.length);
  const allowed = MISSPELLED_LETTERS.find(({ from }) => shorter >= from)?.letters ?? 0;
  if (Math.abs(wanted.length - name.length) > allowed) return Number.POSITIVE_INFINITY;
  const letters = distance(wanted, name);
  return letters <= allowed ? letters : Number.POSITIVE_INFINITY;
}

/** Those that have all the words written, names before synonyms and the shortest first; then those that are written with more, the longest first. */
function findByWords(names: readonly ExerciseName[], written: string, wanted: string): readonly ExerciseName[] {
  const words = nameWords(written);
  const wider = names
    .filter((name) => holds(name.words, words))
    .sort((a, b) => Number(a.isSynonym) - Number(b.isSynonym) || a.words.length - b.words.length);
  return [...wider, ...findNarrower(names, words, wanted)];
}

/** @param wanted the words folded into one, in which a name of several words may stand; empty where it is not looked for */
function findNarrower(
  names: readonly ExerciseName[],
  words: readonly string[],
  wanted: string,
): readonly ExerciseName[] {
  return names
    .filter((name) => holds(words, name.words) || (name.words.length > 1 && wanted.includes(name.folded)))
    .sort((a, b) => b.words.length - a.words.length);
}

function holds(all: readonly string[], some: readonly string[]): boolean {
  return some.every((word) => all.includes(word));
}
