/** What a lifter can lift once in an exercise, and the step of its load: read from what was typed. */
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import { type Lifter, oneRmOf } from './lifter.ts';
import { readStep, USUAL_STEPS } from './step.ts';
import { type ReadWeight, readWeight, type Weight, weightIn, writeWeight } from './weight.ts';

/** Far above what anybody is tested in. */
export const HEAVIEST: Weight = { value: 1000, unit: 'kg' };
/** From here on it is asked whether pounds were meant (common practice, no source). */
const ASKED_FROM: Weight = { value: 300, unit: 'kg' };

export type FoundOneRm =
  | { readonly kind: 'none' }
  /** @property weight as written, in its own unit */
  | { readonly kind: 'read'; readonly weight: Weight }
  | Extract<ReadWeight, { readonly kind: 'refused' }>;

export function findOneRm(lifter: Lifter, exercises: readonly NamedExercise[], exercise: string): FoundOneRm {
  const found = readWeight(oneRmOf(lifter, exercises, exercise)?.weight ?? '', lifter.unit, HEAVIEST);
  return found.kind === 'empty' ? { kind: 'none' } : found;
}

/** “Is 315 kg right, or was it lb?”; null where nothing is asked. */
export function askUnit(weight: Weight): string | null {
  if (weight.unit !== 'kg' || weight.value < ASKED_FROM.value) return null;
  return `Is ${writeWeight(weight)} right, or are they pounds? Then write “${Number(weight.value.toFixed(2))} lb”.`;
}

/** The exercise’s own step, else the lifter’s, else the usual one; one that cannot be read is not taken. */
export function stepOf(lifter: Lifter, exercises: readonly NamedExercise[], exercise: string): Weight {
  const typed = [oneRmOf(lifter, exercises, exercise)?.step ?? '', lifter.step];
  for (const one of typed) {
    const found = readStep(one, lifter.unit);
    if (found.kind === 'read') return found.weight;
  }
  return { value: USUAL_STEPS[lifter.unit], unit: lifter.unit };
}

/** In the lifter’s unit. */
export function inUnitOf({ unit }: Lifter, weight: Weight): Weight {
  return { value: weightIn(weight, unit), unit };
}
