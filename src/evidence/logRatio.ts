/**
 * The log ratio of a row: y = ln(m₂/m₁), v = s₁²/(n m₁²) + s₂²/(n m₂²) − 2 r s₁ s₂/(n m₁ m₂)
 * (Hedges, Gurevitch & Curtis 1999, Ecology 80:1150; paired: Lajeunesse 2011, Ecology 92:2049, eq. 6).
 *
 * Where changes in per cent are printed with their spread, v is that of their mean by the delta method, s²/(n (100 + p)²):
 * y = ln(1 + p/100) has the derivative 1/(100 + p). It is taken before SDs whose correlation would be assumed and before
 * what a test of the change implies, and after a spread of the change that is printed in the unit of the row.
 */

import type { CountedArm } from './countedArm.ts';
import { type Computed, explain, FORMULAS } from './effectFormulas.ts';
import { resolveMeans } from './means.ts';
import { printsErrorOfChange, spreadOfChange, spreadOfPercents } from './recoveredSpread.ts';
import { resolveStatistics } from './statistics.ts';

/** Why a row that prints a change has no variance. */
export const NO_SPREAD = 'it reports no standard deviation, which a variance needs';

/** The reason in words where it cannot be had. */
export function logRatioOf(arm: CountedArm, assumedCorrelation: number): Computed | string {
  const ofPercents = logRatioOfPercents(arm);
  if (ofPercents) return ofPercents;
  const { n } = arm;
  const statistics = resolveStatistics(arm, assumedCorrelation);
  const { baselineMean: m1, followupMean: m2, baselineSd: s1, followupSd: s2, changeSd, correlation: r } = statistics;
  if (m1 === null || m2 === null) {
    return changeSd !== null && arm.change_mean !== null
      ? 'it reports a change but no mean before, and no change in per cent, which the log ratio needs'
      : 'it reports no means before and after, which the log ratio needs';
  }
  if (!(m1 > 0 && m2 > 0)) return 'a mean is not above 0, which the log ratio needs';
  const y = statistics.unit === 'row' ? Math.log(m2 / m1) : Math.log1p((m2 - m1) / m1);
  const formula = statistics.unit === 'row' ? FORMULAS.logRatio : FORMULAS.logRatioOfPercent;
  const common = { y, correlation: r };
  if (s1 !== null && s2 !== null && r !== null && !(changeSd !== null && onlyQuartiles(arm))) {
    const v = (s1 / m1) ** 2 / n + (s2 / m2) ** 2 / n - (2 * r * s1 * s2) / (n * m1 * m2);
    return { ...common, v, steps: [...statistics.steps, ...explain(y, formula, v, FORMULAS.logRatioVariance)] };
  }
  if (changeSd === null) return whyNoSpread(arm);
  // With s₁/m₁ = s₂/m₂ = k the variance is 2 k² (1 − r)/n, and s_c² is 2 k² (1 − r) m₁ m₂ + k² (m₂ − m₁)².
  const v = changeSd ** 2 / (n * m1 * m2);
  return { ...common, v, steps: [...statistics.steps, ...explain(y, formula, v, FORMULAS.logRatioVarianceOfChange)] };
}

/** null where the row prints no spread of per cents, or a more direct one. */
function logRatioOfPercents(arm: CountedArm): Computed | null {
  const { percent_change: percent, n } = arm;
  if (percent === null) return null;
  const means = resolveMeans(arm);
  const spread = spreadOfPercents(arm, means.unit === 'per cent' ? percent : null);
  if (!spread) return null;
  const other = means.unit === 'row' ? spreadOfChange(arm, means.change) : null;
  if (other && other.restsOn !== 'assumed' && printsErrorOfChange(arm)) return null;
  const isFullyPrinted = arm.correlation !== null && (arm.baseline_sd !== null || arm.followup_sd !== null);
  if (means.unit === 'row' && isFullyPrinted) return null;
  const arePrinted = arm.baseline_mean !== null && arm.followup_mean !== null;
  const y =
    arePrinted && arm.baseline_mean && arm.followup_mean
      ? Math.log(arm.followup_mean / arm.baseline_mean)
      : Math.log1p(percent / 100);
  const v = spread.value ** 2 / (n * (100 + percent) ** 2);
  const formula = arePrinted ? FORMULAS.logRatio : FORMULAS.logRatioOfPercent;
  const steps = explain(y, formula, v, FORMULAS.logRatioVarianceOfPercents);
  return { y, v, correlation: null, steps: spread.how === 'reported' ? steps : [spread, ...steps] };
}

/** SDs from quartiles are too rough to be set against that of the change, which says all that the variance needs. */
function onlyQuartiles(arm: CountedArm): boolean {
  return (
    arm.correlation === null &&
    (['baseline', 'followup'] as const).every(
      (time) => arm[`${time}_sd`] === null && arm[`${time}_se`] === null && arm[`${time}_q1`] !== null,
    )
  );
}

function whyNoSpread(arm: CountedArm): string {
  const bound = arm.ranges?.change_p;
  if (bound && bound.value === null) {
    return `${NO_SPREAD}; of p it says only that it is above ${bound.low}, which sets no limit to the spread`;
  }
  if (arm.effect !== null && arm.effect_metric === 'standardised') {
    return `${NO_SPREAD}, and its standardised effect gives none: the two have not one sign`;
  }
  return NO_SPREAD;
}
