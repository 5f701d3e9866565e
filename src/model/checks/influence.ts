/**
 * Influence: what the slope and target would be without each study, and how far each study and row
 * stands from the rest.
 *
 * Cook's distance of a study: (β − β₍ₖ₎)' M⁻¹ (β − β₍ₖ₎)/p, M the covariance under the working model
 * (Cook 1977, Technometrics 19:15, for a group of rows under generalised least squares). The variance
 * components are estimated anew without the study. Standardised residual of a row:
 * (y − xβ)/√(Φ − XMX')ᵢᵢ.
 */

import { type BandFit, fitEffects, requireFit, slopeOf, summariseTarget } from '../bandFit.ts';
import type { Fit } from '../mixed.ts';
import { withoutStudy } from '../observations.ts';
import type { Estimate, TargetSummary } from '../result.ts';
import type { Settings } from '../settings.ts';
import { applyRoot, rowVariances } from '../whitening.ts';
import { studyWeights } from './studies.ts';

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
      cooksDistance: rest.outcome.fit ? cooksDistance(fit, rest.outcome.fit) : null,
      reason: rest.outcome.failure?.reason ?? null,
    };
  });
  return { studies, residuals: standardiseResiduals(band, fit) };
}

function cooksDistance(whole: Fit, without: Fit): number {
  const { p, coefficients } = whole.inference;
  const shift = coefficients.map((value, j) => value - without.inference.coefficients[j]);
  // M⁻¹ = R'R, so the distance is |R shift|²/p.
  let sum = 0;
  for (let i = 0; i < p; i++) {
    let along = 0;
    for (let j = i; j < p; j++) along += whole.solution.r[i * p + j] * shift[j];
    sum += along * along;
  }
  return sum / p;
}

function standardiseResiduals(band: BandFit, { data, whitening, solution }: Fit): RowResidual[] {
  const residuals = applyRoot(data, whitening, solution.residuals);
  const variances = rowVariances(data, whitening);
  // XMX' is YY' with Y = C Q.
  for (const column of solution.q) {
    const y = applyRoot(data, whitening, column);
    for (let i = 0; i < data.n; i++) variances[i] -= y[i] * y[i];
  }
  return Array.from(data.source, (row, i) => {
    const { arm } = band.effects[row];
    return { line: arm.line, study: arm.study, standardised: residuals[i] / Math.sqrt(variances[i]) };
  }).sort((a, b) => a.line - b.line);
}
