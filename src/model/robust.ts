/**
 * Cluster-robust inference by study: CR2 covariance and Satterthwaite degrees of freedom.
 *
 * CR2 (Bell & McCaffrey 2002, Surv Methodol 28:169; Pustejovsky & Tipton 2018, J Bus Econ Stat
 * 36:672) under the working covariance Φ, weights Φ⁻¹, M = (X'Φ⁻¹X)⁻¹, residuals e:
 *     V = M [ Σ_k X_k'Φ_k⁻¹ A_k e_k e_k' A_k Φ_k⁻¹ X_k ] M,   A_k S_k A_k = Φ_k,   S_k = Φ_k − X_k M X_k'.
 * With the whitening Φ_k = CC', the whitened X = QR and F = C'C, everything a study contributes is small:
 *     B = F (I − QQ') F,  A = C B^{+½} C',  U = B^{+½} Q  (m×p)
 *     contribution to V   s s'   with  s = R⁻¹ U'F (C⁻¹ e_k)
 *     Satterthwaite       P_ij = [i=j] |F U h|² − (Q'F U h)_i · (Q'F U h)_j,   h = R⁻'c
 *     df(c) = (Σ P_ii)² / Σ P_ij².
 * B^{+½} does not depend on which root C is taken. Σ P_ij² is a quartic form in h, so its
 * coefficients are summed over studies once; after that a contrast costs O(p⁴), whatever the number
 * of studies, and a whole curve of contrasts is cheap.
 *
 * θ = (τ², ω²) is treated as known: neither V nor df carries its uncertainty.
 */

import { normalQuantile, studentQuantile, studentTwoSidedP } from '../numerics/distributions.ts';
import { dot } from '../numerics/dot.ts';
import { forwardSubstitute, type LeastSquares } from '../numerics/leastSquares.ts';
import type { Observations } from './observations.ts';
import type { Estimate } from './result.ts';
import { type StudyPart, studyParts } from './studyPart.ts';
import type { Whitening } from './whitening.ts';

/** What inference on any contrast needs of a fit. */
export interface ContrastInference {
  readonly p: number;
  readonly coefficients: Float64Array;
  /** CR2 covariance of the coefficients, p×p row-major. */
  readonly covariance: Float64Array;
  /** R of the whitened design's QR, upper triangle, p×p row-major: h = R⁻'c. */
  readonly root: Float64Array;
  readonly forms: QuarticForms;
}

export interface RobustInference extends ContrastInference {
  /** M, covariance under the working model, p×p row-major. */
  readonly modelCovariance: Float64Array;
  /** Directions in which a study is fitted perfectly, whatever its data (dropped eigenvalues). */
  readonly dropped: number;
  readonly parts: readonly StudyPart[];
}

/**
 * Sums over studies that give Satterthwaite's df of any contrast, as forms in the products hᵢhⱼ,
 * i ≤ j, of which there are q = p (p + 1)/2.
 */
export interface QuarticForms {
  /** Σ (N − T'T), folded to q. */
  readonly trace: Float64Array;
  /** Σ vec(N) vec(N)' − 2 Σ vec(N) vec(T'T)', folded to q×q. */
  readonly squares: Float64Array;
  /** Row (r, c), r ≤ c: entry of Σ T h h'T', folded to q×q. */
  readonly cross: Float64Array;
  /** How often each entry (r, c), r ≤ c, stands in a full p×p matrix: 1 or 2. */
  readonly multiplicity: Float64Array;
}

/**
 * @param data observations
 * @param whitening of the working covariance Φ
 * @param fit least squares of the whitened data
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
      spread: blockDiagonal(a?.spread, first.p, b?.spread, second.p),
      overlap: blockDiagonal(a?.overlap, first.p, b?.overlap, second.p),
    };
  });
  const coefficients = Float64Array.from([...first.coefficients, ...second.coefficients]);
  const root = blockDiagonal(first.root, first.p, second.root, second.p);
  return assemble(coefficients, parts, root, first.dropped + second.dropped);
}

/**
 * Robust inference on c'β.
 *
 * @param contrast c, length p
 * @param confidence level of the interval, 0 to 1 open
 */
export function inferContrast(inference: ContrastInference, contrast: ArrayLike<number>, confidence: number): Estimate {
  const { estimate, standardError, df } = measureContrast(inference, contrast);
  const reach = studentQuantile(1 - (1 - confidence) / 2, df) * standardError;
  return {
    estimate,
    standardError,
    df,
    ciLow: estimate - reach,
    ciHigh: estimate + reach,
    p: studentTwoSidedP(estimate / standardError, df),
  };
}

/** c'β: what a contrast (a design row, or a difference of two) is worth under the coefficients. */
export function applyContrast(contrast: ArrayLike<number>, coefficients: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < contrast.length; i++) sum += contrast[i] * coefficients[i];
  return sum;
}

/** Estimate, CR2 standard error and Satterthwaite df of c'β, without the quantile of an interval. */
export function measureContrast(
  inference: ContrastInference,
  contrast: ArrayLike<number>,
): { estimate: number; standardError: number; df: number } {
  return { ...measureSpread(inference, contrast), df: measureDf(inference, contrast) };
}

function measureSpread(
  { p, coefficients, covariance }: ContrastInference,
  contrast: ArrayLike<number>,
): { estimate: number; standardError: number } {
  let estimate = 0;
  let variance = 0;
  for (let i = 0; i < p; i++) {
    estimate += contrast[i] * coefficients[i];
    for (let j = 0; j < p; j++) variance += contrast[i] * covariance[i * p + j] * contrast[j];
  }
  return { estimate, standardError: Math.sqrt(variance) };
}

function measureDf(inference: ContrastInference, contrast: ArrayLike<number>): number {
  return satterthwaite(inference.forms, toScores(inference, contrast));
}

/**
 * Whether a contrast is not rejected at the level: |c'β| / se ≤ t(df). The quantile of t is above the
 * normal one and (df ≥ 1) below Cauchy's, so that df and the dear comparison are worked out only in between.
 *
 * @param confidence level, 0 to 1 open
 */
export function makeAcceptance(
  inference: ContrastInference,
  confidence: number,
): (contrast: ArrayLike<number>) => boolean {
  const alpha = 1 - confidence;
  const surelyIn = normalQuantile(1 - alpha / 2);
  const surelyOut = 1 / Math.tan((Math.PI * alpha) / 2);
  return (contrast) => {
    const { estimate, standardError } = measureSpread(inference, contrast);
    const t = Math.abs(estimate) / standardError;
    if (t <= surelyIn) return true;
    if (t > surelyOut) return false;
    return studentTwoSidedP(t, measureDf(inference, contrast)) >= alpha;
  };
}

/** h = R⁻'c: a contrast in the coordinates of the whitened design. */
export function toScores(
  { root, p }: Pick<ContrastInference, 'root' | 'p'>,
  contrast: ArrayLike<number>,
): Float64Array {
  return forwardSubstitute(root, p, contrast);
}

function satterthwaite(forms: QuarticForms, h: Float64Array): number {
  const p = h.length;
  const q = forms.trace.length;
  const pairs = new Float64Array(q);
  let place = 0;
  for (let i = 0; i < p; i++) for (let j = i; j < p; j++) pairs[place++] = h[i] * h[j];
  let trace = 0;
  let squares = 0;
  for (let r = 0; r < q; r++) {
    let along = 0;
    let crossing = 0;
    for (let c = 0; c < q; c++) {
      along += forms.squares[r * q + c] * pairs[c];
      crossing += forms.cross[r * q + c] * pairs[c];
    }
    trace += forms.trace[r] * pairs[r];
    squares += pairs[r] * along + forms.multiplicity[r] * crossing * crossing;
  }
  return (trace * trace) / squares;
}

function assemble(
  coefficients: Float64Array,
  parts: readonly StudyPart[],
  root: Float64Array,
  dropped: number,
): RobustInference {
  const p = coefficients.length;
  const unitScores = Array.from({ length: p }, (_, j) => {
    const unit = new Float64Array(p);
    unit[j] = 1;
    return toScores({ root, p }, unit);
  });
  const meat = new Float64Array(p * p);
  for (const { score } of parts) addTo(meat, outer(score, score), 1);
  const inUnits = (middle: Float64Array) => {
    const out = new Float64Array(p * p);
    for (let i = 0; i < p; i++)
      for (let j = 0; j < p; j++) out[i * p + j] = dot(outer(unitScores[i], unitScores[j]), middle);
    return out;
  };
  const identity = new Float64Array(p * p);
  for (let i = 0; i < p; i++) identity[i * p + i] = 1;
  return {
    p,
    coefficients,
    covariance: inUnits(meat),
    modelCovariance: inUnits(identity),
    dropped,
    parts,
    root,
    forms: quarticForms(p, parts),
  };
}

function quarticForms(p: number, parts: readonly StudyPart[]): QuarticForms {
  const entries: (readonly [number, number])[] = [];
  for (let r = 0; r < p; r++) for (let c = r; c < p; c++) entries.push([r, c]);
  const q = entries.length;
  const multiplicity = Float64Array.from(entries, ([r, c]) => (r === c ? 1 : 2));
  const trace = new Float64Array(q);
  const squares = new Float64Array(q * q);
  const cross = new Float64Array(q * q);
  for (const { spread, overlap } of parts) {
    const overlapSquare = gram(overlap, p);
    for (let a = 0; a < q; a++) {
      const [r, c] = entries[a];
      const spreadHere = multiplicity[a] * spread[r * p + c];
      trace[a] += spreadHere - multiplicity[a] * overlapSquare[r * p + c];
      for (let b = 0; b < q; b++) {
        const [i, j] = entries[b];
        squares[a * q + b] += spreadHere * multiplicity[b] * (spread[i * p + j] - 2 * overlapSquare[i * p + j]);
        cross[a * q + b] +=
          overlap[r * p + i] * overlap[c * p + j] + (i === j ? 0 : overlap[r * p + j] * overlap[c * p + i]);
      }
    }
  }
  return { trace, squares, cross, multiplicity };
}

/** a'a of an n×n row-major matrix. */
function gram(a: Float64Array, n: number): Float64Array {
  const out = new Float64Array(n * n);
  for (let k = 0; k < n; k++)
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) out[i * n + j] += a[k * n + i] * a[k * n + j];
  return out;
}

function blockDiagonal(a: Float64Array | undefined, pa: number, b: Float64Array | undefined, pb: number): Float64Array {
  const p = pa + pb;
  const out = new Float64Array(p * p);
  if (a) for (let i = 0; i < pa; i++) for (let j = 0; j < pa; j++) out[i * p + j] = a[i * pa + j];
  if (b) for (let i = 0; i < pb; i++) for (let j = 0; j < pb; j++) out[(pa + i) * p + pa + j] = b[i * pb + j];
  return out;
}

function outer(a: Float64Array, b: Float64Array): Float64Array {
  const out = new Float64Array(a.length * b.length);
  for (let i = 0; i < a.length; i++) for (let j = 0; j < b.length; j++) out[i * b.length + j] = a[i] * b[j];
  return out;
}

function addTo(target: Float64Array, source: Float64Array, factor: number): void {
  for (let i = 0; i < target.length; i++) target[i] += factor * source[i];
}
