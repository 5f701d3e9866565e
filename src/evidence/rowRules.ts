/** What the cells of one row must be together. */
import { DESIGN_RULES } from './designRules.ts';
import type { Problem } from './problem.ts';
import type { Broken } from './rowRule.ts';
import type { Arm } from './schema.ts';
import type { SelfContradiction } from './selfCheck.ts';
import { findSelfContradictions, REFUSING_CHECKS } from './selfContradiction.ts';
import { STATISTIC_RULES } from './statisticRules.ts';
import { writeCell } from './writeTable.ts';

const RULES = [...DESIGN_RULES, ...STATISTIC_RULES];

/**
 * All rules that a row breaks, as problems.
 *
 * @param contradictions of the row with itself; those that no paper can print are problems
 */
export function checkRow(
  arm: Arm,
  file: string,
  contradictions: readonly SelfContradiction[] = findSelfContradictions(arm, REFUSING_CHECKS),
): Problem[] {
  const broken: Broken[] = [
    ...RULES.map((rule) => rule(arm)).filter((found) => found !== null),
    ...contradictions.filter(({ isImpossible }) => isImpossible),
  ];
  return broken.map(({ column, expected, remedy }) => ({
    kind: 'contradiction',
    file,
    line: arm.line,
    column,
    value: writeCell(arm[column]),
    expected,
    remedy,
  }));
}
