/**
 * A load that a gym's plates can make, from the one that is meant. It is rounded down, always: rounded up at
 * few repetitions in reserve, a set would leave fewer than was asked for.
 */

import { groupRows } from '../../evidence/groupRows.ts';
import { REPETITIONS_SOURCE, type Relation } from '../../evidence/repetitions.ts';
import { listFirst } from '../../numerics/countOf.ts';
import { COMMON_PRACTICE_TAG } from '../commonPractice.ts';
import { type Possible, possibleAt, statePublishedFor } from '../possible.ts';
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
/** Exercises that a sentence carries; the rest are counted. */
const MOST_NAMED = 6;

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
  /** What is published for the load that is meant and for the one that the plates make; null as above. */
  readonly published: readonly [meant: Possible, made: Possible] | null;
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
    published: isOne ? [before, after] : null,
  };
}

/** True where a lifter would do, or have left, another whole number. */
export function isSaid({ points, repetitions }: Pick<RoundingEffect, 'points' | 'repetitions'>): boolean {
  return repetitions === null ? points >= SAID_POINTS : repetitions >= SAID_REPETITIONS;
}

/**
 * “Rounded down by 3.1 points of % of 1RM: about 1.3 repetitions more are left, on average.” Whose average that is, and
 * how far people are from it, is said once for all lines (`explainAverages`).
 */
export function stateEffect(effect: Pick<RoundingEffect, 'points' | 'repetitions'>): string {
  const points = `Rounded down by ${effect.points.toFixed(1)} points of % of 1RM`;
  return effect.repetitions === null
    ? `${points}: how many repetitions more that leaves is not published for this load.`
    : `${points}: about ${effect.repetitions.toFixed(1)} repetitions more are left, on average.`;
}

/**
 * What has to be known of the repetitions that `stateEffect` tells of some lines: whose averages they are, and how far
 * people are from them. null where none are told.
 */
export function explainAverages(
  rounded: readonly { readonly exercise: string; readonly effect: RoundingEffect }[],
): string | null {
  const told = rounded.flatMap(({ exercise, effect: { published } }) =>
    published ? [{ exercise, published, ...published[0] }] : [],
  );
  if (told.length === 0) return null;
  const whose = [...groupRows(told, ({ relation, standsIn }) => `${relation} ${standsIn}`).values()].map((group) => {
    const exercises = [...new Set(group.map(({ exercise }) => exercise))];
    return statePublishedFor(group[0], listFirst(exercises, MOST_NAMED));
  });
  return `The repetitions that rounding leaves are differences of averages, ${whose.join(', and ')} (${REPETITIONS_SOURCE}). ${stateSpread(told.flatMap(({ published }) => published))} One lifter may be left with more or fewer than is said.`;
}

/** “About two people in three are within 2.5 to 3.2 repetitions of such an average.” */
function stateSpread(published: readonly Possible[]): string {
  const spreads = published.flatMap(({ sd }) => (sd === null ? [] : [sd]));
  const some = spreads.length === published.length ? '' : ' For the heaviest loads that is not published.';
  if (spreads.length === 0) return 'How far people are from them is not published for these loads.';
  const ends = new Set([Math.min(...spreads), Math.max(...spreads)].map((sd) => sd.toFixed(1)));
  return `About two people in three are within ${[...ends].join(' to ')} repetitions of such an average.${some}`;
}
