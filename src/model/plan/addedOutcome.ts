/**
 * The inference that one outcome of a planned study gives, and the one that is expected over all of them
 * (addedStudy.ts).
 */
import { dot } from '../../numerics/dot.ts';
import { bilinear, unitVector } from '../../numerics/smallMatrices.ts';
import { type ContrastInference, toScores } from '../robust.ts';
import type { AddedStudy } from './addedStudy.ts';

/** @param e m standard normal deviates, one a row of the new study */
export function inferOutcome(added: AddedStudy, e: ArrayLike<number>): ContrastInference {
  const { centre, m, spread, q, scores, place } = added;
  const { p, parts } = centre;
  const z = new Float64Array(m);
  for (let i = 0; i < m; i++) for (let j = 0; j <= m - 1; j++) z[i] += spread[i * m + j] * e[j];
  const move = new Float64Array(p);
  for (let i = 0; i < m; i++) for (let r = 0; r < p; r++) move[r] += q[i * p + r] * z[i];
  const middle = new Float64Array(p * p);
  const score = new Float64Array(p);
  parts.forEach((part, k) => {
    for (let r = 0; r < p; r++) {
      score[r] = part.score[r];
      if (k === place) for (let j = 0; j < m; j++) score[r] += scores[r * m + j] * z[j];
      else for (let c = 0; c < p; c++) score[r] -= part.overlap[c * p + r] * move[c];
    }
    addOuter(middle, score);
  });
  return withMiddle(centre, middle, move);
}

/** Coefficients and CR2 covariance expected over all outcomes. */
export function expectInference(added: AddedStudy): ContrastInference {
  const { centre, m, spread, q, scores, place } = added;
  const { p, parts } = centre;
  const middle = new Float64Array(p * p);
  for (const { score } of parts) addOuter(middle, score);
  // Columns of Q₊'B and of K B: what one deviate adds.
  for (let j = 0; j < m; j++) {
    const move = new Float64Array(p);
    const own = new Float64Array(p);
    for (let i = 0; i < m; i++)
      for (let r = 0; r < p; r++) {
        move[r] += q[i * p + r] * spread[i * m + j];
        own[r] += scores[r * m + i] * spread[i * m + j];
      }
    addOuter(middle, own);
    const moved = new Float64Array(p);
    parts.forEach(({ overlap }, k) => {
      if (k === place) return;
      moved.fill(0);
      for (let r = 0; r < p; r++) for (let c = 0; c < p; c++) moved[r] += overlap[c * p + r] * move[c];
      addOuter(middle, moved);
    });
  }
  return withMiddle(centre, middle, null);
}

function addOuter(out: Float64Array, s: Float64Array): void {
  const p = s.length;
  for (let i = 0; i < p; i++) for (let j = 0; j < p; j++) out[i * p + j] += s[i] * s[j];
}

/** @param move of Rβ; null where there is none */
function withMiddle(centre: ContrastInference, middle: Float64Array, move: Float64Array | null): ContrastInference {
  const { p, root, forms } = centre;
  // Row i of R⁻¹.
  const rows = Array.from({ length: p }, (_, i) => toScores({ root, p }, unitVector(p, i)));
  const covariance = new Float64Array(p * p);
  for (let i = 0; i < p; i++) for (let j = 0; j < p; j++) covariance[i * p + j] = bilinear(rows[i], middle, rows[j]);
  const coefficients = move ? centre.coefficients.map((value, i) => value + dot(rows[i], move)) : centre.coefficients;
  return { p, root, forms, coefficients, covariance };
}
