/**
 * SDs that a paper does not print, from the coefficients of variation of the table's other rows (Nakagawa, Noble,
 * Lagisz, Spake, Viechtbauer & Senior 2023, Ecology Letters 26:232).
 *
 * k² = Σ n CV² / Σ n over the rows of an outcome and measure that print an SD with its mean, before and after apart.
 * The paper's effect and variance are of two independent groups: y = ln(m₂/m₁) + (k₂² − k₁²)/(2n),
 * v = k₁²/n + k₂²/n + k₁⁴/(2n²) + k₂⁴/(2n²) (Lajeunesse 2015, Ecology 96:2056). For the same people before and after:
 * with relative errors e₁, e₂ of the means, normal, of variance k²/n and covariance c = r k₁ k₂/n,
 * ln(1 + e) ≈ e − e²/2 has the mean −k²/(2n) at either time, whatever r, so that y stays as it is; its variance is
 * k²/n + k⁴/(2n²), and since Cov(e₁², e₂²) = 2c² the covariance of the two is c + c²/2, hence
 * v = (k₁² + k₂² − 2 r k₁ k₂)/n + (k₁⁴ + k₂⁴ − 2 r² k₁² k₂²)/(2n²).
 */

import { type CountedArm, hasPeople } from './countedArm.ts';
import { type Computed, explain, FORMULAS } from './effectFormulas.ts';
import { resolveMeans } from './means.ts';
import { printedSds } from './printedSds.ts';
import type { Recovered } from './recover.ts';
import type { Arm } from './schema.ts';
import { smallSampleFactor } from './smallSampleFactor.ts';
import { assumeCorrelation } from './statistics.ts';
import type { EFFECT_METRICS, POOLED_FOR } from './vocabulary.ts';

/** Pooled coefficients of variation of one outcome and measure, and how much they rest on. */
export interface PooledCv {
  readonly before: number;
  readonly after: number;
  readonly rows: number;
  readonly studies: number;
}

export interface PooledSpread {
  readonly use: (typeof POOLED_FOR)[number];
  /** The reason in words where there is none for the row's outcome and measure. */
  readonly of: (arm: Arm) => PooledCv | string;
}

/** Studies whose spread may stand for that of another: a single one would be taken for all (common practice, no source). */
const LEAST_STUDIES = 2;

/** @param arms all rows of the table, whatever the settings keep of them */
export function poolSpreads(arms: readonly Arm[], use: PooledSpread['use']): PooledSpread {
  const groups = new Map<string, Spreads>();
  for (const arm of arms) {
    const found = hasPeople(arm) ? coefficientsOf(arm) : null;
    if (!found) continue;
    const key = keyOf(arm);
    const group = groups.get(key) ?? { before: [], after: [], studies: new Set(), rows: 0 };
    groups.set(key, group);
    group.studies.add(arm.study);
    group.rows += 1;
    for (const time of ['before', 'after'] as const) {
      const square = found[time];
      if (square !== null) group[time].push({ n: found.n, square });
    }
  }
  const pooled = new Map([...groups].map(([key, group]) => [key, pool(group)]));
  return {
    use,
    of: (arm) =>
      pooled.get(keyOf(arm)) ??
      `no row of ${arm.outcome} by ${arm.measure} prints an SD with its mean, whose spread could stand for its own`,
  };
}

interface Spreads {
  readonly before: { readonly n: number; readonly square: number }[];
  readonly after: { readonly n: number; readonly square: number }[];
  readonly studies: Set<string>;
  rows: number;
}

function keyOf({ outcome, measure }: Arm): string {
  return JSON.stringify([outcome, measure]);
}

function coefficientsOf(arm: CountedArm) {
  const { baselineMean, followupMean, unit } = resolveMeans(arm);
  if (unit !== 'row') return null;
  const { baseline, followup } = printedSds(arm);
  const square = (sd: Recovered | null, mean: number | null) =>
    sd && mean !== null && mean > 0 ? (sd.value / mean) ** 2 : null;
  const [before, after] = [square(baseline, baselineMean), square(followup, followupMean)];
  return before === null && after === null ? null : { n: arm.n, before, after };
}

function pool({ before, after, studies, rows }: Spreads): PooledCv | string {
  if (studies.size < LEAST_STUDIES) {
    return `only ${studies.size} study prints an SD with its mean of the same outcome and measure, and ${LEAST_STUDIES} are needed for a pooled one`;
  }
  const [first, second] = [weightedMean(before), weightedMean(after)];
  const k1 = Math.sqrt(first ?? second ?? Number.NaN);
  return { before: k1, after: second === null ? k1 : Math.sqrt(second), rows, studies: studies.size };
}

function weightedMean(values: readonly { readonly n: number; readonly square: number }[]): number | null {
  if (values.length === 0) return null;
  const [sum, weight] = values.reduce(([s, w], { n, square }) => [s + n * square, w + n], [0, 0]);
  return sum / weight;
}

/** Effect and variance with the pooled coefficients; the reason in words where a mean or the pool is missing. */
export function pooledEffect(
  arm: CountedArm,
  pooled: PooledSpread,
  metric: (typeof EFFECT_METRICS)[number],
  assumedCorrelation: number,
): Computed | string {
  const change = pooledChange(arm);
  if (!change) return 'it prints no change that a pooled SD could stand beside';
  const cv = pooled.of(arm);
  if (typeof cv === 'string') return cv;
  const { n } = arm;
  const r = arm.correlation ?? assumedCorrelation;
  const steps: Recovered[] = [...change.steps, ...explainPool(cv)];
  if (arm.correlation === null) steps.push(assumeCorrelation(r));
  const { before: k1, after: k2 } = cv;
  if (metric === 'log-ratio') {
    const y = change.logRatio + (k2 ** 2 - k1 ** 2) / (2 * n);
    const first = (k1 ** 2 + k2 ** 2 - 2 * r * k1 * k2) / n;
    const v = first + (k1 ** 4 + k2 ** 4 - 2 * r ** 2 * k1 ** 2 * k2 ** 2) / (2 * n ** 2);
    const last = explain(y, FORMULAS.logRatioPooled, v, FORMULAS.logRatioVariancePooled);
    return { y, v, correlation: r, steps: [...steps, ...last] };
  }
  if (n < 3) return 'two people are too few for a standardised change';
  const y = (smallSampleFactor(n - 1) * Math.expm1(change.logRatio)) / k1;
  const v = (2 * (1 - r)) / n + y ** 2 / (2 * n);
  const last = explain(y, FORMULAS.standardisedPooled, v, FORMULAS.standardisedVariance);
  return { y, v, correlation: r, steps: [...steps, ...last] };
}

/** The log ratio of the means. */
function pooledChange(arm: CountedArm): { readonly logRatio: number; readonly steps: readonly Recovered[] } | null {
  const { baselineMean: m1, followupMean: m2, steps } = resolveMeans(arm);
  return m1 !== null && m2 !== null && m1 > 0 && m2 > 0 ? { logRatio: Math.log(m2 / m1), steps } : null;
}

function explainPool({ before, after, rows, studies }: PooledCv): readonly Recovered[] {
  const how = `pooled over ${rows} rows of ${studies} studies of the same outcome and measure: √(Σ n CV² / Σ n)`;
  return [
    { quantity: 'coefficient of variation before (k₁)', value: before, how, restsOn: 'pooled' },
    { quantity: 'coefficient of variation after (k₂)', value: after, how, restsOn: 'pooled' },
  ];
}
