/**
 * What one large study adds to the robust inference (studyPart.ts), in time proportional to its rows.
 *
 * The adjustment A of cr2.ts solves A S A = Φ. It is a geometric mean (Pusz & Woronowicz 1975, Rep Math Phys
 * 8:159) and can be had without a root of Φ:
 *     A = (2/π) ∫₀^∞ (S + σ² Φ⁻¹)⁻¹ dσ,   S = Φ − YY',  Y = X R⁻¹ = C Q  (m×p).
 * With E = (Φ + σ² Φ⁻¹)⁻¹ = Re (Φ + iσ)⁻¹, which costs O(m) a column (shiftedStudy.ts), what is left is p×p:
 *     (E⁻¹ − YY')⁻¹ = E − E Y (Y'EY − I)⁻¹ Y'E.
 * The integral is a sum of some 40 of these (inverseRootQuadrature.ts). With G = A Φ⁻¹Y the part is
 *     score G'e,  spread G'ΦG,  overlap Y'G.
 *
 * Where Q has a singular value of 1, Q w of length 1, the study is fitted perfectly in a direction:
 * Φ^½ S Φ^½ is singular along n = Φ^(−½) P, P = Φ⁻¹Y w. The pseudo-inverse root leaves n out. So n is taken off
 * Φ⁻¹Y, and S + σ² Φ⁻¹ is made regular by adding `most`² zz', z = Φ⁻¹P, which changes nothing across n.
 */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { inverseRootNodes } from '../numerics/inverseRootQuadrature.ts';
import type { LeastSquares } from '../numerics/leastSquares.ts';
import { multiply, packRows, solveInPlace } from '../numerics/smallMatrices.ts';
import type { Observations } from './observations.ts';
import { type ShiftedStudy, shiftStudy } from './shiftedStudy.ts';
import type { StudyPart } from './studyPart.ts';
import { applyRoot, applyWhiteningTransposed, type Whitening } from './whitening.ts';

/** 1 − s² at or below which a direction counts as fitted perfectly; Q is orthonormal to some 1e-15. */
const PERFECT_TOLERANCE = 1e-11;

/** What a large study cuts its rows from: m×p blocks of all rows, row-major. */
export interface FitRows {
  /** Q. */
  readonly q: Float64Array;
  /** Y = C Q. */
  readonly y: Float64Array;
  /** Φ⁻¹Y = W'Q. */
  readonly inverseY: Float64Array;
  /** y − Xβ. */
  readonly residuals: Float64Array;
}

export function makeFitRows(data: Observations, whitening: Whitening, fit: LeastSquares): FitRows {
  return {
    q: packRows(fit.q, data.n),
    y: packRows(
      fit.q.map((column) => applyRoot(data, whitening, column)),
      data.n,
    ),
    inverseY: packRows(
      fit.q.map((column) => applyWhiteningTransposed(data, whitening, column)),
      data.n,
    ),
    residuals: applyRoot(data, whitening, fit.residuals),
  };
}

/** The part of study k, and in how many directions the study is fitted perfectly. */
export function largeStudyPart(
  data: Observations,
  whitening: Whitening,
  rows: FitRows,
  p: number,
  k: number,
): { part: StudyPart; lost: number } {
  const [from, to] = [data.studyStart[k], data.studyStart[k + 1]];
  const m = to - from;
  const cut = (block: Float64Array) => block.subarray(from * p, to * p);
  const study = shiftStudy(data, whitening, k);
  const y = cut(rows.y);
  const perfect = findPerfect(study, m, p, cut(rows.q), cut(rows.inverseY));
  const g = adjust(study, m, p, y, cut(rows.inverseY), perfect);
  const residuals = rows.residuals.subarray(from, to);
  return {
    part: {
      study: data.studies[k],
      score: cross(g, p, residuals, 1, m),
      spread: cross(g, p, study.multiply(g, p), p, m),
      overlap: cross(y, p, g, p, m),
    },
    lost: perfect.count,
  };
}

/** The directions that a study fits perfectly, `count` columns P with orthonormal Φ^(−½) P. */
interface Perfect {
  readonly count: number;
  /** P and z = Φ⁻¹P, m×count. */
  readonly direction: Float64Array;
  readonly inverse: Float64Array;
  /** Least 1 − s² of the other directions. */
  readonly leastLeft: number;
}

function findPerfect(study: ShiftedStudy, m: number, p: number, q: Float64Array, inverseY: Float64Array): Perfect {
  const { realEigenvalues: shares, eigenvectorMatrix: vectors } = new EigenvalueDecomposition(
    Matrix.from1DArray(p, p, cross(q, p, q, p, m)),
    { assumeSymmetric: true },
  );
  const isPerfect = (share: number) => 1 - share <= PERFECT_TOLERANCE;
  const found = shares.flatMap((share, j) => (isPerfect(share) ? [vectors.getColumn(j)] : []));
  const count = found.length;
  const leastLeft = shares.reduce((least, share) => (isPerfect(share) ? least : Math.min(least, 1 - share)), 1);
  const w = Float64Array.from({ length: p * count }, (_, place) => found[place % count][Math.floor(place / count)]);
  const direction = new Float64Array(m * count);
  multiply(inverseY, w, m, p, count, direction);
  const inverse = new Float64Array(m * count);
  study.solve(direction, count, 0, inverse, new Float64Array(m * count));
  // Gram and Schmidt, in the inner product of Φ⁻¹.
  for (let j = 0; j < count; j++) {
    for (let i = 0; i < j; i++) {
      let along = 0;
      for (let row = 0; row < m; row++) along += direction[row * count + j] * inverse[row * count + i];
      for (let row = 0; row < m; row++) {
        direction[row * count + j] -= along * direction[row * count + i];
        inverse[row * count + j] -= along * inverse[row * count + i];
      }
    }
    let size2 = 0;
    for (let row = 0; row < m; row++) size2 += direction[row * count + j] * inverse[row * count + j];
    for (let row = 0; row < m; row++) {
      direction[row * count + j] /= Math.sqrt(size2);
      inverse[row * count + j] /= Math.sqrt(size2);
    }
  }
  return { count, direction, inverse, leastLeft };
}

/** G = A Φ⁻¹Y, m×p. */
function adjust(
  study: ShiftedStudy,
  m: number,
  p: number,
  y: Float64Array,
  inverseY: Float64Array,
  { count, direction, inverse, leastLeft }: Perfect,
): Float64Array {
  const size = p + count;
  const lift = study.most ** 2;
  const low = leastLeft * study.least ** 2;
  const wide = sideBySide(y, p, inverse, count, m);
  /** What the perfect directions take off Φ⁻¹Y: z times this. */
  const taken = cross(direction, count, inverseY, p, m);
  const real = new Float64Array(m * size);
  const imaginary = new Float64Array(m * size);
  const right = new Float64Array(m * p);
  const part = new Float64Array(m * p);
  const g = new Float64Array(m * p);
  for (const { sigma, weight } of inverseRootNodes(low, lift)) {
    study.solve(wide, size, sigma, real, imaginary);
    // (Φ + iσ)⁻¹Y = E Y − iσ E Φ⁻¹Y.
    for (let i = 0; i < m; i++)
      for (let c = 0; c < p; c++) {
        right[i * p + c] = -imaginary[i * size + c] / sigma;
        for (let j = 0; j < count; j++) right[i * p + c] -= real[i * size + p + j] * taken[j * p + c];
      }
    const middle = cross(wide, size, real, size, m);
    for (let j = 0; j < size; j++) middle[j * size + j] += j < p ? -1 : 1 / lift;
    const sides = cross(wide, size, right, p, m);
    solveInPlace(middle, sides, size, p);
    multiply(real, sides, m, size, p, part);
    for (let place = 0; place < g.length; place++) g[place] += weight * (right[place] - part[place]);
  }
  return g;
}

/** a'b of blocks with m rows, row-major. */
function cross(a: Float64Array, p: number, b: Float64Array, q: number, m: number): Float64Array {
  const out = new Float64Array(p * q);
  for (let i = 0; i < m; i++)
    for (let r = 0; r < p; r++) {
      const factor = a[i * p + r];
      for (let c = 0; c < q; c++) out[r * q + c] += factor * b[i * q + c];
    }
  return out;
}

function sideBySide(a: Float64Array, p: number, b: Float64Array, q: number, m: number): Float64Array {
  if (q === 0) return a;
  const out = new Float64Array(m * (p + q));
  for (let i = 0; i < m; i++) {
    out.set(a.subarray(i * p, (i + 1) * p), i * (p + q));
    out.set(b.subarray(i * q, (i + 1) * q), i * (p + q) + p);
  }
  return out;
}
