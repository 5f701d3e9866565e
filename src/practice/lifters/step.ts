/**
 * A load that a gym's plates can make, from the one that is meant. It is rounded down, always: rounded up at
 * few repetitions in reserve, a set would leave fewer than was asked for.
 */

import type { Relation } from '../../evidence/repetitions.ts';
import { COMMON_PRACTICE_TAG } from '../commonPractice.ts';
import { possibleAt } from '../possible.ts';
import { type ReadWeight, readWeight, type Weight, type WeightUnit } from './weight.ts';

/** The step where none is given: the smallest usual plates, 1.25 kg or 2.5 lb, one on each side of a bar (common practice, no source). */
export const USUAL_STEPS: Readonly<Record<WeightUnit, number>> = { kg: 2.5, lb: 5 };
/** A step above this makes no loads that could be told apart. */
const WIDEST_STEP: Readonly<Record<WeightUnit, number>> = { kg: 50, lb: 100 };
/** Of the load in steps: a load that is a step but for the rounding of its own sum is that step. */
const SLACK = 1e-9;
/** Repetitions possible that rounding may add before it is said: half of one makes another whole number. */
const SAID_REPETITIONS = 0.5;
/** Points of % of 1RM that rounding may take off before it is said where no repetitions are published for them (common practice, no source). */
const SAID_POINTS = 2.5;

export const ROUNDING_RULE =
  'Loads are rounded down to the step, never up: a load above the one that is meant would leave fewer repetitions in reserve.';
export const STEP_RULE = `Without a step of its own ${USUAL_STEPS.kg} kg or ${USUAL_STEPS.lb} lb are taken, the smallest usual plates on both sides of a bar (${COMMON_PRACTICE_TAG}). Loads are whole multiples of the step.`;

/** @param unit the lifter's: a step in another would fit no plate of theirs */
export function readStep(written: string, unit: WeightUnit): ReadWeight {
  const most: Weight = { value: WIDEST_STEP[unit], unit };
  const found = readWeight(written, unit, most);
  const expected = `the smallest step of the load in ${unit}, above 0 and up to ${WIDEST_STEP[unit]}`;
  if (found.kind === 'refused') return { kind: 'refused', expected, remedy: found.remedy };
  if (found.kind === 'read' && found.weight.unit !== unit) {
    return { kind: 'refused', expected, remedy: `The lifter’s unit is ${unit}.` };
  }
  return found;
}

/** The highest multiple of a step that is not above the load, in its unit; 0 where not even one is. */
export function roundDown(load: number, step: number): number {
  const steps = Math.floor(load / step + SLACK * Math.max(1, load / step));
  // A step has two decimals at most: further digits are those of the product.
  return Number((steps * step).toFixed(2));
}

/** What rounding does to a set. */
export interface RoundingEffect {
  /** Points of % of 1RM that are taken off, 0 or more. */
  readonly points: number;
  /** Repetitions more that are possible by the published mean; null where none are published for both loads. */
  readonly repetitions: number | null;
}

/**
 * @param planned % of 1RM that is meant
 * @param actual % of 1RM that the plates make, at most that
 */
export function effectOfRounding(planned: number, actual: number, relation: Relation | null): RoundingEffect {
  const [before, after] = [planned, actual].map((load) => possibleAt(load, relation));
  // Of two loads read from two exercises the difference would be that of the exercises.
  const isOne = before !== null && after !== null && before.relation === after.relation;
  return {
    points: Math.max(0, planned - actual),
    repetitions: isOne ? Math.max(0, after.mean - before.mean) : null,
  };
}

/** True where a lifter would do, or have left, another whole number. */
export function isSaid({ points, repetitions }: RoundingEffect): boolean {
  return repetitions === null ? points >= SAID_POINTS : repetitions >= SAID_REPETITIONS;
}

/** “Rounding takes 3.1 points off the per cent: about 1.2 repetitions more are left in reserve.” */
export function stateEffect(effect: RoundingEffect): string {
  const points = `Rounded down by ${effect.points.toFixed(1)} points of % of 1RM`;
  return effect.repetitions === null
    ? `${points}: how many repetitions more that leaves is not published for this load.`
    : `${points}: about ${effect.repetitions.toFixed(1)} repetitions more are left, on average.`;
}
