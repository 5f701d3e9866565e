/** How effects and variances are computed, in the words of a step, and what a computation gives. */
import type { Recovered } from './recover.ts';

export const FORMULAS = {
  logRatio: 'ln(m₂/m₁)',
  logRatioOfPercent: 'ln(1 + change in per cent / 100)',
  logRatioVariance: 's₁²/(n m₁²) + s₂²/(n m₂²) − 2 r s₁ s₂/(n m₁ m₂)',
  logRatioVarianceOfChange: 'from the SD of the change alone, s_c²/(n m₁ m₂): equal coefficients of variation assumed',
  logRatioVarianceOfPercents: 'from the SD of the change in per cent, s²/(n (100 + change in per cent)²)',
  logRatioVarianceOfError:
    'from the standard error of the change alone, se²/(m₁ m₂): equal coefficients of variation assumed',
  logRatioVarianceOfPercentError: 'from the standard error of the change in per cent, se²/(100 + change in per cent)²',
  logRatioVarianceOfErrors: '(se₁/m₁)² + (se₂/m₂)² − 2 r se₁ se₂/(m₁ m₂)',
  logRatioPooled: 'ln(m₂/m₁) + (k₂² − k₁²)/(2 n), k the pooled coefficients of variation',
  logRatioVariancePooled: '(k₁² + k₂² − 2 r k₁ k₂)/n + (k₁⁴ + k₂⁴ − 2 r² k₁² k₂²)/(2 n²)',
  standardised: 'J(n − 1) (m₂ − m₁)/s₁',
  standardisedPooled: 'J(n − 1) (m₂ − m₁)/(k₁ m₁), k₁ the pooled coefficient of variation',
  standardisedVariance: '2 (1 − r)/n + d²/(2 n)',
} as const;

/** How an effect was obtained that the step before it, or an earlier one, has made of the printed one. */
export const AS_BEFORE = 'as the step before it';

/** An effect with its sampling variance, neither looked at yet. */
export interface Computed {
  readonly y: number;
  readonly v: number;
  readonly correlation: number | null;
  readonly steps: readonly Recovered[];
}

/** The last two steps of every effect. */
export function explain(y: number, effect: string, v: number, variance: string): readonly Recovered[] {
  return [
    { quantity: 'effect', value: y, how: effect },
    { quantity: 'variance', value: v, how: variance },
  ];
}
