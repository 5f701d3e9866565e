/**
 * CR2: the cluster-robust covariance of a fit's coefficients, studies being the clusters.
 *
 * (Bell & McCaffrey 2002, Surv Methodol 28:169; Pustejovsky & Tipton 2018, J Bus Econ Stat 36:672.)
 * Under the working covariance Φ, weights Φ⁻¹, M = (X'Φ⁻¹X)⁻¹, residuals e:
 *     V = M [ Σ_k X_k'Φ_k⁻¹ A_k e_k e_k' A_k Φ_k⁻¹ X_k ] M,   A_k S_k A_k = Φ_k,   S_k = Φ_k − X_k M X_k'.
 * With the whitening Φ_k = CC', the whitened X = QR and F = C'C, everything a study contributes is small:
 *     B = F (I − QQ') F,  A = C B^{+½} C',  U = B^{+½} Q  (m×p)
 *     contribution to V   s s'   with  s = R⁻¹ U'F (C⁻¹ e_k)
 *     to the df           N = U'F²U,  T = Q'F U   (satterthwaite.ts).
 * B^{+½} does not depend on which root C is taken. What a contrast is worth is asked in robust.ts.
 *
 * θ = (τ², ω²) is treated as known: neither V nor df carries its uncertainty.
 */
import type { LeastSquares } from '../numerics/leastSquares.ts';
import { bilinear, blockDiagonal, identity, unitVector } from '../numerics/smallMatrices.ts';
import type { Observations } from './observations.ts';
import { type ContrastInference, toScores } from './robust.ts';
import { sumQuarticForms } from './satterthwaite.ts';
import type { StudyPart } from './studyPart.ts';
import { studyParts } from './studyParts.ts';
import type { Whitening } from './whitening.ts';

/** The inference on a fit's coefficients, with what it was made of. */
export interface RobustInference extends ContrastInference {
  /** M, covariance under the working model, p×p row-major. */
  readonly modelCovariance: Float64Array;
  /** Directions in which a study is fitted perfectly, whatever its data (dropped eigenvalues). */
  readonly dropped: number;
  /** One a study, in the order of the observations' studies. */
  readonly parts: readonly StudyPart[];
}

/**
 * @param data observations
 * @param whitening of the working covariance Φ
 * @param fit least squares of the whitened data, of full rank
 */
export function robustInference(data: Observations, whitening: Whitening, fit: LeastSquares): RobustInference {
  const { parts, dropped } = studyParts(data, whitening, fit);
  return assemble(fit.coefficients, parts, fit.r, dropped);
}

/**
 * The inference of two fits side by side: coefficients of the first, then of the second, as if both
 * were one regression whose blocks share no coefficient and, in the working model, no covariance.
 * A study in both is one cluster, so that what it does to both estimates at once is counted.
 */
export function stackInference(first: RobustInference, second: RobustInference): RobustInference {
  const p = first.p + second.p;
  const byStudy = new Map<string, [StudyPart | null, StudyPart | null]>();
  for (const part of first.parts) byStudy.set(part.study, [part, null]);
  for (const part of second.parts) byStudy.set(part.study, [byStudy.get(part.study)?.[0] ?? null, part]);
  const parts = [...byStudy].map(([study, [a, b]]): StudyPart => {
    const score = new Float64Array(p);
    if (a) score.set(a.score, 0);
    if (b) score.set(b.score, first.p);
    return {
      study,
      score,
      spread: blockDiagonal(a?.spread ?? null, first.p, b?.spread ?? null, second.p),
      overlap: blockDiagonal(a?.overlap ?? null, first.p, b?.overlap ?? null, second.p),
    };
  });
  const coefficients = Float64Array.from([...first.coefficients, ...second.coefficients]);
  const root = blockDiagonal(first.root, first.p, second.root, second.p);
  return assemble(coefficients, parts, root, first.dropped + second.dropped);
}

function assemble(
  coefficients: Float64Array,
  parts: readonly StudyPart[],
  root: Float64Array,
  dropped: number,
): RobustInference {
  const p = coefficients.length;
  // Row i of R⁻¹: the i-th coefficient in the coordinates of the whitened design.
  const rows = Array.from({ length: p }, (_, i) => toScores({ root, p }, unitVector(p, i)));
  const backFromScores = (middle: Float64Array) => {
    const out = new Float64Array(p * p);
    for (let i = 0; i < p; i++) for (let j = 0; j < p; j++) out[i * p + j] = bilinear(rows[i], middle, rows[j]);
    return out;
  };
  return {
    p,
    coefficients,
    covariance: backFromScores(sumOuterProducts(p, parts)),
    modelCovariance: backFromScores(identity(p)),
    dropped,
    parts,
    root,
    forms: sumQuarticForms(p, parts),
  };
}

/** Σ_k U'F e e'F U in whitened terms: the middle of the sandwich, p×p. */
function sumOuterProducts(p: number, parts: readonly StudyPart[]): Float64Array {
  const out = new Float64Array(p * p);
  for (const { score } of parts)
    for (let i = 0; i < p; i++) for (let j = 0; j < p; j++) out[i * p + j] += score[i] * score[j];
  return out;
}
