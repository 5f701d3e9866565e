/**
 * The list of exercises (`data/exercises.csv`) and what rules of safety need to know of each. The
 * entries are common practice without a source; a programme may name others and say the same of them.
 */
import { type Column, oneOf, text, yesOrNo } from './column.ts';
import { RELATIONS, type Relation } from './repetitions.ts';
import { JOINTS } from './vocabulary.ts';

/** What is asked of an exercise, in the list and of one that a programme brings along. */
export interface Exercise {
  readonly name: string;
  /** Muscles it trains for growth, at least one. */
  readonly muscles: readonly string[];
  /** The load can trap the lifter: a bar over chest, neck or back, a sled above the body. */
  readonly canPin: boolean;
  /** A repetition can be broken off anywhere in the range without danger. */
  readonly stoppable: boolean;
  /** Shortened-range repetitions after failure are feasible and safe. */
  readonly partials: boolean;
  /** Published relation of repetitions to load: of this very exercise or its kind; null where none is at hand. */
  readonly relation: Relation | null;
  /** True where the list does not have it, and it was described by whoever trains it. */
  readonly isUnlisted?: boolean;
}

/** An exercise of the list. */
export interface ListedExercise extends Exercise {
  /** Other usual names and abbreviations, as written. */
  readonly synonyms: readonly string[];
}

const group = 'exercise';

/** Columns of `exercises.csv`. */
export const EXERCISE_COLUMNS = {
  exercise: text({ group, required: true, example: 'leg press', description: 'Name of the exercise.' }),
  muscles: text({
    group,
    required: true,
    example: 'quadriceps; gluteus maximus',
    description: 'Muscles it trains for growth, separated by semicolons.',
  }),
  joints: oneOf(JOINTS, {
    group,
    required: true,
    example: 'multi',
    description: 'Whether one joint moves or several.',
  }),
  can_pin: yesOrNo({
    group,
    required: true,
    example: 'yes',
    description: 'Whether the load can trap the lifter: a bar over chest, neck or back, a sled above the body.',
  }),
  stoppable: yesOrNo({
    group,
    required: true,
    example: 'no',
    description: 'Whether a repetition can be broken off anywhere in the range without danger.',
  }),
  partials: yesOrNo({
    group,
    required: true,
    example: 'yes',
    description: 'Whether shortened-range repetitions after failure are feasible and safe.',
  }),
  repetitions_as: oneOf(['general', ...RELATIONS] as const, {
    group,
    required: true,
    example: 'leg press',
    description: 'Which published relation of repetitions to load is its own; general where none is at hand.',
  }),
  note: text({ group, required: false, example: 'sled over the body', description: 'What the entries rest on.' }),
  synonyms: text({
    group,
    required: false,
    example: 'sled leg press; 45 degree leg press',
    description:
      'Other usual names and abbreviations, separated by semicolons; other cases, plurals and hyphens are known without.',
  }),
} as const satisfies Record<string, Column<unknown>>;

/** “sled leg press; 45 degree leg press” → its names, as written. */
export function splitNames(written: string): readonly string[] {
  return written
    .split(';')
    .map((name) => name.trim())
    .filter(Boolean);
}

/** The exercise of a name, whatever its case and spacing; undefined where the list has none. */
export function findExercise(exercises: readonly Exercise[], name: string): Exercise | undefined {
  return exercises.find((exercise) => plainName(exercise.name) === plainName(name));
}

/** “Quadriceps; gluteus maximus” → its muscles in small letters, each once; also at slashes and plus signs. */
export function splitMuscles(written: string): readonly string[] {
  return [...new Set(written.split(/[;/+]/u).map((muscle) => muscle.trim().toLowerCase()))].filter(Boolean);
}

/** A name as it is compared: in small letters, with single spaces. */
export function plainName(name: string): string {
  return name.trim().toLowerCase().replace(/\s+/gu, ' ');
}
