/** What a check of a row against itself is, and what it finds. */
import { type CountedArm, hasPeople } from './countedArm.ts';
import type { RangeOf, Statistic } from './impliedStatistics.ts';
import type { Arm, ArmColumn } from './schema.ts';
import { writeCell } from './writeTable.ts';

/** What contradicts itself in a row. */
export interface SelfContradiction {
  /** The column to look at. */
  readonly column: Statistic;
  /** Cells that prove nothing any more, since one of them must be wrong. */
  readonly doubted: readonly Statistic[];
  readonly expected: string;
  readonly remedy: string;
  /** True where no paper can print it, so that the table is refused; else it is unusual. */
  readonly isImpossible: boolean;
}

/** Looks at one thing in a row. @param rangeOf what the printed numbers may stand for */
export type SelfCheck = (arm: Arm, rangeOf: RangeOf) => SelfContradiction | null;

/** A check that asks for the number of people, and finds nothing where that is not known. */
export function ofPeople(check: (arm: CountedArm, rangeOf: RangeOf) => SelfContradiction | null): SelfCheck {
  return (arm, rangeOf) => (hasPeople(arm) ? check(arm, rangeOf) : null);
}

/** “`change_sd` (2.4) and `n` (14)”. */
export function quoteCells(arm: Arm, columns: readonly ArmColumn[]): string {
  const quoted = columns.map((column) => `\`${column}\` (${writeCell(arm[column])})`);
  return quoted.length > 1 ? `${quoted.slice(0, -1).join(', ')} and ${quoted.at(-1)}` : quoted.join('');
}
