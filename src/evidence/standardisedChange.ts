/**
 * The standardised change of a row: d = J(n − 1) (m₂ − m₁)/s₁, v = 2 (1 − r)/n + d²/(2n)
 * (Becker 1988, Br J Math Stat Psychol 41:257, eq. 13; Morris & DeShon 2002, large-sample variance), from means and the SD
 * before, or from a printed standardised effect without a variance.
 */

import type { CountedArm } from './countedArm.ts';
import { AS_BEFORE, type Computed, explain, FORMULAS } from './effectFormulas.ts';
import type { Arm } from './schema.ts';
import { smallSampleFactor } from './smallSampleFactor.ts';
import { byBaselineSd } from './standardisedEffect.ts';
import { assumeCorrelation, resolveStatistics } from './statistics.ts';

/** The reason in words where it cannot be had. */
export function standardisedOf(arm: CountedArm, assumedCorrelation: number): Computed | string {
  const { n } = arm;
  const statistics = resolveStatistics(arm, assumedCorrelation);
  const { baselineMean: m1, followupMean: m2, baselineSd: s1, correlation: r } = statistics;
  // An SD that comes from the effect itself would only take it apart and put it together again.
  if (hasStandardisedEffect(arm) && !printsSd(arm)) return standardisedOfEffect(arm, assumedCorrelation);
  if (m1 === null || m2 === null) {
    return statistics.changeSd === null || s1 !== null
      ? 'it reports no means before and after, which the standardised change needs'
      : 'it reports a change and its spread, but no standard deviation before: by the SD of the change it would be another measure';
  }
  if (s1 === null || r === null) return 'it reports no standard deviation before, which the standardised change needs';
  // J does not exist at one degree of freedom: two people have no unbiased standardised change.
  if (n < 3) return 'two people are too few for a standardised change';
  const y = (smallSampleFactor(n - 1) * (m2 - m1)) / s1;
  const v = (2 * (1 - r)) / n + y ** 2 / (2 * n);
  const steps = explain(y, FORMULAS.standardised, v, FORMULAS.standardisedVariance);
  return { y, v, correlation: r, steps: [...statistics.steps, ...steps] };
}

function standardisedOfEffect(arm: CountedArm & { readonly effect: number }, assumedCorrelation: number): Computed {
  const { n, correlation } = arm;
  const r = correlation ?? assumedCorrelation;
  const { d, steps } = byBaselineSd(arm, r);
  const v = (2 * (1 - r)) / n + d ** 2 / (2 * n);
  const ofR = correlation === null ? [assumeCorrelation(r)] : [];
  const last = [
    { quantity: 'effect', value: d, how: steps.length > 0 ? AS_BEFORE : 'reported' },
    { quantity: 'variance', value: v, how: FORMULAS.standardisedVariance },
  ];
  return { y: d, v, correlation: r, steps: [...ofR, ...steps, ...last] };
}

function hasStandardisedEffect(arm: Arm): arm is Arm & { readonly effect: number } {
  return arm.effect !== null && arm.effect_metric === 'standardised';
}

function printsSd(arm: Arm): boolean {
  return (['baseline', 'followup'] as const).some(
    (time) => arm[`${time}_sd`] !== null || arm[`${time}_se`] !== null || arm[`${time}_q1`] !== null,
  );
}
