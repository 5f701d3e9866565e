/**
 * The regression of effects on a design, under one of three weightings.
 *
 *     y = X β + u(study) + a(row) + e,   u ~ N(0, τ²),  a ~ N(0, ω²),  e ~ N(0, V)
 *
 *   y  n effects on the analysis scale          X  n×p design        β  p coefficients
 *   V  sampling covariance: v on the diagonal, ρ √(vᵢvⱼ) between rows of one cohort
 *   τ² variance between studies                 ω² variance between rows of a study
 *
 * mixed: τ² and ω² by REML, β by generalised least squares (one QR of the whitened data).
 * precision: weights 1/v, everything else taken as absent (ρ = τ² = ω² = 0).
 * equal: ordinary least squares.
 * Inference is cluster-robust by study in all three (cr2.ts), so that it holds where the
 * working model does not. A second fit by full maximum likelihood gives the log-likelihood that
 * curve shapes are compared by.
 *
 * Assumes: effects of a row are unbiased, v is known, studies are independent. It does not model
 * publication, nor error in the covariates.
 * References: Pustejovsky & Tipton 2022 (Prev Sci 23:425), the working model; Konstantopoulos 2011
 * (Res Synth Methods 2:61), three levels.
 */
import { type LeastSquares, leastSquares } from '../numerics/leastSquares.ts';
import { unitVector } from '../numerics/smallMatrices.ts';
import { type RobustInference, robustInference } from './cr2.ts';
import { logLikelihoodsOf } from './likelihood.ts';
import { arrangeColumn, arrangeObservations, type Observation, type Observations } from './observations.ts';
import type { FitFailure } from './result.ts';
import { toScores } from './robust.ts';
import type { Weighting } from './settings.ts';
import { estimateVarianceComponents, type VarianceComponents } from './varianceComponents.ts';
import { applyWhitening, type Whitening, whiten } from './whitening.ts';

export interface Fit {
  readonly data: Observations;
  readonly inference: RobustInference;
  /** Standard errors under the working model, length p. */
  readonly modelStandardErrors: Float64Array;
  /** REML estimate of (τ², ω²); null under the simpler weightings. */
  readonly components: VarianceComponents | null;
  /** ml is null where only the answer was asked for; both are where equal weights leave residuals of exactly 0. */
  readonly logLikelihood: { readonly reml: number | null; readonly ml: number | null };
  /** Parameters that AICc counts: coefficients and variances that were free. */
  readonly parameters: number;
  /** Corrected Akaike criterion of the ML fit; null where n ≤ parameters + 1. */
  readonly aicc: number | null;
  /** Whitened fit, rows in the order of `data`. */
  readonly whitening: Whitening;
  readonly solution: LeastSquares;
}

export type FitOutcome =
  | { readonly fit: Fit; readonly failure: null }
  | { readonly fit: null; readonly failure: FitFailure };

export interface FitOptions {
  /** Correlation of sampling errors inside a cohort, 0 to below 1. */
  readonly rho: number;
  readonly weighting: Weighting;
  /**
   * True leaves out the second fit, by full maximum likelihood, that only AICc needs: for callers that
   * refit hundreds of times.
   */
  readonly answerOnly?: boolean;
}

/** One study says nothing about how studies differ: robust inference needs clusters to compare. */
const LEAST_STUDIES = 2;

/**
 * @param observations one per row
 * @param columns design, p arrays in the order of `observations`
 * @param options how rows are weighed and what is asked for
 */
export function fitModel(
  observations: readonly Observation[],
  columns: readonly ArrayLike<number>[],
  options: FitOptions,
): FitOutcome {
  return fitArranged(arrangeObservations(observations), columns, options);
}

/** The same for observations that stand in order already, so that several fits of the same rows sort them once. */
export function fitArranged(
  data: Observations,
  columns: readonly ArrayLike<number>[],
  options: FitOptions,
): FitOutcome {
  return fitDesign(
    data,
    columns.map((column) => arrangeColumn(data, column)),
    options,
  );
}

/** The same for columns that stand in the order of `data` already. */
export function fitDesign(data: Observations, columns: readonly Float64Array[], options: FitOptions): FitOutcome {
  const failure = refuse(data, columns.length);
  if (failure) return { fit: null, failure };
  const plain = leastSquares(columns, data.y);
  if (!plain.fullRank) {
    return {
      fit: null,
      failure: {
        kind: 'rank-deficient',
        reason: `the ${columns.length} columns of the design cannot be told apart from ${data.n} rows`,
      },
    };
  }
  return options.weighting === 'mixed'
    ? fitMixed(data, columns, plain, options)
    : fitSimple(data, columns, options.weighting);
}

function refuse(data: Observations, p: number): FitFailure | null {
  if (data.n === 0) return { kind: 'no-rows', reason: 'no row is left to fit' };
  if (data.studies.length < LEAST_STUDIES) {
    return {
      kind: 'too-few-studies',
      reason: `${data.studies.length} study is left; at least ${LEAST_STUDIES} are needed to see how studies differ`,
    };
  }
  if (data.n <= p) {
    return { kind: 'too-few-rows', reason: `${data.n} rows are left; ${p} coefficients need at least ${p + 1}` };
  }
  return null;
}

function fitMixed(
  data: Observations,
  design: readonly Float64Array[],
  plain: LeastSquares,
  { rho, answerOnly = false }: FitOptions,
): FitOutcome {
  const both = answerOnly ? null : estimateVarianceComponents(data, design, rho, ['reml', 'ml'], plain);
  const { reml: components } = both ?? estimateVarianceComponents(data, design, rho, ['reml'], plain);
  if (!components.converged) {
    return {
      fit: null,
      failure: {
        kind: 'did-not-converge',
        reason: `the likelihood of τ² and ω² had no maximum within reach after ${components.iterations} steps`,
      },
    };
  }
  const { whitening, solution } = solve(data, design, { tau2: components.tau2, omega2: components.omega2, rho });
  const inference = robustInference(data, whitening, solution);
  const free = components.free.filter(Boolean).length;
  return success({
    data,
    inference,
    modelStandardErrors: rootDiagonal(inference.modelCovariance, inference.p),
    components,
    logLikelihood: { reml: components.logLikelihood, ml: both?.ml.logLikelihood ?? null },
    parameters: design.length + free,
    whitening,
    solution,
  });
}

function fitSimple(data: Observations, design: readonly Float64Array[], weighting: 'precision' | 'equal'): FitOutcome {
  const weighed = weighting === 'equal' ? { ...data, v: new Float64Array(data.n).fill(1) } : data;
  const { whitening, solution } = solve(weighed, design, { tau2: 0, omega2: 0, rho: 0 });
  const inference = robustInference(weighed, whitening, solution);
  const precision = weighting === 'precision';
  return success({
    data,
    inference,
    modelStandardErrors: precision
      ? rootDiagonal(inference.modelCovariance, inference.p)
      : samplingStandardErrors(data, solution, inference),
    components: null,
    logLikelihood: precision
      ? logLikelihoodsOf(data.n, design.length, whitening.logDeterminant, solution)
      : equalLogLikelihoods(data.n, design.length, solution),
    // Equal weights estimate one residual variance; precision takes every variance as known.
    parameters: design.length + (precision ? 0 : 1),
    whitening,
    solution,
  });
}

function solve(
  data: Observations,
  design: readonly Float64Array[],
  at: { tau2: number; omega2: number; rho: number },
): { whitening: Whitening; solution: LeastSquares } {
  const whitening = whiten(data, at);
  const solution = leastSquares(
    design.map((column) => applyWhitening(data, whitening, column)),
    applyWhitening(data, whitening, data.y),
  );
  return { whitening, solution };
}

/** Completes a fit with its AICc (Hurvich & Tsai 1989, Biometrika 76:297), n the number of rows. */
function success(fit: Omit<Fit, 'aicc'>): FitOutcome {
  const { parameters: q } = fit;
  const n = fit.data.n;
  const spare = n - q - 1;
  const { ml } = fit.logLikelihood;
  const aicc = ml !== null && spare > 0 ? -2 * ml + (2 * q * n) / spare : null;
  return { fit: { ...fit, aicc }, failure: null };
}

/** Under equal weights: standard errors from the sampling variances alone, √diag (X'X)⁻¹X'diag(v)X(X'X)⁻¹. */
function samplingStandardErrors(data: Observations, solution: LeastSquares, inference: RobustInference): Float64Array {
  return Float64Array.from({ length: inference.p }, (_, j) => {
    const h = toScores(inference, unitVector(inference.p, j));
    let variance = 0;
    for (let i = 0; i < data.n; i++) {
      let influence = 0;
      for (let c = 0; c < inference.p; c++) influence += solution.q[c][i] * h[c];
      variance += influence * influence * data.v[i];
    }
    return Math.sqrt(variance);
  });
}

/**
 * Normal log-likelihoods of ordinary least squares, the residual variance at its own maximum: RSS/n for
 * ML, RSS/(n − p) for REML. Residuals of exactly 0 have none: l rises without end as the variance falls.
 */
function equalLogLikelihoods(n: number, p: number, solution: LeastSquares): Fit['logLikelihood'] {
  const rss = solution.residualSumOfSquares;
  if (rss === 0) return { reml: null, ml: null };
  const atMaximum = (rows: number) => -0.5 * rows * (Math.log((2 * Math.PI * rss) / rows) + 1);
  return { ml: atMaximum(n), reml: atMaximum(n - p) - solution.logAbsDetR };
}

function rootDiagonal(matrix: Float64Array, p: number): Float64Array {
  return Float64Array.from({ length: p }, (_, j) => Math.sqrt(matrix[j * p + j]));
}
