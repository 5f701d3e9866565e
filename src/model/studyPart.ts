/**
 * What one study adds to the robust inference (cr2.ts, whose symbols are used here):
 *     F = C'C,  B = F (I − QQ') F,  U = B^{+½} Q,
 * with C the root of the study's block of Φ, m×m, and Q its rows of the whitened design's, m×p.
 *
 * A sweep does this a million times over blocks of a few rows, so the blocks are worked out in room that
 * is set aside once for the largest study. A study of many rows is worked out without them (largeStudyPart.ts).
 */
import type { LeastSquares } from '../numerics/leastSquares.ts';
import { gram, multiply } from '../numerics/smallMatrices.ts';
import { pseudoInverseRoot } from '../numerics/symmetric.ts';
import type { Observations } from './observations.ts';
import { studyRoot, type Whitening } from './whitening.ts';

/** Eigenvalues of B at or below this share of the largest are rounding of 0 and are dropped. */
const EIGENVALUE_TOLERANCE = 1e-11;

/** What one study adds to the robust inference, in terms of h = R⁻'c. */
export interface StudyPart {
  readonly study: string;
  /** U'F (whitened residuals), length p: c's share of the estimate's error is h · score. */
  readonly score: Float64Array;
  /** N = U'F²U, p×p row-major: P_ii's first term is h'N h. */
  readonly spread: Float64Array;
  /** T = Q'F U, p×p row-major: the second term's vector is T h. */
  readonly overlap: Float64Array;
}

/** Blocks of the study at hand, row-major; what stands beyond its own size is left from another. */
export interface Room {
  /** C, F and B, m×m. */
  readonly root: Float64Array;
  readonly f: Float64Array;
  readonly b: Float64Array;
  /** Q, F Q, U and F U, m×p. */
  readonly q: Float64Array;
  readonly fq: Float64Array;
  readonly u: Float64Array;
  readonly fu: Float64Array;
}

/** @param m rows of the largest study that it is for @param p coefficients */
export function makeRoom(m: number, p: number): Room {
  const square = () => new Float64Array(m * m);
  const tall = () => new Float64Array(m * p);
  return { root: square(), f: square(), b: square(), q: tall(), fq: tall(), u: tall(), fu: tall() };
}

/** The part of study k, and how many directions of its B are dropped. */
export function smallStudyPart(
  data: Observations,
  whitening: Whitening,
  fit: LeastSquares,
  k: number,
  study: string,
  { root, f, b, q, fq, u, fu }: Room,
): { part: StudyPart; lost: number } {
  const from = data.studyStart[k];
  const m = data.studyStart[k + 1] - from;
  const p = fit.q.length;
  studyRoot(data, whitening, k, root);
  gram(root, m, f);
  for (let i = 0; i < m; i++) for (let c = 0; c < p; c++) q[i * p + c] = fit.q[c][from + i];
  multiply(f, q, m, m, p, fq);
  multiply(f, f, m, m, m, b);
  for (let i = 0; i < m; i++)
    for (let j = 0; j < m; j++) for (let c = 0; c < p; c++) b[i * m + j] -= fq[i * p + c] * fq[j * p + c];
  const { root: bRoot, dropped } = pseudoInverseRoot(b, m, EIGENVALUE_TOLERANCE);
  multiply(bRoot, q, m, m, p, u);
  multiply(f, u, m, m, p, fu);
  const score = new Float64Array(p);
  const spread = new Float64Array(p * p);
  const overlap = new Float64Array(p * p);
  for (let i = 0; i < m; i++) {
    for (let r = 0; r < p; r++) {
      score[r] += fu[i * p + r] * fit.residuals[from + i];
      for (let c = 0; c < p; c++) {
        spread[r * p + c] += fu[i * p + r] * fu[i * p + c];
        overlap[r * p + c] += q[i * p + r] * fu[i * p + c];
      }
    }
  }
  return { part: { study, score, spread, overlap }, lost: dropped };
}
