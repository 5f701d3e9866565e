/** Rules for what a row says of its people, its training and its reserve. */
import { writeStatistic } from './printed.ts';
import { type RowRule, together } from './rowRule.ts';
import { wentBeyondFailure } from './vocabulary.ts';

/** A load up to this is a share of 1RM, all of it being 1. */
const MOST_AS_SHARE = 1;
/** Means over sets and people may be off by that many repetitions (common practice, no source). */
const ROUNDED_REPETITIONS = 1;

export const DESIGN_RULES: readonly RowRule[] = [
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
    arm.reserve_sd !== null && arm.reserve_reps === null && arm.reps_possible === null
      ? {
          column: 'reserve_reps',
          expected: 'a mean beside `reserve_sd`',
          remedy: 'Enter the mean, or clear the spread.',
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
  (arm) => {
    const done = arm.ranges?.reps_per_set?.low ?? arm.reps_per_set;
    const possible = arm.ranges?.reps_possible?.high ?? arm.reps_possible;
    return done !== null && possible !== null && done > possible + ROUNDED_REPETITIONS
      ? {
          column: 'reps_possible',
          expected: `at least the repetitions done in a set (\`reps_per_set\`, ${done})`,
          remedy: 'Nobody does more repetitions than are possible with the load; correct one of the two.',
        }
      : null;
  },
  together('n_total_arms', 'n_total'),
  (arm) =>
    arm.n !== null && arm.n_total !== null && arm.n > arm.n_total
      ? {
          column: 'n',
          expected: `at most the people of all arms together (\`n_total\`, ${arm.n_total})`,
          remedy: 'Correct one of the two.',
        }
      : null,
];
