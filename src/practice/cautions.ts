/** Cautions that stand beside every piece of advice. Common practice; licensed practice comes first. */

import type { Exercise } from '../evidence/exercises.ts';
import { groupRows } from '../evidence/groupRows.ts';

/** What decides which cautions bind: the exercise, and who is there. */
export interface Guard {
  readonly exercise: Guarded;
  readonly company: Company;
}

/** What a rule of safety reads of an exercise. */
export type Guarded = Pick<Exercise, 'canPin' | 'stoppable' | 'relation' | 'isUnlisted'>;

export const COMPANIES = ['alone', 'spotter', 'safety arms'] as const;
/** Who or what can take the load: nobody, a person, or arms of the rack. */
export type Company = (typeof COMPANIES)[number];

/** Least reserve advised where the lifter can be pinned and nothing would take the load. */
export const LEAST_RESERVE_WHEN_PINNED = 1;

const COLLARS_OFF = 'When benching alone without either, leave the collars off so that the plates can slide.';

/** Cautions that hold for every set. */
export const ALWAYS: readonly string[] = [
  'Stop for pain, dizziness or chest symptoms.',
  'People who are pregnant, recovering from injury or illness, under medical care or under age train under qualified supervision.',
  'Local rules and licensed professionals come first; this is not medical advice.',
];

/** True where nobody and nothing would take the load off a pinned lifter. */
export function isUnguarded({ exercise, company }: Guard): boolean {
  return exercise.canPin && company === 'alone';
}

/** Cautions for a situation, the ones that bind it most first. */
export function cautionsFor(guard: Guard): readonly string[] {
  return [...guardCautions(guard), ...ALWAYS];
}

/** The cautions that come from the exercise and who is there. */
export function guardCautions(guard: Guard): readonly string[] {
  const { exercise, company } = guard;
  if (isUnguarded(guard)) {
    return [
      'Set safety arms or have a spotter; without either, never take a set to failure under a load that can pin you.',
      ...collarCautions(exercise),
    ];
  }
  if (exercise.canPin) {
    return [
      company === 'spotter'
        ? 'Agree with the spotter before the set when to take the bar.'
        : 'Set the safety arms, or the catches of the machine, just below the lowest point of the lift, and test them unloaded.',
    ];
  }
  if (!exercise.stoppable) {
    return ['A repetition of this exercise cannot be broken off safely anywhere: end the set before form goes.'];
  }
  return [];
}

/** Plates that slide off free the chest; under a squat they would tip the bar. So only a bench press is told, and what may be one. */
function collarCautions({ relation, isUnlisted = false }: Guarded): readonly string[] {
  if (relation === 'bench press') return [COLLARS_OFF];
  return isUnlisted
    ? [
        'Where the bar is over the chest and you are alone without either, leave the collars off so that the plates can slide.',
      ]
    : [];
}

/** Everything a page that names targets for no one exercise must say. */
export const GENERAL_CAUTIONS: readonly string[] = [
  'An exercise that can pin the lifter is never taken to reserve 0 without a spotter or safety arms: set the arms, or have a spotter.',
  COLLARS_OFF,
  ...ALWAYS,
];

export interface GroupedCaution {
  readonly caution: string;
  /** Exercises that it is of, each once. */
  readonly exercises: readonly string[];
}

/** Cautions of several exercises, each once; those that hold for every set (`ALWAYS`) are not among them. */
export function groupCautions(
  of: readonly { readonly exercise: string; readonly cautions: readonly string[] }[],
): readonly GroupedCaution[] {
  const all = of.flatMap(({ exercise, cautions }) => cautions.map((caution) => ({ caution, exercise })));
  return [...groupRows(all, ({ caution }) => caution)].map(([caution, rows]) => ({
    caution,
    exercises: [...new Set(rows.map(({ exercise }) => exercise))],
  }));
}

/** “bench press, squat: Agree with the spotter …” */
export function tellCaution({ caution, exercises }: GroupedCaution): string {
  return `${exercises.join(', ')}: ${caution}`;
}
