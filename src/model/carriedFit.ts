/**
 * Fits that can carry an answer. `mixed.ts` fits whatever has a solution; here a fit is refused, with a
 * sentence, where its numbers would rest on nothing:
 *
 * - studies used up: no coefficient, variance or interval is worth its name unless at least
 *   `LEAST_SPARE_STUDIES` studies are left beside the columns that differ only between studies;
 * - one study decides: a direction of the design that a single study alone decides has no error that other studies
 *   could show;
 * - no error: the effects leave a contrast of the coefficients without any residual, so that its interval has no width;
 * - variances too uneven: inside a study they span more orders than the digits of a number can weigh;
 * - flat likelihood: τ² and ω² can be changed, together or each, with hardly a change of the likelihood.
 *
 * Under these rules every contrast has a standard error above 0 and degrees of freedom of at least 1.
 */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { median } from 'simple-statistics';
import { dot } from '../numerics/dot.ts';
import { type Fit, type FitOptions, type FitOutcome, fitDesign } from './mixed.ts';
import { arrangeColumn, arrangeObservations, type Observation, type Observations } from './observations.ts';
import type { FitFailure } from './result.ts';
import { spreadOfStudy } from './studySpread.ts';
import type { VarianceComponents } from './varianceComponents.ts';

/**
 * Studies that must be left beside the study-level columns. With 1 left, intervals meant to hold the truth in 95 %
 * held it in as few as 88 %; with 2, in 94 % or more of simulated tables (`npm run calibrate`).
 */
export const LEAST_SPARE_STUDIES = 2;
/** Studies that any fit needs: the level alone is a study-level column. */
export const LEAST_STUDIES = 1 + LEAST_SPARE_STUDIES;

/** Part of a column, as a share of its length, at or below which it does not vary inside studies: far above rounding. */
const VARIES_WITHIN = 1e-10;
/** Share of a coefficient's variance that may be hidden from the other studies; beyond rounding there is none or much. */
const HIDDEN_SHARE = 1e-6;
/**
 * Size of a study's part T (studyPart.ts) from which it alone decides: T is about s²/√(1 − s²), s² its share of the information in
 * a direction, so that the others hold less than a thousandth of it. The degrees of freedom, sums of fourth
 * powers of T that cancel, would keep fewer than nine digits beyond.
 */
const DECIDING_OVERLAP = 30;
/**
 * Largest ratio of variances inside a study, that between studies counted, whose inference keeps nine digits (seen:
 * 1e-17 of the ratio is lost). A standard error of 0.3 % beside an SD of 5 % between studies makes some 300 times the rows.
 */
const MOST_SPREAD = 1e7;
/** Least square of studies' residuals along any contrast, as a share of the effects' squares: 1e-12 of the effects. */
const LEAST_ERROR = 1e-24;
/**
 * The same in sampling variances, where weights are their inverse: effects that lie on the curve ten thousand times closer
 * than their sampling errors allow were not measured (by chance in one of a million tables of 3 studies).
 */
const LEAST_SAMPLING_ERROR = 1e-8;
/**
 * Least change of l, as its second derivative, when a variance changes by the size of all variance of a typical
 * row. Two studies beyond the columns give some 1; a ridge along which one variance stands for the other 0.
 */
const LEAST_CURVATURE = 1e-4;

/** `fitModel`, refused where the fit cannot carry an answer. */
export function fitCarried(
  observations: readonly Observation[],
  columns: readonly ArrayLike<number>[],
  options: FitOptions,
): FitOutcome {
  return fitCarriedArranged(arrangeObservations(observations), columns, options);
}

/** `fitArranged`, refused where the fit cannot carry an answer. */
export function fitCarriedArranged(
  data: Observations,
  columns: readonly ArrayLike<number>[],
  options: FitOptions,
): FitOutcome {
  return fitCarriedDesign(
    data,
    columns.map((column) => arrangeColumn(data, column)),
    options,
  );
}

/** `fitDesign`, refused where the fit cannot carry an answer. */
export function fitCarriedDesign(
  data: Observations,
  columns: readonly Float64Array[],
  options: FitOptions,
): FitOutcome {
  const outcome = fitDesign(data, columns, options);
  const { kind } = outcome.failure ?? {};
  if (kind === 'no-rows' || kind === 'too-few-rows' || kind === 'rank-deficient') return outcome;
  const failure = refuseUsedUp(data, columns) ?? (outcome.fit ? refuseFit(outcome.fit, options) : null);
  return failure ? { fit: null, failure } : outcome;
}

function refuseFit(fit: Fit, options: FitOptions): FitFailure | null {
  return refuseUneven(fit) ?? refuseDecided(fit) ?? refuseNoError(fit, options) ?? refuseFlat(fit);
}

/** Studies against the columns of the design that differ only between studies. */
function refuseUsedUp(data: Observations, columns: readonly Float64Array[]): FitFailure | null {
  const studies = data.studies.length;
  const between = columns.length - countVaryingWithin(data, columns);
  const needed = Math.max(LEAST_STUDIES, between + LEAST_SPARE_STUDIES);
  if (studies >= needed) return null;
  const have = studies === 1 ? '1 study is' : `${studies} studies are`;
  const reason =
    between > 1
      ? `${have} left for ${between} columns that differ only between studies (the level and ${between - 1} more); at least ${needed} are needed, ${LEAST_SPARE_STUDIES} more than such columns`
      : `${have} left; at least ${needed} are needed to see how studies differ`;
  return { kind: 'too-few-studies', reason };
}

/** Rank of the design inside studies: of its columns minus their studies' means. */
function countVaryingWithin(data: Observations, columns: readonly Float64Array[]): number {
  const kept: Float64Array[] = [];
  for (const column of columns) {
    const length = Math.sqrt(dot(column, column));
    const rest = column.slice();
    for (let k = 0; k < data.studies.length; k++) {
      const [from, to] = [data.studyStart[k], data.studyStart[k + 1]];
      let sum = 0;
      for (let i = from; i < to; i++) sum += column[i];
      for (let i = from; i < to; i++) rest[i] -= sum / (to - from);
    }
    // Twice, since one pass leaves what rounding of a long column brought.
    for (const unit of [...kept, ...kept]) {
      const along = dot(unit, rest);
      for (let i = 0; i < data.n; i++) rest[i] -= along * unit[i];
    }
    const size = Math.sqrt(dot(rest, rest));
    if (size > VARIES_WITHIN * length) kept.push(rest.map((value) => value / size));
  }
  return kept.length;
}

function refuseUneven({ data, whitening }: Fit): FitFailure | null {
  const spreads = data.studies.map((_, k) => spreadOfStudy(data, whitening, k));
  const most = Math.max(...spreads);
  if (most <= MOST_SPREAD) return null;
  return {
    kind: 'variances-too-uneven',
    reason: `variances in study ${data.studies[spreads.indexOf(most)]} differ ${most.toPrecision(1)} times, and up to ${MOST_SPREAD.toPrecision(1)} times can be weighed: look at its smallest standard deviation`,
  };
}

function refuseDecided({ data, inference, solution }: Fit): FitFailure | null {
  const { p, parts, forms } = inference;
  let place = 0;
  let hidden = 0;
  // The diagonal of Σ (N − T'T), which is 1 where nothing is hidden.
  for (let r = 0; r < p; r++) {
    hidden = Math.max(hidden, 1 - forms.trace[place]);
    place += p - r;
  }
  const decides = parts.some(({ overlap }) => overlap.some((value) => Math.abs(value) > DECIDING_OVERLAP));
  if (hidden <= HIDDEN_SHARE && !decides) return null;
  const shares = data.studies.map((_, k) => {
    const rows = solution.q.map((column) => column.subarray(data.studyStart[k], data.studyStart[k + 1]));
    return largestEigenvalue(rows.map((a) => rows.map((b) => dot(a, b))));
  });
  // Several may decide, each a direction of its own: the first of them, whatever the last digit says.
  const most = shares.findIndex((share) => share >= (1 - HIDDEN_SHARE) * Math.max(...shares));
  return {
    kind: 'one-study-decides',
    reason: `study ${data.studies[most]} alone decides a part of the curve or a covariate, and no other study shows how wrong that may be`,
  };
}

function refuseNoError({ data, inference, solution }: Fit, { weighting }: FitOptions): FitFailure | null {
  const { p, parts } = inference;
  let effects2 = solution.residualSumOfSquares;
  // |Wy|² is what the design explains and the rest.
  for (let r = 0; r < p; r++) {
    let explained = 0;
    for (let c = r; c < p; c++) explained += solution.r[r * p + c] * inference.coefficients[c];
    effects2 += explained * explained;
  }
  const middle = Array.from({ length: p }, (_, r) =>
    Array.from({ length: p }, (_, c) => parts.reduce((sum, { score }) => sum + score[r] * score[c], 0)),
  );
  const least = Math.max(LEAST_ERROR * effects2, weighting === 'equal' ? 0 : LEAST_SAMPLING_ERROR);
  if (smallestEigenvalue(middle) > least) return null;
  return {
    kind: 'no-error',
    reason: `the ${data.n} effects of ${data.studies.length} studies leave a part of the fit without error, so that nothing shows how wrong it may be`,
  };
}

function refuseFlat({ data, components }: Fit): FitFailure | null {
  if (!components || curvatureOf(data, components) >= LEAST_CURVATURE) return null;
  return {
    kind: 'flat-likelihood',
    reason: `the likelihood is flat: ${data.n} rows of ${data.studies.length} studies do not tell the variance between studies from that between rows`,
  };
}

/** Least second derivative of −l along the variances that were estimated above 0, in typical variances of a row. */
function curvatureOf(data: Observations, { tau2, omega2, hessian, free }: VarianceComponents): number {
  const scale = (median(Array.from(data.v)) + tau2 + omega2) ** 2;
  const [tt, to, oo] = hessian.map((value) => -value * scale);
  const moving = [tau2 > 0, free[1] && omega2 > 0];
  if (moving[0] && moving[1]) {
    return smallestEigenvalue([
      [tt, to],
      [to, oo],
    ]);
  }
  return moving[0] ? tt : moving[1] ? oo : Number.POSITIVE_INFINITY;
}

function eigenvaluesOf(matrix: readonly (readonly number[])[]): readonly number[] {
  return new EigenvalueDecomposition(new Matrix(matrix.map((row) => [...row])), { assumeSymmetric: true })
    .realEigenvalues;
}

function smallestEigenvalue(matrix: readonly (readonly number[])[]): number {
  return Math.min(...eigenvaluesOf(matrix));
}

function largestEigenvalue(matrix: readonly (readonly number[])[]): number {
  return Math.max(...eigenvaluesOf(matrix));
}
