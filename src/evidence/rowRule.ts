/** What a rule for one row is, and what it finds. */
import type { Arm, ArmColumn } from './schema.ts';

/** A broken rule: the column to look at, and what to do there. */
export interface Broken {
  readonly column: ArmColumn;
  readonly expected: string;
  readonly remedy: string;
}

export type RowRule = (arm: Arm) => Broken | null;

/** Two columns of which the second may not be empty where the first is not. */
export function together(given: ArmColumn, needed: ArmColumn): RowRule {
  return (arm) =>
    arm[given] !== null && arm[needed] === null
      ? { column: needed, expected: `a value beside \`${given}\``, remedy: 'The two come together.' }
      : null;
}
