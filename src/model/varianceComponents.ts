/**
 * Variance components by (restricted) maximum likelihood, with the boundary at 0.
 *
 * l can have two maxima, and its maximum can lie on τ² = 0, on ω² = 0 or on both. So l is first
 * evaluated on a grid that holds both edges; from every point of the grid that no neighbour beats a
 * Newton ascent starts, with the second derivatives of l where l is concave and the expected
 * information where it is not. A step that leaves the quadrant stops at the edge; a component on the
 * edge whose score points outwards stays there. The best maximum wins, and a start is never traded
 * for a worse value.
 */

import { leastSquares } from '../numerics/leastSquares.ts';
import {
  type LikelihoodDerivatives,
  type LikelihoodMethod,
  likelihoodDerivatives,
  logLikelihoods,
} from './likelihood.ts';
import type { Observations } from './observations.ts';

export interface VarianceComponents {
  readonly tau2: number;
  readonly omega2: number;
  /** l at the maximum, of the method asked for. */
  readonly logLikelihood: number;
  /** Which of (τ², ω²) were estimated; the other is fixed at 0. */
  readonly free: readonly [boolean, boolean];
  /** True where a free component has its maximum at 0. */
  readonly boundary: { readonly tau2: boolean; readonly omega2: boolean };
  /** Local maxima found; above 1 the data speak for two different splits of the variance. */
  readonly maxima: number;
  /** Newton steps of the ascent that won. */
  readonly iterations: number;
  readonly converged: boolean;
}

/**
 * Grid of starts in shares of the residual variance of unweighted least squares: from 0 by factors
 * of about 8 to twice the whole, beyond which no variance component can reasonably lie.
 */
const GRID_SHARES = [0, 0.0005, 0.004, 0.03, 0.25, 2] as const;
const MOST_STEPS = 100;
/** A step that moves no component by more than this share has arrived: Newton's error is then its square. */
const STEP_TOLERANCE = 1e-9;
/** Share of |l| below which a change of l is rounding. */
const VALUE_ROUNDING = 1e-12;
/** Difference of l beyond which two maxima count as different. */
const SAME_MAXIMUM = 1e-6;

type Theta = readonly [number, number];

/**
 * @param data observations
 * @param columns design, p arrays of length n, linearly independent
 * @param rho correlation of sampling errors inside a cohort
 * @param method which likelihood is maximised
 */
export function estimateVarianceComponents(
  data: Observations,
  columns: readonly Float64Array[],
  rho: number,
  method: LikelihoodMethod,
): VarianceComponents {
  // One row a study: only τ² + ω² is identified, so ω² is 0 by convention.
  const free: readonly [boolean, boolean] = [true, data.studies.length < data.n];
  const covariance = ([tau2, omega2]: Theta) => ({ tau2, omega2, rho });
  const value = (theta: Theta) => logLikelihoods(data, columns, covariance(theta))[method];
  const derive = (theta: Theta) => likelihoodDerivatives(data, columns, covariance(theta), method);
  const spread = residualVariance(data, columns);
  const ascents = peaksOfGrid(value, spread, free).map((start) => climb(start, value, derive, free));
  const best = ascents.reduce((a, b) => (b.value > a.value ? b : a));
  const heights = [...ascents].sort((a, b) => a.value - b.value);
  const maxima = heights.filter((a, i) => i === 0 || a.value - heights[i - 1].value > SAME_MAXIMUM).length;
  return {
    tau2: best.theta[0],
    omega2: best.theta[1],
    logLikelihood: best.value,
    free,
    boundary: { tau2: best.theta[0] === 0, omega2: free[1] && best.theta[1] === 0 },
    maxima,
    iterations: best.steps,
    converged: best.converged,
  };
}

/** Residual variance of unweighted least squares: the scale of the grid. */
function residualVariance(data: Observations, columns: readonly Float64Array[]): number {
  const { residualSumOfSquares } = leastSquares(columns, data.y);
  const perRow = residualSumOfSquares / Math.max(1, data.n - columns.length);
  // Data on a line have no residual; the sampling variances then give the scale.
  return Math.max(perRow, 1e-6 * data.v.reduce((least, v) => Math.min(least, v), Number.POSITIVE_INFINITY));
}

/** Grid points that none of their neighbours beats. */
function peaksOfGrid(value: (theta: Theta) => number, spread: number, free: readonly [boolean, boolean]): Theta[] {
  const axis = (isFree: boolean) => (isFree ? GRID_SHARES.map((share) => share * spread) : [0]);
  const taus = axis(free[0]);
  const omegas = axis(free[1]);
  const heights = taus.map((tau2) => omegas.map((omega2) => value([tau2, omega2])));
  const peaks: Theta[] = [];
  for (let i = 0; i < taus.length; i++) {
    for (let j = 0; j < omegas.length; j++) {
      let beaten = false;
      for (let a = Math.max(0, i - 1); a <= Math.min(taus.length - 1, i + 1); a++)
        for (let b = Math.max(0, j - 1); b <= Math.min(omegas.length - 1, j + 1); b++)
          if (heights[a][b] > heights[i][j]) beaten = true;
      if (!beaten) peaks.push([taus[i], omegas[j]]);
    }
  }
  return peaks;
}

interface Ascent {
  readonly theta: Theta;
  readonly value: number;
  readonly steps: number;
  readonly converged: boolean;
}

function climb(
  start: Theta,
  value: (theta: Theta) => number,
  derive: (theta: Theta) => LikelihoodDerivatives,
  free: readonly [boolean, boolean],
): Ascent {
  let theta = start;
  let here = derive(theta);
  for (let steps = 1; steps <= MOST_STEPS; steps++) {
    // A component rests at 0 while the likelihood falls into the quadrant.
    const moving = [0, 1].map((i) => free[i] && (theta[i] > 0 || here.score[i] > 0));
    const step = ascentStep(here, moving);
    const next = lineSearch(theta, here.value, step, value);
    if (next === null)
      return { theta, value: here.value, steps, converged: !moving.some(Boolean) || isFlat(here, theta, moving) };
    const arrived = [0, 1].every((i) => Math.abs(next[i] - theta[i]) <= STEP_TOLERANCE * next[i]);
    theta = next;
    here = derive(theta);
    if (arrived) return { theta, value: here.value, steps, converged: true };
  }
  return { theta, value: here.value, steps: MOST_STEPS, converged: false };
}

/** Newton step on the moving components; Fisher's where l is not concave there. */
function ascentStep({ score, hessian, information }: LikelihoodDerivatives, moving: readonly boolean[]): Theta {
  const solve = (matrix: readonly [number, number, number], sign: number): Theta | null => {
    const [a, b, c] = matrix.map((entry) => sign * entry);
    if (moving[0] && moving[1]) {
      const determinant = a * c - b * b;
      if (!(a > 0 && determinant > 0)) return null;
      return [(c * score[0] - b * score[1]) / determinant, (a * score[1] - b * score[0]) / determinant];
    }
    if (moving[0]) return a > 0 ? [score[0] / a, 0] : null;
    if (moving[1]) return c > 0 ? [0, score[1] / c] : null;
    return [0, 0];
  };
  return solve(hessian, -1) ?? solve(information, 1) ?? [moving[0] ? score[0] : 0, moving[1] ? score[1] : 0];
}

/** Longest halving of the step, kept in the quadrant, that does not lower l; null where none does. */
function lineSearch(theta: Theta, height: number, step: Theta, value: (theta: Theta) => number): Theta | null {
  const MOST_HALVINGS = 40;
  let share = 1;
  for (let halving = 0; halving < MOST_HALVINGS; halving++, share /= 2) {
    const next: Theta = [Math.max(0, theta[0] + share * step[0]), Math.max(0, theta[1] + share * step[1])];
    if (next[0] === theta[0] && next[1] === theta[1]) return null;
    if (value(next) >= height - VALUE_ROUNDING * Math.abs(height)) return next;
  }
  return null;
}

/** No step helps and the predicted gain of a whole one is rounding: a maximum within precision. */
function isFlat(here: LikelihoodDerivatives, theta: Theta, moving: readonly boolean[]): boolean {
  const step = ascentStep(here, moving);
  const gain = Math.abs(step[0] * here.score[0] + step[1] * here.score[1]);
  return gain <= 1e-8 * (1 + Math.abs(here.value)) && theta.every(Number.isFinite);
}
