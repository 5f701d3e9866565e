/**
 * The effect of one row and its sampling variance.
 *
 * log-ratio: y = ln(m₂/m₁), v = s₁²/(n m₁²) + s₂²/(n m₂²) − 2 r s₁ s₂/(n m₁ m₂)
 *   (Hedges, Gurevitch & Curtis 1999, Ecology 80:1150; paired: Lajeunesse 2011, Ecology 92:2049, eq. 6).
 *   Per cent change = 100 (eʸ − 1).
 * standardised: d = J(n − 1) (m₂ − m₁)/s₁, v = 2 (1 − r)/n + d²/(2n)
 *   (Becker 1988, Br J Math Stat Psychol 41:257, eq. 13; Morris & DeShon 2002, large-sample variance),
 *   J(m) = Γ(m/2) / (√(m/2) Γ((m − 1)/2)) (Hedges 1981, J Educ Stat 6:107).
 */
import gammaln from '@stdlib/math-base-special-gammaln';
import type { Recovered } from './recover.ts';
import type { Arm } from './schema.ts';
import { hasPeople } from './selfCheck.ts';
import { type RowStatistics, resolveStatistics } from './statistics.ts';
import type { EFFECT_METRICS, OUTCOMES } from './vocabulary.ts';

export interface Effect {
  readonly arm: Arm;
  /** Effect in the metric asked for. */
  readonly y: number;
  /** Sampling variance of y, above 0. */
  readonly v: number;
  /** Correlation of baseline with follow-up that v was computed with; null where v needs none. */
  readonly correlation: number | null;
  /** How effect and variance, and every number behind them that was not simply reported, were obtained, in order. */
  readonly steps: readonly Recovered[];
}

export interface EffectChoice {
  readonly outcome: (typeof OUTCOMES)[number];
  readonly metric: (typeof EFFECT_METRICS)[number];
  /** Stands in where a row gives no correlation, −1 to 1 open. */
  readonly assumedCorrelation: number;
}

export interface ComputedEffects {
  readonly effects: readonly Effect[];
  readonly excluded: readonly { readonly line: number; readonly reason: string }[];
}

/**
 * Largest effect, and least and largest variance, that a fit can weigh with the 16 digits of a number. A doubled mean
 * has a log ratio of 0.7; beyond these limits stand slips and tests.
 */
const COMPUTABLE = { effect: 1e6, leastVariance: 1e-24, mostVariance: 1e24 } as const;

/** How effects and variances are computed, in the words of a step. */
export const FORMULAS = {
  logRatio: 'ln(m₂/m₁)',
  logRatioVariance: 's₁²/(n m₁²) + s₂²/(n m₂²) − 2 r s₁ s₂/(n m₁ m₂)',
  logRatioVarianceOfChange: 'from the SD of the change alone, s_c²/(n m₁ m₂): equal coefficients of variation assumed',
  standardised: 'J(n − 1) (m₂ − m₁)/s₁',
  standardisedVariance: '2 (1 − r)/n + d²/(2 n)',
} as const;

/** Effects of the rows of one outcome; rows of other outcomes are not looked at. */
export function computeEffects(arms: readonly Arm[], choice: EffectChoice): ComputedEffects {
  const effects: Effect[] = [];
  const excluded: { line: number; reason: string }[] = [];
  for (const arm of arms) {
    if (arm.outcome !== choice.outcome) continue;
    const result = computeEffect(arm, choice);
    if (typeof result === 'string') excluded.push({ line: arm.line, reason: result });
    else effects.push(result);
  }
  return { effects, excluded };
}

/** The effect of a row, or the reason why it has none in this metric. */
export function computeEffect(
  arm: Arm,
  { metric, assumedCorrelation }: Omit<EffectChoice, 'outcome'>,
): Effect | string {
  if (arm.effect !== null && arm.effect_variance !== null && arm.effect_metric === metric) {
    const how = 'reported';
    const extreme = refuseExtreme(arm.effect, arm.effect_variance);
    if (extreme) return extreme;
    return {
      arm,
      y: arm.effect,
      v: arm.effect_variance,
      correlation: null,
      steps: [
        { quantity: 'effect', value: arm.effect, how },
        { quantity: 'variance', value: arm.effect_variance, how },
      ],
    };
  }
  if (!hasPeople(arm)) return 'the number of people in the arm is not known (`n` is empty), which a variance needs';
  const statistics = resolveStatistics(arm, assumedCorrelation);
  const computed = metric === 'log-ratio' ? logRatio(statistics, arm.n) : standardised(statistics, arm.n);
  if (typeof computed === 'string') {
    return arm.effect_metric !== null ? `its ready-made effect is ${arm.effect_metric}, and ${computed}` : computed;
  }
  if (!(computed.v > 0) || !Number.isFinite(computed.v) || !Number.isFinite(computed.y)) {
    return 'its reported statistics give no variance above 0';
  }
  const extreme = refuseExtreme(computed.y, computed.v);
  if (extreme) return extreme;
  return { arm, ...computed, correlation: statistics.correlation, steps: [...statistics.steps, ...computed.steps] };
}

function refuseExtreme(y: number, v: number): string | null {
  const { effect, leastVariance, mostVariance } = COMPUTABLE;
  if (Math.abs(y) <= effect && v >= leastVariance && v <= mostVariance) return null;
  return `its effect of ${y.toPrecision(3)} with a variance of ${v.toPrecision(3)} cannot be computed with (effects up to ${effect}, variances from ${leastVariance} to ${mostVariance})`;
}

type Computed = Pick<Effect, 'y' | 'v' | 'steps'>;

function logRatio(statistics: RowStatistics, n: number): Computed | string {
  const { baselineMean: m1, followupMean: m2, baselineSd: s1, followupSd: s2, changeSd, correlation: r } = statistics;
  if (m1 === null || m2 === null) return 'it reports no means before and after, which the log ratio needs';
  if (!(m1 > 0 && m2 > 0)) return 'a mean is not above 0, which the log ratio needs';
  const y = Math.log(m2 / m1);
  if (s1 !== null && s2 !== null && r !== null) {
    const v = (s1 / m1) ** 2 / n + (s2 / m2) ** 2 / n - (2 * r * s1 * s2) / (n * m1 * m2);
    return {
      y,
      v,
      steps: explain(y, FORMULAS.logRatio, v, FORMULAS.logRatioVariance),
    };
  }
  if (changeSd === null) return 'it reports no standard deviation, which a variance needs';
  // With s₁/m₁ = s₂/m₂ = k the variance is 2 k² (1 − r)/n, and s_c² is 2 k² (1 − r) m₁ m₂ + k² (m₂ − m₁)².
  const v = changeSd ** 2 / (n * m1 * m2);
  return {
    y,
    v,
    steps: explain(y, FORMULAS.logRatio, v, FORMULAS.logRatioVarianceOfChange),
  };
}

function standardised(statistics: RowStatistics, n: number): Computed | string {
  const { baselineMean: m1, followupMean: m2, baselineSd: s1, correlation: r } = statistics;
  if (m1 === null || m2 === null) return 'it reports no means before and after, which the standardised change needs';
  if (s1 === null || r === null) return 'it reports no standard deviation before, which the standardised change needs';
  // J does not exist at one degree of freedom: two people have no unbiased standardised change.
  if (n < 3) return 'two people are too few for a standardised change';
  const d = (smallSampleFactor(n - 1) * (m2 - m1)) / s1;
  const v = (2 * (1 - r)) / n + d ** 2 / (2 * n);
  return { y: d, v, steps: explain(d, FORMULAS.standardised, v, FORMULAS.standardisedVariance) };
}

function explain(y: number, effect: string, v: number, variance: string): readonly Recovered[] {
  return [
    { quantity: 'effect', value: y, how: effect },
    { quantity: 'variance', value: v, how: variance },
  ];
}

/** J(m), exact, for m degrees of freedom above 1; NaN at or below 1. */
export function smallSampleFactor(m: number): number {
  return m > 1 ? Math.exp(gammaln(m / 2) - 0.5 * Math.log(m / 2) - gammaln((m - 1) / 2)) : Number.NaN;
}
