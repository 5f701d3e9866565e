/** The exercises that a pick-list shows for what was typed so far, likeliest first. */
import { type ExerciseName, type NamedExercise, namesOf } from './exerciseNames.ts';
import { findNamed } from './findNamed.ts';
import { foldName, nameWords } from './foldName.ts';

export interface SearchedExercise {
  readonly exercise: NamedExercise;
  /** Synonym by which it was found; null where its name answers. */
  readonly synonym: string | null;
}

/** Of two that match alike the one found by its own name goes first. */
const BY_SYNONYM = 0.5;

/**
 * @param query what was typed; all exercises in their order where it is empty
 * @returns those of which a name starts with it, then those of which a name has words that start with its
 *   words in any order; only where there are none, what it may be misspelt from; each once
 */
export function searchExercises(exercises: readonly NamedExercise[], query: string): readonly SearchedExercise[] {
  const wanted = foldName(query);
  if (wanted === '') return exercises.map(byName);
  const words = nameWords(query);
  const best = new Map<NamedExercise, { readonly name: ExerciseName; readonly rank: number }>();
  for (const name of namesOf(exercises).all) {
    const rank = rankName(name, wanted, words) + (name.isSynonym ? BY_SYNONYM : 0);
    if (rank < (best.get(name.exercise)?.rank ?? Number.POSITIVE_INFINITY)) best.set(name.exercise, { name, rank });
  }
  if (best.size === 0) {
    const found = findNamed(exercises, query);
    return found.kind === 'near' ? found.suggestions.map(byName) : [];
  }
  return [...best.values()]
    .sort((a, b) => a.rank - b.rank)
    .map(({ name: { exercise, isSynonym, written } }) => ({ exercise, synonym: isSynonym ? written : null }));
}

function byName(exercise: NamedExercise): SearchedExercise {
  return { exercise, synonym: null };
}

/** 0 the name itself, 1 starts with it, 2 has its words; Infinity where it does not match. */
function rankName({ folded, words: own }: ExerciseName, wanted: string, words: readonly string[]): number {
  if (folded === wanted) return 0;
  if (folded.startsWith(wanted)) return 1;
  return words.every((word) => own.some((one) => one.startsWith(word))) ? 2 : Number.POSITIVE_INFINITY;
}
