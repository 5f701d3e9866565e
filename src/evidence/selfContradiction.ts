/**
 * Statistics of one row that contradict one another: t against p, SD against standard error, an interval against its
 * mean and width, a correlation against three SDs, an SD against its mean.
 *
 * The table has room for several of them, so that slips show. Nothing is said that the rounding of the printed numbers
 * explains. A cell that contradicted another proves nothing any more and is asked no further, so that one slip is told
 * once.
 */
import type { RangeOf, Statistic } from './impliedStatistics.ts';
import { checkMeanInside, checkPercentInside } from './intervalChecks.ts';
import { type Range, rangeOfPrinted } from './printed.ts';
import type { Problem } from './problem.ts';
import type { Arm, ArmColumn } from './schema.ts';
import type { SelfCheck, SelfContradiction } from './selfCheck.ts';
import { checkChangeOfMeans, checkErrorsAgainstSds, checkSmallSds } from './spreadChecks.ts';
import { writeArmCell, writeCell } from './writeTable.ts';

/** The text of a cell as it stands in the file. */
export type PrintedText = (column: ArmColumn) => string;

/** Those that may refuse a table, and what they rest on. */
export const REFUSING_CHECKS: readonly SelfCheck[] = [
  checkMeanInside,
  checkPercentInside,
  ...checkSmallSds,
  checkChangeOfMeans,
  ...checkErrorsAgainstSds,
];

/**
 * @param checks all, or those that may refuse a table
 * @param printed where it is not given, numbers count as printed in the fewest digits
 */
export function findSelfContradictions(
  arm: Arm,
  checks: readonly SelfCheck[],
  printed: PrintedText = (column) => writeArmCell(arm, column),
): readonly SelfContradiction[] {
  // A null stands for a cell that is empty or doubted.
  const ranges = new Map<Statistic, Range | null>();
  const rangeOf: RangeOf = (column) => {
    const known = ranges.get(column);
    if (known !== undefined) return known;
    const value = arm[column];
    const range = arm.ranges?.[column] ?? (value === null ? null : rangeOfPrinted(value, printed(column)));
    ranges.set(column, range);
    return range;
  };
  return checks.flatMap((check) => {
    const found = check(arm, rangeOf);
    if (!found) return [];
    for (const cell of found.doubted) ranges.set(cell, null);
    return [found];
  });
}

/** Warnings of one row whose numbers contradict one another, where that does not refuse it. */
export function warnOfContradictions(arm: Arm, file: string, contradictions: readonly SelfContradiction[]): Problem[] {
  return contradictions
    .filter(({ isImpossible }) => !isImpossible)
    .map(({ column, expected, remedy }) => ({
      kind: 'unusual',
      file,
      line: arm.line,
      column,
      value: writeCell(arm[column]),
      expected,
      remedy,
    }));
}
