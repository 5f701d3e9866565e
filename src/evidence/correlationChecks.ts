/** The correlation of before with after, against the SDs before, after and of the change. */

import type { CountedArm } from './countedArm.ts';
import { type Implied, impliedSdOfChange, type RangeOf, rangeOfCorrelation } from './impliedStatistics.ts';
import { areApart, type Range, writeRange } from './printed.ts';
import { ofPeople, quoteCells, type SelfCheck } from './selfCheck.ts';

/** A correlation so far outside −1 to 1 that its digits tell nothing more. */
const FAR_OUTSIDE = 100;
/**
 * Two measurements of the same people correlate by more than this (common practice, no source): where rounding
 * allows that much, SDs that imply a correlation below 0 as they are printed are not doubted.
 */
const LEAST_USUAL = 0.2;
/** Of fewer people a correlation below 0 may be chance: of ten, 0.8 comes out below 0 in 2 of 1000 (Fisher's z). */
const LEAST_PEOPLE = 10;
const AT_MOST_ONE: Range = { low: -1, high: 1 };

/** The correlation that is given, and the one that three SDs imply; of two SDs, whether any third fits. */
export const checkCorrelation: SelfCheck = ofPeople((arm, rangeOf) => {
  const [r, change] = [rangeOf('correlation'), impliedSdOfChange(rangeOf, arm)];
  const [before, after] = [rangeOf('baseline_sd'), rangeOf('followup_sd')];
  if (!r || !change || (!before && !after)) return null;
  if (!before || !after) return checkOneSd(r, change, before ? 'baseline_sd' : 'followup_sd')(arm, rangeOf);
  const implied = rangeOfCorrelation(before, after, change.range);
  if (!areApart(r, implied)) return null;
  return {
    column: 'correlation',
    doubted: ['correlation', 'baseline_sd', 'followup_sd', ...change.from],
    expected: `a correlation of ${writeRange(implied)}, as ${quoteCells(arm, ['baseline_sd', 'followup_sd', ...change.from])} imply with ${quoteCells(arm, ['n'])}`,
    remedy: 'Check correlation and SDs; a standard error may stand in for one of the SDs.',
    isImpossible: false,
  };
});

/** With r and one SD s, changes differ by at least s √(1 − r²), whatever the other SD; for r below 0 by at least s. */
function checkOneSd(r: Range, change: Implied, column: 'baseline_sd' | 'followup_sd'): SelfCheck {
  return (arm, rangeOf) => {
    const sd = rangeOf(column);
    if (!sd) return null;
    const nearest = Math.min(1, Math.max(r.high, 0));
    const least = sd.low * Math.sqrt(1 - nearest ** 2);
    if (!areApart({ low: least, high: Number.POSITIVE_INFINITY }, change.range)) return null;
    return {
      column: 'correlation',
      doubted: ['correlation', column, ...change.from],
      expected: `a correlation with which changes of people whose SD is ${quoteCells(arm, [column])} can differ as little as ${quoteCells(arm, change.from)} says with ${quoteCells(arm, ['n'])}`,
      remedy: 'Check correlation and SDs; a standard error may stand in for the SD of the change.',
      isImpossible: false,
    };
  };
}

/** Three SDs imply a correlation from 0 to 1. */
export const checkImpliedCorrelation: SelfCheck = ofPeople((arm, rangeOf) => {
  const [before, after] = [rangeOf('baseline_sd'), rangeOf('followup_sd')];
  const change = impliedSdOfChange(rangeOf, arm);
  if (!before || !after || !change) return null;
  const possible = rangeOfCorrelation(before, after, change.range);
  const implied = impliedAsPrinted(arm, rangeOf);
  // A paper that states the same correlation has seen it.
  const given = rangeOf('correlation');
  const isUnexplained = arm.n >= LEAST_PEOPLE && (!given || areApart(given, possible));
  if (
    !(isUnexplained && implied < 0 && possible.high < LEAST_USUAL) &&
    !(implied > 1 && areApart(AT_MOST_ONE, possible))
  )
    return null;
  return {
    column: change.from[0],
    doubted: ['correlation', 'baseline_sd', 'followup_sd', ...change.from],
    expected: `SDs that imply a correlation from 0 to 1, not ${writeImplied(implied)}, beside ${quoteCells(arm, ['baseline_sd', 'followup_sd'])}`,
    remedy: 'Check the three SDs; a standard error may stand in for one of them.',
    isImpossible: false,
  };
});

/** Of the numbers as they are printed, without their rounding. */
function impliedAsPrinted(arm: CountedArm, rangeOf: RangeOf): number {
  const exactly: RangeOf = (column) => {
    const value = arm[column];
    return value !== null && rangeOf(column) ? { low: value, high: value } : null;
  };
  const [before, after, change] = [
    exactly('baseline_sd'),
    exactly('followup_sd'),
    impliedSdOfChange(exactly, arm)?.range,
  ];
  return before && after && change ? rangeOfCorrelation(before, after, change).low : Number.NaN;
}

function writeImplied(correlation: number): string {
  if (Math.abs(correlation) <= FAR_OUTSIDE) return correlation.toFixed(2);
  return correlation > 0 ? 'one far above 1' : 'one far below −1';
}
