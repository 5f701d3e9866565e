/**
 * Satterthwaite's degrees of freedom of any contrast under CR2 (Bell & McCaffrey 2002, Surv Methodol
 * 28:169; Pustejovsky & Tipton 2018, J Bus Econ Stat 36:672), in the symbols of cr2.ts:
 *     P_ij = [i=j] h'N_i h − (T_i h)'(T_j h),   df(c) = (Σ P_ii)² / Σ P_ij²,   h = R⁻'c,
 * with i and j studies and N, T their parts (studyPart.ts). Both sums are forms in h, of degree 2 and 4:
 *     Σ P_ii = Σ h'(N − T'T)h,   Σ P_ij² = Σ (h'N h)² − 2 Σ (h'N h)(h'T'T h) + |Σ T h h'T'|²,
 * so that their coefficients are summed over studies once; after that a contrast costs as many products as
 * a form of degree 4 has terms (35 for four coefficients), whatever the number of studies, and a whole curve of
 * contrasts is cheap. h stands in an orthonormal basis of the design, so that the terms are of one size and
 * their sum keeps its digits.
 *
 * P is positive semi-definite, so that df is at least 1.
 */
import { gram } from '../numerics/smallMatrices.ts';
import type { StudyPart } from './studyPart.ts';

/** Coefficients of the two sums over studies that give the df of any contrast. */
export interface QuarticForms {
  /** Of hᵢhⱼ in Σ P_ii, i ≤ j, in the order of `listPairs`. */
  readonly trace: Float64Array;
  /** Of hᵢhⱼhₖhₗ in Σ P_ij², i ≤ j ≤ k ≤ l: pair (i, j) by pair, and of each the pairs (k, l) from (j, j) on. */
  readonly squares: Float64Array;
}

/**
 * @param p number of coefficients
 * @param parts of all studies
 */
export function sumQuarticForms(p: number, parts: readonly StudyPart[]): QuarticForms {
  const pairs = listPairs(p);
  const q = pairs.length;
  const trace = new Float64Array(q);
  const products = new Float64Array(q * q);
  /** Row (r, c), r ≤ c: entry of Σ T h h'T' as a form in h. */
  const cross = new Float64Array(q * q);
  const overlapSquare = new Float64Array(p * p);
  for (const { spread, overlap } of parts) {
    gram(overlap, p, overlapSquare);
    for (let a = 0; a < q; a++) {
      const [r, c] = pairs[a];
      const twice = r === c ? 1 : 2;
      const spreadHere = twice * spread[r * p + c];
      trace[a] += spreadHere - twice * overlapSquare[r * p + c];
      for (let b = 0; b < q; b++) {
        const [i, j] = pairs[b];
        const spreadLess = spread[i * p + j] - 2 * overlapSquare[i * p + j];
        products[a * q + b] += spreadHere * (i === j ? spreadLess : 2 * spreadLess);
        cross[a * q + b] +=
          overlap[r * p + i] * overlap[c * p + j] + (i === j ? 0 : overlap[r * p + j] * overlap[c * p + i]);
      }
    }
  }
  for (let r = 0; r < q; r++) {
    const twice = pairs[r][0] === pairs[r][1] ? 1 : 2;
    for (let a = 0; a < q; a++) {
      const factor = twice * cross[r * q + a];
      // Of several fits stacked most entries are 0.
      if (factor !== 0) for (let b = 0; b < q; b++) products[a * q + b] += factor * cross[r * q + b];
    }
  }
  return { trace, squares: foldProducts(p, pairs, products) };
}

/** Coefficients of products of two pairs, q×q, summed where the four factors are the same. */
function foldProducts(p: number, pairs: readonly Pair[], products: Float64Array): Float64Array {
  const q = pairs.length;
  const starts = new Uint32Array(q);
  let length = 0;
  for (let a = 0; a < q; a++) {
    starts[a] = length;
    length += q - placeOf(p, pairs[a][1], pairs[a][1]);
  }
  const folded = new Float64Array(length);
  for (let a = 0; a < q; a++) {
    for (let b = 0; b < q; b++) {
      if (products[a * q + b] === 0) continue;
      const [i, j, k, l] = mergePairs(pairs[a], pairs[b]);
      folded[starts[placeOf(p, i, j)] + placeOf(p, k, l) - placeOf(p, j, j)] += products[a * q + b];
    }
  }
  return folded;
}

/** @param h R⁻'c, length p; NaN for a contrast of zeros */
export function satterthwaiteDf(forms: QuarticForms, h: Float64Array): number {
  const p = h.length;
  const q = forms.trace.length;
  const products = new Float64Array(q);
  let place = 0;
  for (let i = 0; i < p; i++) for (let j = i; j < p; j++) products[place++] = h[i] * h[j];
  let trace = 0;
  let squares = 0;
  let at = 0;
  place = 0;
  for (let i = 0; i < p; i++) {
    // Pairs from (j, j) on begin so far into the list.
    let from = place;
    for (let j = i; j < p; j++) {
      const product = products[place];
      trace += forms.trace[place++] * product;
      // Of several fits stacked a contrast often asks one or two: the products with the others are 0.
      if (product !== 0) {
        let along = 0;
        for (let b = from, c = at; b < q; b++, c++) along += forms.squares[c] * products[b];
        squares += product * along;
      }
      at += q - from;
      from += p - j;
    }
  }
  // Sampling variances that differ by tens of orders can cancel to less.
  return Math.max(1, (trace * trace) / squares);
}

type Pair = readonly [number, number];

/** (i, j), i ≤ j, row by row: q = p (p + 1)/2 of them. */
function listPairs(p: number): readonly Pair[] {
  const pairs: Pair[] = [];
  for (let i = 0; i < p; i++) for (let j = i; j < p; j++) pairs.push([i, j]);
  return pairs;
}

/** Place of (i, j), i ≤ j, in `listPairs`. */
function placeOf(p: number, i: number, j: number): number {
  return i * p - (i * (i - 1)) / 2 + j - i;
}

/** The four numbers of two sorted pairs in order. */
function mergePairs([a, b]: Pair, [c, d]: Pair): readonly [number, number, number, number] {
  const least = Math.min(a, c);
  const most = Math.max(b, d);
  const inner = [Math.max(a, c), Math.min(b, d)] as const;
  return inner[0] <= inner[1] ? [least, inner[0], inner[1], most] : [least, inner[1], inner[0], most];
}
