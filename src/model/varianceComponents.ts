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

import { type LeastSquares, leastSquares } from '../numerics/leastSquares.ts';
import { type LikelihoodMethod, logLikelihoods, makeLikelihoodRoom } from './likelihood.ts';
import { type LikelihoodDerivatives, likelihoodDerivatives } from './likelihoodDerivatives.ts';
import { gridLikelihoods } from './likelihoodGrid.ts';
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
  /** Second derivatives of l there by (τ², ω²): [ττ, τω, ωω]. */
  readonly hessian: readonly [number, number, number];
  /** Local maxima found; above 1 the data speak for two different splits of the variance. */
  readonly maxima: number;
  /** Newton steps of the ascent that won. */
  readonly iterations: number;
  readonly converged: boolean;
}

/**
 * Grid of starts in shares of the residual variance of unweighted least squares: from 0 by factors
 * of about 12 to twice the whole, beyond which no variance component can reasonably lie.
 */
const GRID_SHARES = [0, 0.001, 0.015, 0.2, 2] as const;
/** Least scale of the grid, as a share of the smallest sampling variance. */
const LEAST_SPREAD = 1e-6;
/** Steps of an ascent at most; one that arrives takes some five to ten. */
const MOST_STEPS = 100;
/** A step that moves no component by more than this share has arrived: Newton's error is then its square. */
const STEP_TOLERANCE = 1e-9;
/** Share of |l| below which a change of l is rounding. */
const VALUE_ROUNDING = 1e-12;
/** Difference of l beyond which two maxima count as different. */
const SAME_MAXIMUM = 1e-6;

/** A promised gain of l below this share of |l| is lost in its rounding over some thousand rows. */
const FLAT_GAIN = 1e-8;
/** Halvings after which a step has shrunk to rounding: 2⁻⁴⁰. */
const MOST_HALVINGS = 40;

type Theta = readonly [number, number];
type Height = (theta: Theta) => number;
type Derive = (theta: Theta) => LikelihoodDerivatives;

/**
 * Maximises the likelihoods asked for, which share the grid of starts.
 *
 * @param data observations
 * @param columns design, p arrays of length n, linearly independent
 * @param rho correlation of sampling errors inside a cohort
 * @param methods which likelihoods
 * @param plain unweighted least squares of the columns, where it is known already
 */
export function estimateVarianceComponents<Method extends LikelihoodMethod>(
  data: Observations,
  columns: readonly Float64Array[],
  rho: number,
  methods: readonly Method[],
  plain: LeastSquares = leastSquares(columns, data.y),
): Readonly<Record<Method, VarianceComponents>> {
  // One row a study: only τ² + ω² is identified, so ω² is 0 by convention.
  const free: readonly [boolean, boolean] = [true, data.studies.length < data.n];
  const at = ([tau2, omega2]: Theta) => ({ tau2, omega2, rho });
  const spread = residualVariance(data, plain);
  const taus = GRID_SHARES.map((share) => share * spread);
  const omegas = free[1] ? taus : [0];
  const heights = gridLikelihoods(data, columns, plain, rho, taus, omegas);
  const room = makeLikelihoodRoom(data, columns.length);
  const peaksOf = (method: LikelihoodMethod) => findPeaks(heights.map((row) => row.map((both) => both[method])));
  const maximise = (method: LikelihoodMethod, starts: readonly Theta[]) => {
    const height: Height = (theta) => logLikelihoods(data, columns, at(theta), room)[method];
    const derive: Derive = (theta) => likelihoodDerivatives(data, columns, at(theta), method, room);
    return chooseBest(
      starts.map((start) => climb(start, height, derive, free)),
      free,
    );
  };
  const results: [Method, VarianceComponents][] = [];
  for (const method of methods) {
    const starts = peaksOf(method).map(([i, j]): Theta => [taus[i], omegas[j]]);
    // Where both likelihoods have one hill the maxima are neighbours, and the other one's is the nearer start.
    const known = results.find(([, { maxima, converged }]) => maxima === 1 && converged)?.[1];
    const near: Theta | null = known && starts.length === 1 ? [known.tau2, known.omega2] : null;
    results.push([method, maximise(method, near ? [near] : starts)]);
  }
  return Object.fromEntries(results) as Record<Method, VarianceComponents>;
}

function chooseBest(ascents: readonly Ascent[], free: readonly [boolean, boolean]): VarianceComponents {
  const highest = ascents.reduce((a, b) => (b.value > a.value ? b : a));
  // Where covariates leave nothing to τ², l is level along it and one ascent may wander without arriving.
  const level = ascents.filter(({ converged, value }) => converged && highest.value - value <= SAME_MAXIMUM);
  // Of maxima that are equally high the one with the least variance between studies: not the one that rounding favours.
  const best = level.length > 0 ? level.reduce((a, b) => (b.theta[0] < a.theta[0] ? b : a)) : highest;
  const heights = ascents.map(({ value }) => value).sort((a, b) => a - b);
  return {
    tau2: best.theta[0],
    omega2: best.theta[1],
    logLikelihood: best.value,
    hessian: best.hessian,
    free,
    boundary: { tau2: best.theta[0] === 0, omega2: free[1] && best.theta[1] === 0 },
    maxima: heights.filter((value, i) => i === 0 || value - heights[i - 1] > SAME_MAXIMUM).length,
    iterations: best.steps,
    converged: best.converged,
  };
}

/** Residual variance of unweighted least squares: the scale of the grid. */
function residualVariance(data: Observations, { residualSumOfSquares, q }: LeastSquares): number {
  const perRow = residualSumOfSquares / Math.max(1, data.n - q.length);
  // Data on a line have no residual; the sampling variances then give the scale.
  return Math.max(perRow, LEAST_SPREAD * data.v.reduce((least, v) => Math.min(least, v), Number.POSITIVE_INFINITY));
}

/** Places in a grid that none of their neighbours beats. */
function findPeaks(heights: readonly (readonly number[])[]): (readonly [number, number])[] {
  const peaks: (readonly [number, number])[] = [];
  heights.forEach((row, i) => {
    row.forEach((height, j) => {
      const around = heights.slice(Math.max(0, i - 1), i + 2).map((near) => near.slice(Math.max(0, j - 1), j + 2));
      if (around.flat().every((other) => other <= height)) peaks.push([i, j]);
    });
  });
  return peaks;
}

interface Ascent {
  readonly theta: Theta;
  readonly value: number;
  readonly hessian: LikelihoodDerivatives['hessian'];
  readonly steps: number;
  readonly converged: boolean;
}

function climb(start: Theta, height: Height, derive: Derive, free: readonly [boolean, boolean]): Ascent {
  let theta = start;
  let here = derive(theta);
  for (let steps = 1; steps <= MOST_STEPS; steps++) {
    // A component rests at 0 while the likelihood falls into the quadrant.
    const moving = [0, 1].map((i) => free[i] && (theta[i] > 0 || here.score[i] > 0));
    const step = ascentStep(here, moving);
    const next = advance(theta, here.value, step, height, derive);
    if (next === null) return { theta, value: here.value, hessian: here.hessian, steps, converged: isFlat(here, step) };
    const arrived = [0, 1].every((i) => Math.abs(next.theta[i] - theta[i]) <= STEP_TOLERANCE * next.theta[i]);
    theta = next.theta;
    here = next.derived;
    if (arrived) return { theta, value: here.value, hessian: here.hessian, steps, converged: true };
  }
  return { theta, value: here.value, hessian: here.hessian, steps: MOST_STEPS, converged: false };
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

/**
 * The whole step, or its longest halving, kept in the quadrant, that does not lower l; null where
 * none does.
 */
function advance(theta: Theta, from: number, step: Theta, height: Height, derive: Derive) {
  const least = from - VALUE_ROUNDING * Math.abs(from);
  let share = 1;
  for (let halving = 0; halving <= MOST_HALVINGS; halving++, share /= 2) {
    const next: Theta = [Math.max(0, theta[0] + share * step[0]), Math.max(0, theta[1] + share * step[1])];
    if (next[0] === theta[0] && next[1] === theta[1]) return null;
    // Most steps are taken whole, so the first trial already pays for the derivatives there.
    if (halving > 0 && height(next) < least) continue;
    const derived = derive(next);
    if (derived.value >= least) return { theta: next, derived };
  }
  return null;
}

/** No step helps: a maximum within precision if the gain that a whole step promises is rounding. */
function isFlat(here: LikelihoodDerivatives, step: Theta): boolean {
  return Math.abs(step[0] * here.score[0] + step[1] * here.score[1]) <= FLAT_GAIN * (1 + Math.abs(here.value));
}
