/**
 * Influence: what the slope and target would be without each study, and how far each study and row
 * stands from the rest.
 *
 * Cook's distance of a study: (ŷ − ŷ₍ₖ₎)' Φ⁻¹ (ŷ − ŷ₍ₖ₎)/p, ŷ what the fits with and without the study foretell of
 * all rows (Cook 1977, Technometrics 19:15, for a group of rows under generalised least squares). Where both have the same
 * columns it is (β − β₍ₖ₎)' M⁻¹ (β − β₍ₖ₎)/p, M the covariance under the working model; without the study the knots of a spline
 * and the means of covariates are others, and coefficients of the same name do not compare. The variance
 * components are estimated anew without the study. Standardised residual of a row:
 * (y − xβ)/√(Φ − XMX')ᵢᵢ. Equal weights know of Φ only that it is s² I, s² = RSS/(n − p).
 */

import { dot } from '../../numerics/dot.ts';
import { type BandFit, fitEffects, foretell, requireFit, slopeOf, summariseTarget } from '../bandFit.ts';
import type { Fit } from '../mixed.ts';
import { arrangeColumn, withoutStudy } from '../observations.ts';
import type { Estimate, TargetSummary } from '../result.ts';
import type { Settings } from '../settings.ts';
import { studyWeights } from '../studyWeights.ts';
import { applyRoot, applyWhitening, rowVariances } from '../whitening.ts';

export interface StudyInfluence {
  readonly study: string;
  readonly rows: number;
  /** Share of the weight of all studies, 0 to 1. */
  readonly weight: number;
  /** Mean slope without the study; null with a reason where the rest cannot be fitted. */
  readonly slopeWithout: Estimate | null;
  readonly targetWithout: TargetSummary;
  readonly cooksDistance: number | null;
  readonly reason: string | null;
}

export interface RowResidual {
  /** Line of the table. */
  readonly line: number;
  readonly study: string;
  /** Residual in its own standard deviations under the working model. */
  readonly standardised: number;
}

export interface Influence {
  readonly studies: readonly StudyInfluence[];
  readonly residuals: readonly RowResidual[];
}

/** @param band a band whose fit was made */
export function measureInfluence(band: BandFit, settings: Settings): Influence {
  const fit = requireFit(band);
  const weights = studyWeights(fit);
  /** What the working model's variances are in. */
  const unit = settings.weighting === 'equal' ? fit.solution.residualSumOfSquares / (fit.data.n - fit.inference.p) : 1;
  const studies = fit.data.studies.map((study, k): StudyInfluence => {
    const rest = fitEffects(
      band.effects.filter(({ arm }) => arm.study !== study),
      { ...settings, answerOnly: true },
      withoutStudy(band.data, k),
    );
    return {
      study,
      rows: fit.data.studyStart[k + 1] - fit.data.studyStart[k],
      weight: weights[k],
      slopeWithout: slopeOf(rest, settings.confidence),
      targetWithout: summariseTarget(rest, settings),
      cooksDistance: rest.outcome.fit && cooksDistance(band, fit, rest, rest.outcome.fit, unit),
      reason: rest.outcome.failure?.reason ?? null,
    };
  });
  return { studies, residuals: standardiseResiduals(band, fit, unit) };
}

function cooksDistance(band: BandFit, whole: Fit, rest: BandFit, without: Fit, unit: number): number {
  const others = foretell(rest.columnsOf(band.effects), without);
  const shift = foretell(band.columns, whole).map((value, i) => value - others[i]);
  const whitened = applyWhitening(whole.data, whole.whitening, arrangeColumn(whole.data, shift));
  return dot(whitened, whitened) / whole.inference.p / unit;
}

function standardiseResiduals(band: BandFit, { data, whitening, solution }: Fit, unit: number): RowResidual[] {
  const residuals = applyRoot(data, whitening, solution.residuals);
  const variances = rowVariances(data, whitening);
  // XMX' is YY' with Y = C Q.
  for (const column of solution.q) {
    const y = applyRoot(data, whitening, column);
    for (let i = 0; i < data.n; i++) variances[i] -= y[i] * y[i];
  }
  return Array.from(data.source, (row, i) => {
    const { arm } = band.effects[row];
    return { line: arm.line, study: arm.study, standardised: residuals[i] / Math.sqrt(unit * variances[i]) };
  }).sort((a, b) => a.line - b.line);
}
