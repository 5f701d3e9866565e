/** Rows whose number of people is known, and the level of their intervals. */
import { USUAL_LEVEL } from './recover.ts';
import type { Arm } from './schema.ts';

export type CountedArm = Arm & { readonly n: number };

export function hasPeople(arm: Arm): arm is CountedArm {
  return arm.n !== null;
}

/** Level of the row's intervals, 0 to 1. */
export function levelOf({ ci_level: level }: Pick<Arm, 'ci_level'>): number {
  return level === null ? USUAL_LEVEL : level / 100;
}
