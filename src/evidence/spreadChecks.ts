/** SDs against their means and their standard error, and the mean change against the means. */
import { changeOfMeans } from './impliedStatistics.ts';
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
export const checkErrorAgainstSd: SelfCheck = ofPeople((arm, rangeOf) => {
  const [sd, error] = [rangeOf('change_sd'), rangeOf('change_se')];
  if (!sd || !error || arm.change_sd === null || arm.change_se === null) return null;
  const fitting = times(sizes(sd), 1 / Math.sqrt(arm.n));
  if (!areApart(fitting, error)) return null;
  const isCopy = arm.change_se === arm.change_sd;
  return {
    column: 'change_se',
    doubted: ['change_sd', 'change_se'],
    expected: `a standard error of ${writeRange(fitting)}, ${quoteCells(arm, ['change_sd'])} divided by √n with ${quoteCells(arm, ['n'])}`,
    remedy: isCopy
      ? 'One of the two is a copy of the other: keep it where it belongs, and clear the other cell.'
      : 'Check whether the two are exchanged or one is of other people; clear the one that the paper does not print.',
    isImpossible: arm.change_se >= arm.change_sd,
  };
});
