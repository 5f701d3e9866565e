/**
 * First and second derivatives of the log-likelihoods (likelihood.ts, whose symbols are used here) by θ = (τ², ω²).
 *
 * With the whitened X = QR: P = Σ⁻¹ − GG', G = W'Q, and for T = P (REML) or Σ⁻¹ (ML), K₁ = K, K₂ = I
 *     score_i   = −½ [ tr(T Kᵢ) − y'P Kᵢ P y ]
 *     Hessian_ij = ½ tr(T Kᵢ T Kⱼ) − y'P Kᵢ P Kⱼ P y,   information_ij = ½ tr(T Kᵢ T Kⱼ).
 * Every trace is written out through the outer products that Σ is made of, so that one evaluation
 * costs O(n p²). (Harville 1977, J Am Stat Assoc 72:320; Searle, Casella & McCulloch 1992, ch. 6.)
 */
import { dot } from '../numerics/dot.ts';
import { leastSquares } from '../numerics/leastSquares.ts';
import {
  copy,
  type LikelihoodMethod,
  type LikelihoodRoom,
  logLikelihoodsOf,
  makeLikelihoodRoom,
  whitenAll,
} from './likelihood.ts';
import type { Observations } from './observations.ts';
import { type Whitening, type WorkingCovariance, whitenInPlace, whitenTransposedInPlace } from './whitening.ts';

export interface LikelihoodDerivatives {
  readonly value: number;
  /** Derivatives of l by (τ², ω²). */
  readonly score: readonly [number, number];
  /** Second derivatives [ττ, τω, ωω]. */
  readonly hessian: readonly [number, number, number];
  /** Expected information [ττ, τω, ωω]. */
  readonly information: readonly [number, number, number];
}

/** @param columns design, p arrays of length n, linearly independent */
export function likelihoodDerivatives(
  data: Observations,
  columns: readonly Float64Array[],
  at: WorkingCovariance,
  method: LikelihoodMethod,
  room: LikelihoodRoom = makeLikelihoodRoom(data, columns.length),
): LikelihoodDerivatives {
  const whitening = whitenAll(data, columns, at, room);
  const fit = leastSquares(room.columns, room.y, room.solution);
  const value = logLikelihoodsOf(data.n, columns.length, whitening.logDeterminant, fit)[method];
  const { g, py, inverseOnes } = room;
  for (let c = 0; c < g.length; c++) whitenTransposedInPlace(data, whitening, copy(fit.q[c], g[c]));
  whitenTransposedInPlace(data, whitening, copy(fit.residuals, py));
  whitenTransposedInPlace(data, whitening, copy(whitening.whitenedOnes, inverseOnes));
  const traces = inverseTraces(data, whitening, inverseOnes);
  const forms = quadraticForms(data, whitening, room);
  if (method === 'reml') removeFittedPart(data, whitening, room, traces);
  const information = [0.5 * traces.kk, 0.5 * traces.ki, 0.5 * traces.ii] as const;
  return {
    value,
    score: [-0.5 * (traces.k - forms.k), -0.5 * (traces.i - forms.i)],
    hessian: [information[0] - forms.kk, information[1] - forms.ki, information[2] - forms.ii],
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
  const { rootWeight, groupDirection, groupStretch, studyStretch, whitenedOnes } = whitening;
  const traces: Traces = { k: 0, i: 0, kk: 0, ki: dot(inverseOnes, inverseOnes), ii: 0 };
  for (let study = 0; study < data.studies.length; study++) {
    const kappaStudy = 1 - 1 / studyStretch[study] ** 2;
    let ones = 0;
    for (let i = data.studyStart[study]; i < data.studyStart[study + 1]; i++) ones += whitenedOnes[i] ** 2;
    // W'W1 is the study's direction without its effect, shrunk: by that it becomes b again.
    const toDirection = studyStretch[study] / Math.sqrt(ones);
    let bb = 0;
    for (let g = data.studyGroups[study]; g < data.studyGroups[study + 1]; g++) {
      const kappa = 1 - 1 / groupStretch[g] ** 2;
      let aa = 0;
      let ab = 0;
      for (let i = data.groupStart[g]; i < data.groupStart[g + 1]; i++) {
        const weight = rootWeight[i] ** 2;
        const a2 = weight * groupDirection[i] ** 2;
        const b = toDirection * inverseOnes[i];
        const b2 = b ** 2;
        aa += a2;
        ab += rootWeight[i] * groupDirection[i] * b;
        bb += b2;
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
  { g, inverseOnes, hand }: LikelihoodRoom,
  traces: Traces,
): void {
  const p = g.length;
  const gg = new Float64Array(p * p);
  for (let r = 0; r < p; r++) for (let c = 0; c <= r; c++) gg[r * p + c] = gg[c * p + r] = dot(g[r], g[c]);
  const sums = new Float64Array(p * p);
  const sum = new Float64Array(p);
  for (let study = 0; study < data.studies.length; study++) {
    let ones = 0;
    let cross = 0;
    let size2 = 0;
    const [from, to] = [data.studyStart[study], data.studyStart[study + 1]];
    for (let c = 0; c < p; c++) {
      const column = g[c];
      let total = 0;
      let weighted = 0;
      for (let i = from; i < to; i++) {
        total += column[i];
        weighted += column[i] * inverseOnes[i];
      }
      sum[c] = total;
      cross += total * weighted;
      size2 += total * total;
    }
    for (let i = from; i < to; i++) ones += whitening.whitenedOnes[i] ** 2;
    for (let r = 0; r < p; r++) for (let c = 0; c < p; c++) sums[r * p + c] += sum[r] * sum[c];
    traces.k -= size2;
    traces.kk -= 2 * ones * size2;
    traces.ki -= 2 * cross;
  }
  for (let c = 0; c < p; c++) {
    const whitened = whitenInPlace(data, whitening, copy(g[c], hand));
    traces.i -= gg[c * p + c];
    traces.ii -= 2 * dot(whitened, whitened);
  }
  traces.kk += dot(sums, sums);
  traces.ki += dot(gg, sums);
  traces.ii += dot(gg, gg);
}

/**
 * y'P K P y and y'P P y (k and i), and wᵢ'P wⱼ for w₁ = K P y and w₂ = P y (kk, ki, ii). W K z is W1 times each study's
 * sum of z.
 */
function quadraticForms(
  data: Observations,
  whitening: Whitening,
  { g, py, inverseOnes, hand }: LikelihoodRoom,
): Readonly<Traces> {
  const p = g.length;
  const forms: Traces = { k: 0, i: dot(py, py), kk: 0, ki: 0, ii: 0 };
  const alongK = new Float64Array(p);
  for (let study = 0; study < data.studies.length; study++) {
    let sum = 0;
    let ones = 0;
    let cross = 0;
    const [from, to] = [data.studyStart[study], data.studyStart[study + 1]];
    for (let i = from; i < to; i++) {
      sum += py[i];
      ones += whitening.whitenedOnes[i] ** 2;
      cross += inverseOnes[i] * py[i];
    }
    forms.k += sum * sum;
    forms.kk += sum * sum * ones;
    forms.ki += sum * cross;
    for (let c = 0; c < p; c++) {
      const column = g[c];
      let total = 0;
      for (let i = from; i < to; i++) total += column[i];
      alongK[c] += sum * total;
    }
  }
  const whitened = whitenInPlace(data, whitening, copy(py, hand));
  forms.ii = dot(whitened, whitened);
  for (let c = 0; c < p; c++) {
    const along = dot(g[c], py);
    forms.kk -= alongK[c] * alongK[c];
    forms.ki -= alongK[c] * along;
    forms.ii -= along * along;
  }
  return forms;
}
