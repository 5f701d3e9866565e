/** The interval of the mean change, and of that in per cent: round the change, and as wide as SD and n make it. */
import { levelOf } from './countedArm.ts';
import { dfOf, errorOfInterval, impliedChange, printedError, type RangeOf } from './impliedStatistics.ts';
import { areApart, type Range, times, writeRange, writeStatistic } from './printed.ts';
import { standardErrorFromInterval } from './recover.ts';
import { ofPeople, quoteCells, type SelfCheck } from './selfCheck.ts';

const LIMITS = ['change_ci_low', 'change_ci_high'] as const;

/** The change lies in its interval. Printed, it must; from the means of other people than the interval's, it may not. */
export const checkMeanInside: SelfCheck = (arm, rangeOf) => {
  const [interval, change] = [readInterval(rangeOf), impliedChange(rangeOf)];
  if (!interval || !change || !areApart(interval.whole, change.range)) return null;
  const isPrinted = arm.change_mean !== null;
  return isPrinted
    ? {
        column: 'change_mean',
        doubted: LIMITS,
        expected: `a mean inside its interval, ${arm.change_ci_low} to ${arm.change_ci_high}`,
        remedy: 'Correct the mean or the limits.',
        isImpossible: true,
      }
    : {
        column: 'change_ci_low',
        doubted: LIMITS,
        expected: `an interval that holds the change of ${writeRange(change.range)}, from ${quoteCells(arm, change.from)}, up to ${quoteCells(arm, ['change_ci_high'])}`,
        remedy: 'Check means and limits; the interval may be of a difference between arms, or of a change in per cent.',
        isImpossible: false,
      };
};

/** The change lies in the middle of its interval, change ± t SE. */
export const checkCentre: SelfCheck = (arm, rangeOf) => {
  // The middle of a posterior's interval may lie beside its mean.
  if (arm.ci_kind === 'credible') return null;
  const [interval, change] = [readInterval(rangeOf), impliedChange(rangeOf)];
  if (!interval || !change || !areApart(interval.centre, change.range)) return null;
  return {
    column: 'change_ci_high',
    doubted: LIMITS,
    expected: `a limit as far above the change as \`change_ci_low\` (${arm.change_ci_low}) is below it: the middle of the two lies at ${writeRange(interval.centre)}, the change at ${writeRange(change.range)} (${quoteCells(arm, change.from)})`,
    remedy:
      'Check the three; an interval of another comparison, of transformed numbers or from resampling does not belong here.',
    isImpossible: false,
  };
};

/** Half its width is t × SE, the error from its column or from SD / √n. */
export const checkWidth: SelfCheck = ofPeople((arm, rangeOf) => {
  const [interval, printed] = [errorOfInterval(rangeOf, arm), printedError(rangeOf, arm.n)];
  if (!interval || !printed || !areApart(interval.range, printed.range)) return null;
  const widthPerError = 1 / standardErrorFromInterval(0, 1, arm.n, levelOf(arm), dfOf(arm));
  return {
    column: 'change_ci_high',
    doubted: [...LIMITS, ...printed.from],
    expected: `limits ${writeRange(times(printed.range, widthPerError))} apart, as ${quoteCells(arm, printed.from)} and ${quoteCells(arm, ['n'])} give at ${arm.ci_level ?? 95} %, not ${writeStatistic((arm.change_ci_high ?? 0) - (arm.change_ci_low ?? 0))}`,
    remedy:
      'Check SD, standard error, limits and n; the interval may have another level, or a standard error may stand in for the SD.',
    isImpossible: false,
  };
});

/** The change in per cent lies in its interval. */
export const checkPercentInside: SelfCheck = (arm, rangeOf) => {
  const limits = ['percent_change_ci_low', 'percent_change_ci_high'] as const;
  const [percent, low, high] = [rangeOf('percent_change'), ...limits.map(rangeOf)];
  if (!percent || !low || !high || !areApart({ low: low.low, high: high.high }, percent)) return null;
  return {
    column: 'percent_change',
    doubted: limits,
    expected: `a change inside its interval, ${arm.percent_change_ci_low} to ${arm.percent_change_ci_high}`,
    remedy: 'Correct the change in per cent or the limits.',
    isImpossible: true,
  };
};

function readInterval(rangeOf: RangeOf): { readonly whole: Range; readonly centre: Range } | null {
  const [low, high] = LIMITS.map(rangeOf);
  if (!low || !high) return null;
  return {
    whole: { low: low.low, high: high.high },
    centre: { low: (low.low + high.low) / 2, high: (low.high + high.high) / 2 },
  };
}
