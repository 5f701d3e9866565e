/** SDs against their means and their standard error, and the mean change against the means. */
import { changeOfMeans, impliedChange } from './impliedStatistics.ts';
import { areApart, over, sizes, times, writeRange, writeStatistic } from './printed.ts';
import { ofPeople, quoteCells, type SelfCheck } from './selfCheck.ts';

/**
 * People differ in size and strength by some 5 to 30 % of the mean (common practice, no source), and by a hundredth
 * in nothing that is measured here. What is below that is in another unit (mm beside m), or the error of a large group.
 */
const LEAST_SHARE_OF_MEAN = 0.01;
/**
 * Measuring anew moves even a scan by some half a per cent between days (common practice, no source): changes of
 * people that differ by less than a thousandth of the mean are in another unit.
 */
const LEAST_SHARE_OF_CHANGE = 0.001;

/** An SD that is next to nothing beside its mean. */
export const checkSmallSds: readonly SelfCheck[] = [
  makeSmallSdCheck('baseline_sd', 'baseline_mean', LEAST_SHARE_OF_MEAN),
  makeSmallSdCheck('followup_sd', 'followup_mean', LEAST_SHARE_OF_MEAN),
  makeSmallSdCheck('change_sd', 'baseline_mean', LEAST_SHARE_OF_CHANGE),
];

function makeSmallSdCheck(
  column: 'baseline_sd' | 'followup_sd' | 'change_sd',
  ofMean: 'baseline_mean' | 'followup_mean',
  least: number,
): SelfCheck {
  return (arm, rangeOf) => {
    const [sd, mean] = [rangeOf(column), rangeOf(ofMean)];
    if (!sd || !mean || over(sd, mean).high >= least) return null;
    return {
      column,
      doubted: [column],
      expected: `an SD of at least ${100 * least} % of the mean, ${quoteCells(arm, [ofMean])}`,
      remedy: 'Check the units of the two, and whether a standard error stands in for the SD.',
      isImpossible: false,
    };
  };
}

/** Means before and after, and the mean change. */
export const checkChangeOfMeans: SelfCheck = (arm, rangeOf) => {
  const [printed, computed] = [rangeOf('change_mean'), changeOfMeans(rangeOf)];
  if (!printed || !computed || !areApart(printed, computed.range)) return null;
  return {
    column: 'change_mean',
    doubted: ['change_mean', ...computed.from],
    expected: `a change of ${writeStatistic((arm.followup_mean ?? 0) - (arm.baseline_mean ?? 0))}, the mean after minus the mean before`,
    remedy: 'Means are used before the mean change; correct one of the three, or say in the note why they differ.',
    isImpossible: false,
  };
};

/** SE = SD / √n: the same number in both is a copy, and no standard error is above its SD. */
export const checkErrorsAgainstSds: readonly SelfCheck[] = (
  ['change', 'baseline', 'followup', 'percent_change'] as const
).map((of) =>
  ofPeople((arm, rangeOf) => {
    const [sdColumn, errorColumn] = [`${of}_sd`, `${of}_se`] as const;
    const [sd, error] = [rangeOf(sdColumn), rangeOf(errorColumn)];
    const [printedSd, printedError] = [arm[sdColumn], arm[errorColumn]];
    if (!sd || !error || printedSd === null || printedError === null) return null;
    const fitting = times(sizes(sd), 1 / Math.sqrt(arm.n));
    if (!areApart(fitting, error)) return null;
    return {
      column: errorColumn,
      doubted: [sdColumn, errorColumn],
      expected: `a standard error of ${writeRange(fitting)}, ${quoteCells(arm, [sdColumn])} divided by √n with ${quoteCells(arm, ['n'])}`,
      remedy:
        printedError === printedSd
          ? 'One of the two is a copy of the other: keep it where it belongs, and clear the other cell.'
          : 'Check whether the two are exchanged or one is of other people; clear the one that the paper does not print.',
      isImpossible: printedError >= printedSd,
    };
  }),
);

/**
 * A mean of people's changes in per cent and the change of their means differ, since those who start lower may gain a
 * larger share: by no more than this share of the change, or so many per cent (common practice, no source).
 */
const MEANS_OF_PERCENTS = { share: 0.25, percent: 1.5 } as const;

/** The change in per cent, and that of the means. */
export const checkPercentOfMeans: SelfCheck = (arm, rangeOf) => {
  const [percent, before, change] = [rangeOf('percent_change'), rangeOf('baseline_mean'), impliedChange(rangeOf)];
  if (!percent || !before || !change) return null;
  if (before.low <= 0) return null;
  const ends = [change.range.low, change.range.high].flatMap((end) => [
    (100 * end) / before.low,
    (100 * end) / before.high,
  ]);
  const computed = { low: Math.min(...ends), high: Math.max(...ends) };
  const slack = Math.max(MEANS_OF_PERCENTS.percent, MEANS_OF_PERCENTS.share * sizes(computed).high);
  if (!areApart(percent, { low: computed.low - slack, high: computed.high + slack })) return null;
  return {
    column: 'percent_change',
    doubted: ['percent_change'],
    expected: `a change near ${writeRange(computed)} %, as ${quoteCells(arm, [...new Set([...change.from, 'baseline_mean' as const])])} give`,
    remedy: 'Check the three; the change in per cent may be of other people, adjusted, or a difference between arms.',
    isImpossible: false,
  };
};

/** A ready-made effect has the sign of the change that stands beside it. */
export const checkSignOfEffect: SelfCheck = (arm, rangeOf) => {
  const [effect, change] = [rangeOf('effect'), impliedChange(rangeOf)];
  if (!effect || !change) return null;
  const { low, high } = change.range;
  if (!((effect.high < 0 && low > 0) || (effect.low > 0 && high < 0))) return null;
  return {
    column: 'effect',
    doubted: ['effect'],
    expected: `an effect ${low > 0 ? 'above' : 'below'} 0, as the change is (${quoteCells(arm, change.from)})`,
    remedy: 'Where the paper subtracts the other way round, change the sign of the effect; else correct the change.',
    isImpossible: false,
  };
};

/** A mean change and a change in per cent have one sign. */
export const checkSignOfPercent: SelfCheck = (arm, rangeOf) => {
  const [percent, change] = [rangeOf('percent_change'), rangeOf('change_mean')];
  if (!percent || !change) return null;
  if (!((percent.high < 0 && change.low > 0) || (percent.low > 0 && change.high < 0))) return null;
  return {
    column: 'percent_change',
    doubted: ['percent_change'],
    expected: `a change ${change.low > 0 ? 'above' : 'below'} 0, as ${quoteCells(arm, ['change_mean'])} is`,
    remedy: 'Correct the sign of one of the two.',
    isImpossible: false,
  };
};
