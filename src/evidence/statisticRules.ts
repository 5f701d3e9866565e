/**
 * Rules for the statistics of a row. It needs one printed number of a change; its spread may be missing, and the row is
 * then listed as left out of a fit, with the reason.
 */
import { type RowRule, together } from './rowRule.ts';
import type { Arm } from './schema.ts';

const TIMES = ['baseline', 'followup', 'change'] as const;
const CHANGES = ['change', 'percent_change'] as const;

export const STATISTIC_RULES: readonly RowRule[] = [
  ...CHANGES.flatMap((change) => [
    together(`${change}_ci_low`, `${change}_ci_high`),
    together(`${change}_ci_high`, `${change}_ci_low`),
    checkLimits(`${change}_ci_low`, `${change}_ci_high`),
  ]),
  ...TIMES.flatMap((time) => [together(`${time}_q1`, `${time}_q3`), together(`${time}_q3`, `${time}_q1`)]),
  ...TIMES.map(checkQuartiles),
  (arm) => (arm.effect_metric === 'log-ratio' ? together('effect', 'effect_variance')(arm) : null),
  together('effect', 'effect_metric'),
  together('effect_variance', 'effect'),
  together('effect_metric', 'effect'),
  ...(['effect_standardiser', 'effect_corrected'] as const).map(
    (column): RowRule =>
      (arm) =>
        arm[column] !== null && arm.effect_metric !== 'standardised'
          ? {
              column,
              expected: 'an empty cell, since the row has no standardised effect (`effect_metric`)',
              remedy: 'Clear the cell, or enter the standardised effect and its metric.',
            }
          : null,
  ),
  (arm) =>
    printsChange(arm)
      ? null
      : {
          column: arm.baseline_mean === null && arm.baseline_median === null ? 'baseline_mean' : 'followup_mean',
          expected:
            'a change: a mean before (`baseline_mean`) with a mean after (`followup_mean`), a mean change (`change_mean`), a change in per cent (`percent_change`), medians in their place, or a ready-made effect (`effect`)',
          remedy: 'Enter what the paper reports; a spread may be missing, a change may not.',
        },
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

function checkLimits(
  low: 'change_ci_low' | 'percent_change_ci_low',
  high: 'change_ci_high' | 'percent_change_ci_high',
): RowRule {
  return ({ [low]: from, [high]: to }) =>
    from !== null && to !== null && from >= to
      ? {
          column: high,
          expected: `a limit above \`${low}\` (${from})`,
          remedy:
            from === to
              ? 'Enter the limits with more digits, or clear both: an interval without width says nothing of the spread.'
              : 'Exchange the limits.',
        }
      : null;
}

function checkQuartiles(time: (typeof TIMES)[number]): RowRule {
  const [first, middle, third] = [`${time}_q1`, `${time}_median`, `${time}_q3`] as const;
  return ({ [first]: q1, [middle]: median, [third]: q3 }) => {
    if (q1 === null || q3 === null) return null;
    if (q1 >= q3) {
      return {
        column: third,
        expected: `a quartile above the first (\`${first}\`, ${q1})`,
        remedy: 'Exchange the two, or enter them with more digits.',
      };
    }
    return median !== null && (median < q1 || median > q3)
      ? {
          column: middle,
          expected: `a median between the quartiles, ${q1} and ${q3}`,
          remedy: 'Correct the median or the quartiles.',
        }
      : null;
  };
}

/** True where a number in the row says how much its people changed. */
function printsChange(arm: Arm): boolean {
  const has = (time: (typeof TIMES)[number]) => arm[`${time}_mean`] !== null || arm[`${time}_median`] !== null;
  return (has('baseline') && has('followup')) || has('change') || arm.percent_change !== null || arm.effect !== null;
}
