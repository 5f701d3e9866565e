/**
 * One order of rows for all that is computed, whatever order a table has them in: sums round the same,
 * simulated errors fall on the same rows, and a choice between equals is the same choice. It is a total
 * order on what rows say; rows that say the same are interchangeable.
 */
import type { Effect } from '../evidence/effects.ts';
import type { Arm } from '../evidence/schema.ts';

/** By study, cohort, arm, effect and variance, and where all of these are equal by the rest of the row. */
export function sortCanonically(effects: readonly Effect[]): readonly Effect[] {
  return [...effects].sort(
    (a, b) =>
      compare(a.arm.study, b.arm.study) ||
      compare(a.arm.cohort ?? '', b.arm.cohort ?? '') ||
      compare(a.arm.arm, b.arm.arm) ||
      a.y - b.y ||
      a.v - b.v ||
      compare(contentOf(a.arm), contentOf(b.arm)),
  );
}

/** Everything that a row says but where it stands. */
function contentOf({ line: _, ...content }: Arm): string {
  return JSON.stringify(Object.entries(content).sort(([a], [b]) => compare(a, b)));
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
