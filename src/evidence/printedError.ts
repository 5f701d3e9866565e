/**
 * The log ratio of a row whose number of people is not known: a standard error already counts them, so that the
 * variance needs no n. In the change's own unit v = se²/(m₁ m₂) as from the SD of the change (equal coefficients of
 * variation), in per cent se²/(100 + p)² by the delta method, of the means (se₁/m₁)² + (se₂/m₂)² − 2 r se₁ se₂/(m₁ m₂)
 * (Lajeunesse 2011, Ecology 92:2049, eq. 6).
 */
import { type Computed, explain, FORMULAS } from './effectFormulas.ts';
import { resolveMeans } from './means.ts';
import type { Arm } from './schema.ts';

/** null where no standard error is printed of what the effect is made of. */
export function logRatioOfErrors(arm: Arm, assumedCorrelation: number): Computed | null {
  const { baselineMean: m1, followupMean: m2, unit, steps } = resolveMeans(arm);
  if (m1 === null || m2 === null || !(m1 > 0 && m2 > 0)) return null;
  const { change_se: ofChange, percent_change_se: ofPercents, baseline_se: before, followup_se: after } = arm;
  const make = (v: number, formula: string, correlation: number | null = null): Computed => {
    const y = unit === 'row' ? Math.log(m2 / m1) : Math.log1p((m2 - m1) / m1);
    const effect = unit === 'row' ? FORMULAS.logRatio : FORMULAS.logRatioOfPercent;
    return { y, v, correlation, steps: [...steps, ...explain(y, effect, v, formula)] };
  };
  if (unit === 'row' && ofChange !== null) return make(ofChange ** 2 / (m1 * m2), FORMULAS.logRatioVarianceOfError);
  if (ofPercents !== null && arm.percent_change !== null) {
    return make((ofPercents / (100 + arm.percent_change)) ** 2, FORMULAS.logRatioVarianceOfPercentError);
  }
  if (unit !== 'row' || before === null || after === null) return null;
  const r = arm.correlation ?? assumedCorrelation;
  const [e1, e2] = [before / m1, after / m2];
  return make(e1 ** 2 + e2 ** 2 - 2 * r * e1 * e2, FORMULAS.logRatioVarianceOfErrors, r);
}
