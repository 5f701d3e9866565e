/**
 * Lifters as they are edited: a name, the unit of their loads, the step of their plates, and what they can lift
 * once. Cells stand as they were typed, mistakes among them; names are their own and each lifter's alone.
 * Each step gives another list and leaves the one before as it was.
 */
import { whyNotPlain } from '../../evidence/column.ts';
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import { findNamed } from '../../evidence/findNamed.ts';
import { foldName } from '../../evidence/foldName.ts';
import type { WeightUnit } from './weight.ts';

/** Texts as typed; empty where nothing was. */
export interface OneRm {
  readonly exercise: string;
  readonly weight: string;
  /** Of this exercise’s load; empty takes the lifter’s. */
  readonly step: string;
}

export interface Lifter {
  /** Of this lifter for as long as there is one. */
  readonly id: number;
  readonly name: string;
  /** What loads are told in, and a 1RM without a unit is in. */
  readonly unit: WeightUnit;
  /** As typed; empty takes the usual one. */
  readonly step: string;
  readonly maxima: readonly OneRm[];
}

export interface Lifters {
  readonly all: readonly Lifter[];
  /** Above all that were given. */
  readonly nextId: number;
}

export const NO_LIFTERS: Lifters = { all: [], nextId: 1 };

/** Several teams; more would no longer be looked over on a page. */
export const MOST_LIFTERS = 200;
/** More than any list of exercises that somebody is tested in. */
export const MOST_MAXIMA = 200;
/** Characters of a cell; names may have as many as any text of a table. */
export const LONGEST_CELL = 500;

/**
 * Marks of direction, which a name that was copied brings along and nobody sees; names are set apart from what is
 * beside them without.
 */
const DIRECTION_MARKS = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/gu;

/** A text as one cell holds it. */
export function cleanText(text: string): string {
  return text.replace(DIRECTION_MARKS, '').replace(/[\r\n\u2028\u2029]+/gu, ' ');
}

/** Names that are told apart by case, width or spaces alone would be one on paper. */
export function sameName(a: string, b: string): boolean {
  return foldPerson(a) === foldPerson(b);
}

export function foldPerson(name: string): string {
  return name.normalize('NFKC').trim().toLowerCase().replace(/\s+/gu, ' ');
}

export interface Refusal {
  readonly value: string;
  readonly expected: string;
  readonly remedy: string | null;
}

/** Why a lifter cannot have a name; null where one can. @param except id of the lifter who is renamed */
export function refuseName({ all }: Lifters, written: string, except: number | null = null): Refusal | null {
  const value = cleanText(written).trim();
  if (value === '')
    return { value, expected: 'a name of the lifter', remedy: 'Any word will do, “Lifter A” for instance.' };
  const remedy = whyNotPlain(value);
  if (remedy !== null) return { value, expected: 'a name in plain text', remedy };
  const place = all.findIndex(({ id, name }) => id !== except && sameName(name, value));
  if (place < 0) return null;
  return {
    value,
    expected: 'a name that no other lifter has',
    remedy: `Lifter ${place + 1} of the list has it; two sheets with one name would be mixed up.`,
  };
}

/** The exercise that a name means, the same for its synonyms; empty where a name has no letter or digit. */
export function exerciseKey(exercises: readonly NamedExercise[], written: string): string {
  return foldName(nameExercise(exercises, written));
}

/** Its name in the list; as written where the list does not have it. */
export function nameExercise(exercises: readonly NamedExercise[], written: string): string {
  const found = findNamed(exercises, written);
  return found.kind === 'named' || found.kind === 'synonym' ? found.exercise.name : written.trim();
}

/** What a lifter can lift once in an exercise, as typed; undefined where nothing is given. */
export function oneRmOf({ maxima }: Lifter, exercises: readonly NamedExercise[], exercise: string): OneRm | undefined {
  const key = exerciseKey(exercises, exercise);
  return maxima.find((one) => exerciseKey(exercises, one.exercise) === key);
}
