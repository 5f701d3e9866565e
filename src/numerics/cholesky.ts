/** The lower triangular root of a covariance, for drawing from it. */

/**
 * L with LL' = A, n×n row-major, by Cholesky's recurrence; only the lower triangle of A is read. A column whose
 * remainder is not above 0, as in a covariance of less than full rank, is left 0.
 */
export function choleskyFactor(a: ArrayLike<number>, n: number): Float64Array {
  const lower = new Float64Array(n * n);
  for (let j = 0; j < n; j++)
    for (let i = j; i < n; i++) {
      let rest = a[i * n + j];
      for (let k = 0; k < j; k++) rest -= lower[i * n + k] * lower[j * n + k];
      if (i === j) lower[i * n + j] = rest > 0 ? Math.sqrt(rest) : 0;
      else lower[i * n + j] = lower[j * n + j] > 0 ? rest / lower[j * n + j] : 0;
    }
  return lower;
}
