/** Every name of the exercises, folded once for a list: it is looked through at every key that is typed. */
import type { Exercise, ListedExercise } from './exercises.ts';
import { foldName, nameWords } from './foldName.ts';

/** Of the list with its synonyms, or of the reader's own. */
export type NamedExercise = Exercise | ListedExercise;

export interface ExerciseName {
  readonly exercise: NamedExercise;
  readonly written: string;
  readonly isSynonym: boolean;
  readonly folded: string;
  readonly words: readonly string[];
}

interface ExerciseNames {
  /** In the order of the exercises, each name before its synonyms. */
  readonly all: readonly ExerciseName[];
  /** By folded name; a name goes before all synonyms, and of two alike the first. */
  readonly byFolded: ReadonlyMap<string, ExerciseName>;
}

const known = new WeakMap<readonly NamedExercise[], ExerciseNames>();

export function namesOf(exercises: readonly NamedExercise[]): ExerciseNames {
  const found = known.get(exercises);
  if (found) return found;
  const all = exercises.flatMap((exercise) => {
    const synonyms = 'synonyms' in exercise ? exercise.synonyms : [];
    return [exercise.name, ...synonyms].map(
      (written, i): ExerciseName => ({
        exercise,
        written,
        isSynonym: i > 0,
        folded: foldName(written),
        words: nameWords(written),
      }),
    );
  });
  const byFolded = new Map<string, ExerciseName>();
  for (const isSynonym of [false, true]) {
    for (const one of all) {
      if (one.isSynonym === isSynonym && !byFolded.has(one.folded)) byFolded.set(one.folded, one);
    }
  }
  const made = { all, byFolded };
  known.set(exercises, made);
  return made;
}
