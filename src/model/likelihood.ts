/**
 * Log-likelihood of y = X β + u(study) + a(row) + e in θ = (τ², ω²), β profiled out.
 *
 *     Σ = V + τ² K + ω² I     K: 1 where two rows are of one study
 *     l_ML   = −½ [ n ln 2π + ln|Σ| + RSS ]
 *     l_REML = −½ [ (n − p) ln 2π + ln|Σ| + ln|X'Σ⁻¹X| + RSS ]
 *
 * With the whitened X = QR: P = Σ⁻¹ − GG', G = W'Q, and for T = P (REML) or Σ⁻¹ (ML), K₁ = K, K₂ = I
 *     score_i   = −½ [ tr(T Kᵢ) − y'P Kᵢ P y ]
 *     Hessian_ij = ½ tr(T Kᵢ T Kⱼ) − y'P Kᵢ P Kⱼ P y,   information_ij = ½ tr(T Kᵢ T Kⱼ).
 * Every trace is written out through the outer products that Σ is made of, so that one evaluation
 * costs O(n p²). (Harville 1977, J Am Stat Assoc 72:320; Searle, Casella & McCulloch 1992, ch. 6.)
 */
import { dot } from '../numerics/dot.ts';
import { type LeastSquares, leastSquares, triangularise } from '../numerics/leastSquares.ts';
import type { Observations } from './observations.ts';
import {
  applyWhitening,
  applyWhiteningTransposed,
  type Whitening,
  type WorkingCovariance,
  whiten,
} from './whitening.ts';

export type LikelihoodMethod = 'reml' | 'ml';

export interface LogLikelihoods {
  readonly reml: number;
  readonly ml: number;
}

export interface LikelihoodDerivatives {
  readonly value: number;
  /** Derivatives of l by (τ², ω²). */
  readonly score: readonly [number, number];
  /** Second derivatives [ττ, τω, ωω]. */
  readonly hessian: readonly [number, number, number];
  /** Expected information [ττ, τω, ωω]. */
  readonly information: readonly [number, number, number];
}

/** l at the given covariance; −Infinity where the columns are dependent. */
export function logLikelihoods(
  data: Observations,
  columns: readonly Float64Array[],
  at: WorkingCovariance,
): LogLikelihoods {
  const whitening = whiten(data, at);
  const factor = triangularise(
    columns.map((column) => applyWhitening(data, whitening, column)),
    applyWhitening(data, whitening, data.y),
  );
  return logLikelihoodsOf(data.n, columns.length, whitening.logDeterminant, factor);
}

/**
 * The likelihoods of a whitened fit; −Infinity where its columns are dependent.
 *
 * @param n rows
 * @param p columns
 * @param logDeterminant ln |Σ|
 */
export function logLikelihoodsOf(
  n: number,
  p: number,
  logDeterminant: number,
  fit: Pick<LeastSquares, 'residualSumOfSquares' | 'logAbsDetR' | 'fullRank'>,
): LogLikelihoods {
  if (!fit.fullRank) return { reml: Number.NEGATIVE_INFINITY, ml: Number.NEGATIVE_INFINITY };
  const core = logDeterminant + fit.residualSumOfSquares;
  return {
    reml: -0.5 * ((n - p) * Math.log(2 * Math.PI) + core + 2 * fit.logAbsDetR),
    ml: -0.5 * (n * Math.log(2 * Math.PI) + core),
  };
}

/** @param columns design, p arrays of length n, linearly independent */
export function likelihoodDerivatives(
  data: Observations,
  columns: readonly Float64Array[],
  at: WorkingCovariance,
  method: LikelihoodMethod,
): LikelihoodDerivatives {
  const whitening = whiten(data, at);
  const fit = leastSquares(
    columns.map((column) => applyWhitening(data, whitening, column)),
    applyWhitening(data, whitening, data.y),
  );
  const value = logLikelihoodsOf(data.n, columns.length, whitening.logDeterminant, fit)[method];
  const g = fit.q.map((column) => applyWhiteningTransposed(data, whitening, column));
  const py = applyWhiteningTransposed(data, whitening, fit.residuals);
  const kpy = spreadStudySums(data, py);
  const [q11, q12, q22] = quadraticForms(data, whitening, g, kpy, py);
  const inverseOnes = applyWhiteningTransposed(data, whitening, whitening.whitenedOnes);
  const traces = inverseTraces(data, whitening, inverseOnes);
  if (method === 'reml') removeFittedPart(data, whitening, inverseOnes, g, traces);
  const information = [0.5 * traces.kk, 0.5 * traces.ki, 0.5 * traces.ii] as const;
  return {
    value,
    score: [-0.5 * (traces.k - dot(py, kpy)), -0.5 * (traces.i - dot(py, py))],
    hessian: [information[0] - q11, information[1] - q12, information[2] - q22],
    information,
  };
}

/** Traces of T K, T, T K T K, T K T and T T. */
interface Traces {
  k: number;
  i: number;
  kk: number;
  ki: number;
  ii: number;
}

/** The traces for T = Σ⁻¹, from Σ⁻¹ = D⁻¹ − Σ_g κ_g aa' − Σ_k κ_k bb'. */
function inverseTraces(data: Observations, whitening: Whitening, inverseOnes: Float64Array): Traces {
  const { rootWeight, groupDirection, groupStretch, studyDirection, studyStretch, whitenedOnes } = whitening;
  const withoutStudies = { ...whitening, at: { ...whitening.at, tau2: 0 } };
  const b = applyWhiteningTransposed(data, withoutStudies, studyDirection);
  const traces: Traces = { k: 0, i: 0, kk: 0, ki: dot(inverseOnes, inverseOnes), ii: 0 };
  for (let study = 0; study < data.studies.length; study++) {
    const kappaStudy = 1 - 1 / studyStretch[study] ** 2;
    let ones = 0;
    let bb = 0;
    for (let g = data.studyGroups[study]; g < data.studyGroups[study + 1]; g++) {
      const kappa = 1 - 1 / groupStretch[g] ** 2;
      let aa = 0;
      let ab = 0;
      for (let i = data.groupStart[g]; i < data.groupStart[g + 1]; i++) {
        const weight = rootWeight[i] ** 2;
        const a2 = weight * groupDirection[i] ** 2;
        const b2 = b[i] ** 2;
        aa += a2;
        ab += rootWeight[i] * groupDirection[i] * b[i];
        bb += b2;
        ones += whitenedOnes[i] ** 2;
        traces.i += weight;
        traces.ii += weight * (weight - 2 * kappa * a2 - 2 * kappaStudy * b2);
      }
      traces.i -= kappa * aa;
      traces.ii += kappa * (kappa * aa * aa + 2 * kappaStudy * ab * ab);
    }
    traces.i -= kappaStudy * bb;
    traces.ii += (kappaStudy * bb) ** 2;
    traces.k += ones;
    traces.kk += ones * ones;
  }
  return traces;
}

/** Turns the traces for Σ⁻¹ into those for P = Σ⁻¹ − GG', in place. */
function removeFittedPart(
  data: Observations,
  whitening: Whitening,
  inverseOnes: Float64Array,
  g: readonly Float64Array[],
  traces: Traces,
): void {
  const p = g.length;
  const whitenedG = g.map((column) => applyWhitening(data, whitening, column));
  const gg = new Float64Array(p * p);
  for (let r = 0; r < p; r++) for (let c = 0; c < p; c++) gg[r * p + c] = dot(g[r], g[c]);
  const sums = new Float64Array(p * p);
  const sum = new Float64Array(p);
  for (let study = 0; study < data.studies.length; study++) {
    let ones = 0;
    let cross = 0;
    let size2 = 0;
    for (let c = 0; c < p; c++) {
      let total = 0;
      let weighted = 0;
      for (let i = data.studyStart[study]; i < data.studyStart[study + 1]; i++) {
        total += g[c][i];
        weighted += g[c][i] * inverseOnes[i];
      }
      sum[c] = total;
      cross += total * weighted;
      size2 += total * total;
    }
    for (let i = data.studyStart[study]; i < data.studyStart[study + 1]; i++) ones += whitening.whitenedOnes[i] ** 2;
    for (let r = 0; r < p; r++) for (let c = 0; c < p; c++) sums[r * p + c] += sum[r] * sum[c];
    traces.k -= size2;
    traces.kk -= 2 * ones * size2;
    traces.ki -= 2 * cross;
  }
  for (let c = 0; c < p; c++) {
    traces.i -= gg[c * p + c];
    traces.ii -= 2 * dot(whitenedG[c], whitenedG[c]);
  }
  traces.kk += dot(sums, sums);
  traces.ki += dot(gg, sums);
  traces.ii += dot(gg, gg);
}

/** wᵢ'P wⱼ for w₁ = K P y and w₂ = P y: [11, 12, 22]. */
function quadraticForms(
  data: Observations,
  whitening: Whitening,
  g: readonly Float64Array[],
  w1: Float64Array,
  w2: Float64Array,
): [number, number, number] {
  const whitened1 = applyWhitening(data, whitening, w1);
  const whitened2 = applyWhitening(data, whitening, w2);
  let q11 = dot(whitened1, whitened1);
  let q12 = dot(whitened1, whitened2);
  let q22 = dot(whitened2, whitened2);
  for (const column of g) {
    const along1 = dot(column, w1);
    const along2 = dot(column, w2);
    q11 -= along1 * along1;
    q12 -= along1 * along2;
    q22 -= along2 * along2;
  }
  return [q11, q12, q22];
}

/** K z: each row gets its study's sum. */
function spreadStudySums(data: Observations, z: Float64Array): Float64Array {
  const out = new Float64Array(data.n);
  for (let k = 0; k < data.studies.length; k++) {
    let sum = 0;
    for (let i = data.studyStart[k]; i < data.studyStart[k + 1]; i++) sum += z[i];
    out.fill(sum, data.studyStart[k], data.studyStart[k + 1]);
  }
  return out;
}
