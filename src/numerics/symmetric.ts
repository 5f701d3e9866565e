/** Functions of a symmetric matrix through its eigenvalues (ml-matrix does the decomposition). */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';

export interface InverseRoot {
  /** B^{+1/2}, the symmetric square root of the Moore–Penrose inverse, n×n row-major. */
  readonly root: Float64Array;
  /** Number of eigenvalues dropped as 0. */
  readonly dropped: number;
}

/**
 * Symmetric square root of the pseudo-inverse of a positive semi-definite matrix.
 *
 * @param matrix n×n, row-major, symmetric; only its first n² numbers are read
 * @param n order of the matrix, at least 1
 * @param tolerance eigenvalues at or below this share of the largest are dropped (0 to 1)
 */
export function pseudoInverseRoot(matrix: Float64Array, n: number, tolerance: number): InverseRoot {
  if (n === 1) {
    const value = matrix[0];
    return value > 0
      ? { root: Float64Array.of(1 / Math.sqrt(value)), dropped: 0 }
      : { root: Float64Array.of(0), dropped: 1 };
  }
  const decomposition = new EigenvalueDecomposition(Matrix.from1DArray(n, n, matrix.subarray(0, n * n)), {
    assumeSymmetric: true,
  });
  const values = decomposition.realEigenvalues;
  const vectors = decomposition.eigenvectorMatrix;
  const largest = Math.max(...values);
  const root = new Float64Array(n * n);
  let dropped = 0;
  for (let k = 0; k < n; k++) {
    const value = values[k];
    if (!(value > tolerance * largest)) {
      dropped++;
      continue;
    }
    const scale = 1 / Math.sqrt(value);
    for (let i = 0; i < n; i++) {
      const left = vectors.get(i, k) * scale;
      for (let j = 0; j < n; j++) root[i * n + j] = root[i * n + j] + left * vectors.get(j, k);
    }
  }
  return { root, dropped };
}
