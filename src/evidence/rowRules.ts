/** What the cells of one row must be together. */

import { writeStatistic } from './printed.ts';
import type { Problem } from './problem.ts';
import type { Arm, ArmColumn } from './schema.ts';
import type { SelfContradiction } from './selfCheck.ts';
import { findSelfContradictions, REFUSING_CHECKS } from './selfContradiction.ts';
import { wentBeyondFailure } from './vocabulary.ts';
import { writeCell } from './writeTable.ts';

/** A broken rule: the column to look at, and what to do there. */
interface Broken {
  readonly column: ArmColumn;
  readonly expected: string;
  readonly remedy: string;
}

/** A load up to this is a share of 1RM, all of it being 1. */
const MOST_AS_SHARE = 1;

type Rule = (arm: Arm) => Broken | null;

const RULES: readonly Rule[] = [
  (arm) =>
    arm.outcome === 'fatigue' && arm.hours_after === null
      ? {
          column: 'hours_after',
          expected: 'hours from the session to the measurement, since the outcome is fatigue',
          remedy: 'Enter the hours.',
        }
      : null,
  (arm) =>
    arm.outcome !== 'fatigue' && arm.hours_after !== null
      ? {
          column: 'hours_after',
          expected: `an empty cell, since the outcome is ${arm.outcome}`,
          remedy: 'Clear the cell, or set the outcome to fatigue.',
        }
      : null,
  (arm) =>
    arm.attempted_failure === true && arm.reserve_reps !== null && arm.reserve_reps > 0
      ? {
          column: 'reserve_reps',
          expected: '0, since `attempted_failure` is yes',
          remedy: 'A set to failure has nothing in reserve; correct one of the two.',
        }
      : null,
  (arm) =>
    wentBeyondFailure(arm) && arm.reserve_reps !== null && arm.reserve_reps > 0
      ? {
          column: 'reserve_reps',
          expected: `0, since \`beyond_failure\` is ${arm.beyond_failure}`,
          remedy: 'Work beyond failure starts at reserve 0; correct one of the two.',
        }
      : null,
  (arm) =>
    arm.reserve_sd !== null && arm.reserve_reps === null
      ? {
          column: 'reserve_reps',
          expected: 'a mean beside `reserve_sd`',
          remedy: 'Enter the mean, or clear the spread.',
        }
      : null,
  (arm) => together(arm, 'change_ci_low', 'change_ci_high'),
  (arm) => together(arm, 'change_ci_high', 'change_ci_low'),
  (arm) =>
    arm.change_ci_low !== null && arm.change_ci_high !== null && arm.change_ci_low >= arm.change_ci_high
      ? {
          column: 'change_ci_high',
          expected: `a limit above \`change_ci_low\` (${arm.change_ci_low})`,
          remedy:
            arm.change_ci_low === arm.change_ci_high
              ? 'Enter the limits with more digits, or clear both: an interval without width says nothing of the spread.'
              : 'Exchange the limits.',
        }
      : null,
  (arm) =>
    arm.load_pct_1rm !== null && arm.load_pct_1rm <= MOST_AS_SHARE
      ? {
          column: 'load_pct_1rm',
          expected: 'per cent of 1RM, 75 and not the share 0.75; nobody trains at 1 % or less',
          remedy: `Multiply shares by 100: ${writeStatistic(100 * arm.load_pct_1rm)}. Leave the cell empty where the training had no load.`,
        }
      : null,
  (arm) => together(arm, 'effect', 'effect_variance'),
  (arm) => together(arm, 'effect', 'effect_metric'),
  (arm) => together(arm, 'effect_variance', 'effect'),
  (arm) => together(arm, 'effect_metric', 'effect'),
  (arm) =>
    arm.effect === null && (arm.baseline_mean === null || (arm.followup_mean === null && arm.change_mean === null))
      ? {
          column: arm.baseline_mean === null ? 'baseline_mean' : 'followup_mean',
          expected:
            'a mean before (`baseline_mean`) with a mean after (`followup_mean`) or a mean change (`change_mean`), or a ready-made effect (`effect`) with its variance and metric',
          remedy: 'Enter what the paper reports.',
        }
      : null,
  (arm) =>
    arm.effect === null && arm.baseline_sd === null && !reportsSpreadOfChange(arm)
      ? {
          column: 'baseline_sd',
          expected:
            'a standard deviation before (`baseline_sd`), or the spread of the change (`change_sd`, `change_se`, an interval, `change_t` or `change_p`)',
          remedy: 'Enter what the paper reports; without it the row has no variance.',
        }
      : null,
  (arm) =>
    arm.baseline_mean !== null &&
    arm.followup_mean === null &&
    arm.change_mean !== null &&
    arm.baseline_mean + arm.change_mean <= 0
      ? {
          column: 'change_mean',
          expected: `a change above −${arm.baseline_mean}, so that the mean after (\`baseline_mean\` and the change) is above 0`,
          remedy: 'Correct the change or the mean before.',
        }
      : null,
];

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

/** True where the paper says how much the change varied between people. */
function reportsSpreadOfChange(arm: Arm): boolean {
  return (
    arm.change_sd !== null ||
    arm.change_se !== null ||
    arm.change_ci_low !== null ||
    arm.change_t !== null ||
    arm.change_p !== null
  );
}

/** Two columns of which the second may not be empty where the first is not. */
function together(arm: Arm, given: ArmColumn, needed: ArmColumn): Broken | null {
  return arm[given] !== null && arm[needed] === null
    ? { column: needed, expected: `a value beside \`${given}\``, remedy: 'The two come together.' }
    : null;
}
