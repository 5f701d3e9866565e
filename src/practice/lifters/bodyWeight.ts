/**
 * Exercises that are done with the body's weight: what is lifted is that and what is added, so that no step of plates
 * fits it. They are those of data/exercises.csv whose note says so and names nothing else; a test holds the two to
 * each other.
 */
import { foldName } from '../../evidence/foldName.ts';

export const BODY_WEIGHT_EXERCISES = [
  'Nordic curl',
  'push-up',
  'dip',
  'pull-up',
  'chin-up',
  'inverted row',
  'hanging leg raise',
] as const;

const FOLDED = new Set(BODY_WEIGHT_EXERCISES.map(foldName));

/** @param name of the list */
export function isWithBodyWeight(name: string): boolean {
  return FOLDED.has(foldName(name));
}
