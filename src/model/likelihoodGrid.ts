/**
 * Log-likelihoods on a grid of (τ², ω²): to see where an ascent should start, at a fraction of the cost
 * of as many evaluations.
 *
 * With the unweighted X = QR and e = y − Xb, what a likelihood needs is the matrix of inner products of
 * Z = [Q e] under Σ⁻¹: its Cholesky factor ends in √RSS, and |X'Σ⁻¹X| = |Q'Σ⁻¹Q| |R|². For a given ω²
 * one pass over the rows gives those of every study without its shared effect,
 *     A = Z'Σ₀⁻¹Z,  b_k = Z_k'Σ₀⁻¹1,  o_k = 1'Σ₀⁻¹1     (Σ₀ = Σ at τ² = 0; a cohort by Sherman & Morrison 1950)
 * and each τ² then costs a pass over the studies: A − Σ_k τ²/(1 + τ² o_k) b_k b_k'.
 *
 * Inner products keep half the digits that a QR would. Q and e are chosen so that little is lost, and a
 * point where more than `LEAST_KEPT` says could be lost is evaluated by QR instead. What a fit reports
 * is never taken from here.
 */
import type { LeastSquares } from '../numerics/leastSquares.ts';
import { packRows } from '../numerics/smallMatrices.ts';
import { type LogLikelihoods, logLikelihoods, logLikelihoodsOf } from './likelihood.ts';
import type { Observations } from './observations.ts';

/** Least share of an inner product that may be left after subtraction: some 10 of 16 digits then stand. */
const LEAST_KEPT = 1e-6;
/** Bounds between which a product of variances is kept, far from what a double can hold. */
const PRODUCT_BOUND = 1e150;

/**
 * @param columns design, p arrays of length n
 * @param plain unweighted least squares of the same columns
 * @param rho correlation of sampling errors inside a cohort
 * @returns row i, column j: at (taus[i], omegas[j])
 */
export function gridLikelihoods(
  data: Observations,
  columns: readonly Float64Array[],
  plain: LeastSquares,
  rho: number,
  taus: readonly number[],
  omegas: readonly number[],
): readonly (readonly LogLikelihoods[])[] {
  const exactly = (tau2: number, omega2: number) => logLikelihoods(data, columns, { tau2, omega2, rho });
  if (!plain.fullRank) return taus.map((tau2) => omegas.map((omega2) => exactly(tau2, omega2)));
  const z = packRows([...plain.q, plain.residuals], data.n);
  const products = omegas.map((omega2) => sumProducts(data, z, columns.length + 1, rho, omega2));
  return taus.map((tau2) =>
    omegas.map((omega2, j) => withStudies(data, products[j], tau2, plain) ?? exactly(tau2, omega2)),
  );
}

/** Inner products of Z under Σ₀⁻¹, m columns. */
interface Products {
  /** A, lower triangle, m×m row-major. */
  readonly whole: Float64Array;
  /** b_k, m numbers a study. */
  readonly along: Float64Array;
  /** o_k of each study. */
  readonly ones: Float64Array;
  /** ln |Σ₀|. */
  readonly logDeterminant: number;
}

function sumProducts(data: Observations, z: Float64Array, m: number, rho: number, omega2: number): Products {
  const { v, groupStart, studies, studyGroups } = data;
  const whole = new Float64Array(m * m);
  const along = new Float64Array(studies.length * m);
  const ones = new Float64Array(studies.length);
  const shared = new Float64Array(m);
  let logDeterminant = 0;
  let product = 1;
  for (let k = 0; k < studies.length; k++) {
    for (let g = studyGroups[k]; g < studyGroups[k + 1]; g++) {
      const from = groupStart[g];
      const to = groupStart[g + 1];
      const alone = to - from === 1;
      let sharedOnes = 0;
      let size = 0;
      for (let i = from; i < to; i++) {
        const d = (alone ? v[i] : (1 - rho) * v[i]) + omega2;
        product *= d;
        if (!(product > 1 / PRODUCT_BOUND && product < PRODUCT_BOUND)) {
          logDeterminant += Math.log(product);
          product = 1;
        }
        const weight = 1 / d;
        ones[k] += weight;
        for (let a = 0; a < m; a++) {
          const weighed = z[i * m + a] * weight;
          along[k * m + a] += weighed;
          for (let b = 0; b <= a; b++) whole[a * m + b] += weighed * z[i * m + b];
        }
        if (alone || rho === 0) continue;
        const deviation = Math.sqrt(v[i]) * weight;
        sharedOnes += deviation;
        size += v[i] * weight;
        for (let a = 0; a < m; a++) shared[a] += deviation * z[i * m + a];
      }
      if (alone || rho === 0) continue;
      const share = rho / (1 + rho * size);
      product *= 1 + rho * size;
      ones[k] -= share * sharedOnes * sharedOnes;
      for (let a = 0; a < m; a++) {
        along[k * m + a] -= share * sharedOnes * shared[a];
        for (let b = 0; b <= a; b++) whole[a * m + b] -= share * shared[a] * shared[b];
      }
      shared.fill(0);
    }
  }
  return { whole, along, ones, logDeterminant: logDeterminant + Math.log(product) };
}

/** The likelihoods with the studies' shared effects; null where too many digits would be lost. */
function withStudies(
  data: Observations,
  { whole, along, ones, logDeterminant }: Products,
  tau2: number,
  plain: LeastSquares,
): LogLikelihoods | null {
  // A variance below what a product of them can hold.
  if (!Number.isFinite(logDeterminant)) return null;
  const p = plain.q.length;
  const m = p + 1;
  const a = whole.slice();
  let logStretch = logDeterminant;
  if (tau2 > 0) {
    for (let k = 0; k < ones.length; k++) {
      const stretch = 1 + tau2 * ones[k];
      const kappa = tau2 / stretch;
      logStretch += Math.log(stretch);
      for (let r = 0; r < m; r++) {
        const part = kappa * along[k * m + r];
        for (let c = 0; c <= r; c++) a[r * m + c] -= part * along[k * m + c];
      }
    }
  }
  let logRoot = 0;
  for (let j = 0; j < m; j++) {
    for (let c = 0; c < j; c++) {
      for (let d = 0; d < c; d++) a[j * m + c] -= a[j * m + d] * a[c * m + d];
      a[j * m + c] /= a[c * m + c];
      a[j * m + j] -= a[j * m + c] * a[j * m + c];
    }
    if (!(a[j * m + j] > LEAST_KEPT * whole[j * m + j])) return null;
    if (j === p) break;
    a[j * m + j] = Math.sqrt(a[j * m + j]);
    logRoot += Math.log(a[j * m + j]);
  }
  return logLikelihoodsOf(data.n, p, logStretch, {
    residualSumOfSquares: a[p * m + p],
    logAbsDetR: logRoot + plain.logAbsDetR,
    fullRank: true,
  });
}
