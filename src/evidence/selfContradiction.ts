/**
 * Statistics of one row that contradict one another: t against p, SD against standard error, an interval against its
 * mean and width, a correlation against three SDs, an SD against its mean.
 *
 * The table has room for several of them, so that slips show. Nothing is said that the rounding of the printed numbers
 * explains. A cell that contradicted another proves nothing any more and is asked no further, so that one slip is told
 * once.
 */
import { checkCorrelation, checkImpliedCorrelation } from './correlationChecks.ts';
import type { RangeOf, Statistic } from './impliedStatistics.ts';
import { checkCentre, checkMeanInside, checkWidth } from './intervalChecks.ts';
import { type Range, rangeOfPrinted } from './printed.ts';
import type { Arm, ArmColumn } from './schema.ts';
import type { SelfCheck, SelfContradiction } from './selfCheck.ts';
import { checkChangeOfMeans, checkErrorAgainstSd, checkSmallSds } from './spreadChecks.ts';
import { checkPAgainstError, checkSignOfT, checkTAgainstError, checkTAgainstP } from './testChecks.ts';
import { writeCell } from './writeTable.ts';

/** The text of a cell as it stands in the file. */
export type PrintedText = (column: ArmColumn) => string;

/** In this order, since the later ones rest on what the earlier ones found to agree. */
const CHECKS: readonly SelfCheck[] = [
  checkMeanInside,
  ...checkSmallSds,
  checkChangeOfMeans,
  checkErrorAgainstSd,
  checkCentre,
  checkSignOfT,
  checkTAgainstP,
  checkTAgainstError,
  checkPAgainstError,
  checkWidth,
  checkImpliedCorrelation,
  checkCorrelation,
];

/** @param printed where it is not given, numbers count as printed in the fewest digits */
export function findSelfContradictions(
  arm: Arm,
  printed: PrintedText = (column) => writeCell(arm[column]),
): readonly SelfContradiction[] {
  // A null stands for a cell that is empty or doubted.
  const ranges = new Map<Statistic, Range | null>();
  const rangeOf: RangeOf = (column) => {
    const known = ranges.get(column);
    if (known !== undefined) return known;
    const value = arm[column];
    const range = value === null ? null : rangeOfPrinted(value, printed(column));
    ranges.set(column, range);
    return range;
  };
  return CHECKS.flatMap((check) => {
    const found = check(arm, rangeOf);
    if (!found) return [];
    for (const cell of found.doubted) ranges.set(cell, null);
    return [found];
  });
}
