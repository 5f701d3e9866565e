/**
 * Satterthwaite's degrees of freedom of any contrast under CR2 (Bell & McCaffrey 2002, Surv Methodol
 * 28:169; Pustejovsky & Tipton 2018, J Bus Econ Stat 36:672), in the symbols of cr2.ts:
 *     P_ij = [i=j] h'N_i h − (T_i h)'(T_j h),   df(c) = (Σ P_ii)² / Σ P_ij²,   h = R⁻'c,
 * with i and j studies and N, T their parts (studyPart.ts). Σ P_ij² is a quartic form in h, so its
 * coefficients are summed over studies once; after that a contrast costs O(p⁴), whatever the number of
 * studies, and a whole curve of contrasts is cheap.
 *
 * P is positive semi-definite, so that df is at least 1.
 */
import { gram } from '../numerics/smallMatrices.ts';
import type { StudyPart } from './studyPart.ts';

/**
 * Sums over studies that give the df of any contrast, as forms in the products hᵢhⱼ, i ≤ j, of which
 * there are q = p (p + 1)/2.
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
 * @param p number of coefficients
 * @param parts of all studies
 */
export function sumQuarticForms(p: number, parts: readonly StudyPart[]): QuarticForms {
  const entries: (readonly [number, number])[] = [];
  for (let r = 0; r < p; r++) for (let c = r; c < p; c++) entries.push([r, c]);
  const q = entries.length;
  const multiplicity = Float64Array.from(entries, ([r, c]) => (r === c ? 1 : 2));
  const trace = new Float64Array(q);
  const squares = new Float64Array(q * q);
  const cross = new Float64Array(q * q);
  const overlapSquare = new Float64Array(p * p);
  for (const { spread, overlap } of parts) {
    gram(overlap, p, overlapSquare);
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

/** @param h R⁻'c, length p; NaN for a contrast of zeros */
export function satterthwaiteDf(forms: QuarticForms, h: Float64Array): number {
  const p = h.length;
  const q = forms.trace.length;
  const pairs = new Float64Array(q);
  let place = 0;
  for (let i = 0; i < p; i++) for (let j = i; j < p; j++) pairs[place++] = h[i] * h[j];
  // Of several fits stacked a contrast often asks one or two: the products with the others are 0.
  const asked = Uint32Array.from(pairs.keys()).filter((c) => pairs[c] !== 0);
  let trace = 0;
  let squares = 0;
  for (let r = 0; r < q; r++) {
    let along = 0;
    let crossing = 0;
    for (let k = 0; k < asked.length; k++) {
      const c = asked[k];
      along += forms.squares[r * q + c] * pairs[c];
      crossing += forms.cross[r * q + c] * pairs[c];
    }
    trace += forms.trace[r] * pairs[r];
    squares += pairs[r] * along + forms.multiplicity[r] * crossing * crossing;
  }
  // Sampling variances that differ by tens of orders can cancel to less.
  return Math.max(1, (trace * trace) / squares);
}
