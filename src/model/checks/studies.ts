/**
 * The studies one by one: what each counts for under the three weightings, and how far each lies from
 * the curve.
 */
import { normalQuantile } from '../../numerics/distributions.ts';
import { type BandFit, fitEffects, requireFit, slopeOf, summariseTarget } from '../bandFit.ts';
import type { Fit } from '../mixed.ts';
import type { Estimate, TargetSummary } from '../result.ts';
import { type Settings, WEIGHTINGS, type Weighting } from '../settings.ts';
import { whiten } from '../whitening.ts';

/** Share of each study in 1'Φ⁻¹1, what it counts for in a pooled mean, in the order of the fit's studies. */
export function studyWeights({ data, whitening }: Fit): number[] {
  const weights = data.studies.map((_, k) => {
    const ones = whitening.whitenedOnes.subarray(data.studyStart[k], data.studyStart[k + 1]);
    return ones.reduce((sum, value) => sum + value * value, 0);
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

export interface WeightingComparison {
  readonly weighting: Weighting;
  readonly slope: Estimate | null;
  readonly target: TargetSummary;
  /** Share of each study, 0 to 1. */
  readonly shares: readonly { readonly study: string; readonly share: number }[];
}

/** The same rows under each weighting. */
export function compareWeightings(band: BandFit, settings: Settings): WeightingComparison[] {
  return WEIGHTINGS.map((weighting) => {
    const other = fitEffects(band.effects, { ...settings, weighting, answerOnly: true }, band.data);
    const { fit } = other.outcome;
    const shares = fit ? studyWeights(fit) : [];
    return {
      weighting,
      slope: slopeOf(other, settings.confidence),
      target: summariseTarget(other, settings),
      shares: shares.map((share, k) => ({ study: fit?.data.studies[k] ?? '', share })),
    };
  });
}

export interface StudyDeviation {
  readonly study: string;
  readonly year: number;
  readonly rows: number;
  /** Mean distance of the study's rows from the curve, by their own precision; analysis scale. */
  readonly deviation: number;
  /** Its interval from sampling error and the variance between rows, normal. */
  readonly low: number;
  readonly high: number;
}

/** How far each study lies above or below the curve; the scatter of these is what τ² measures. */
export function measureDeviations(band: BandFit, settings: Settings): StudyDeviation[] {
  const { data, inference, components } = requireFit(band);
  const inside = whiten(data, { tau2: 0, omega2: components?.omega2 ?? 0, rho: components ? settings.rho : 0 });
  const reach = normalQuantile((1 + settings.confidence) / 2);
  return data.studies.map((study, k) => {
    let weight = 0;
    let sum = 0;
    for (let i = data.studyStart[k]; i < data.studyStart[k + 1]; i++) {
      const row = data.source[i];
      const fitted = band.columns.reduce((total, column, j) => total + column[row] * inference.coefficients[j], 0);
      const precision = inside.rootWeight[i] ** 2;
      weight += precision;
      sum += precision * (data.y[i] - fitted);
    }
    const ones = inside.whitenedOnes.subarray(data.studyStart[k], data.studyStart[k + 1]);
    const information = ones.reduce((total, value) => total + value * value, 0);
    const deviation = sum / weight;
    const error = Math.sqrt(1 / information);
    return {
      study,
      year: band.effects[data.source[data.studyStart[k]]].arm.year,
      rows: data.studyStart[k + 1] - data.studyStart[k],
      deviation,
      low: deviation - reach * error,
      high: deviation + reach * error,
    };
  });
}
