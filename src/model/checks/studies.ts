/**
 * The studies one by one: what each counts for under the three weightings, and how far each lies from
 * the curve.
 */
import { normalQuantile } from '../../numerics/distributions.ts';
import { dot } from '../../numerics/dot.ts';
import { type BandFit, fitEffects, foretell, requireFit, slopeOf, summariseTarget } from '../bandFit.ts';
import type { Estimate, TargetSummary } from '../result.ts';
import { type Settings, WEIGHTINGS, type Weighting } from '../settings.ts';
import { studyWeights } from '../studyWeights.ts';
import { whiten, whitenInPlace } from '../whitening.ts';

/** The slope, the target and what each study counts for under one weighting. */
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
  /**
   * Mean distance of the study's rows from the curve, by generalised least squares: 1'Σ⁻¹(y − Xβ)/1'Σ⁻¹1 with
   * Σ = V + ω² I; analysis scale.
   */
  readonly deviation: number;
  /** Its normal interval, of variance 1/(1'Σ⁻¹1): sampling error and the variance between rows. */
  readonly low: number;
  readonly high: number;
}

/** How far each study lies above or below the curve; the scatter of these is what τ² measures. */
export function measureDeviations(band: BandFit, settings: Settings): StudyDeviation[] {
  const fit = requireFit(band);
  const { data, components } = fit;
  const inside = whiten(data, { tau2: 0, omega2: components?.omega2 ?? 0, rho: components ? settings.rho : 0 });
  const reach = normalQuantile((1 + settings.confidence) / 2);
  const fitted = foretell(band.columns, fit);
  const residuals = Float64Array.from(data.source, (row, i) => data.y[i] - fitted[row]);
  const whitened = whitenInPlace(data, inside, residuals);
  return data.studies.map((study, k) => {
    const ones = inside.whitenedOnes.subarray(data.studyStart[k], data.studyStart[k + 1]);
    const information = dot(ones, ones);
    const deviation = dot(ones, whitened.subarray(data.studyStart[k], data.studyStart[k + 1])) / information;
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
