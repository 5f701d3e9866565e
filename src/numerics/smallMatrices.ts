/**
 * Products of small dense matrices, row-major in a Float64Array. Those that a sweep needs a million
 * times write into room that the caller set aside.
 */

/** out ← a'a of an n×n matrix; `out` has room for at least n² numbers. */
export function gram(a: Float64Array, n: number, out: Float64Array): void {
  out.fill(0, 0, n * n);
  for (let k = 0; k < n; k++)
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) out[i * n + j] += a[k * n + i] * a[k * n + j];
}

/** out ← a (n×m) times b (m×p); `out` has room for at least n·p numbers. */
export function multiply(a: Float64Array, b: Float64Array, n: number, m: number, p: number, out: Float64Array): void {
  out.fill(0, 0, n * p);
  for (let i = 0; i < n; i++)
    for (let k = 0; k < m; k++) {
      const factor = a[i * m + k];
      for (let j = 0; j < p; j++) out[i * p + j] += factor * b[k * p + j];
    }
}

/** u'M v of an n×n matrix M, n the length of u and v. */
export function bilinear(u: Float64Array, m: Float64Array, v: Float64Array): number {
  const n = u.length;
  let sum = 0;
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) sum += u[i] * v[j] * m[i * n + j];
  return sum;
}

/** a (n×n) and b (m×m) along the diagonal of an (n + m)×(n + m) matrix; a block that is null is 0. */
export function blockDiagonal(a: Float64Array | null, n: number, b: Float64Array | null, m: number): Float64Array {
  const size = n + m;
  const out = new Float64Array(size * size);
  if (a) for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) out[i * size + j] = a[i * n + j];
  if (b) for (let i = 0; i < m; i++) for (let j = 0; j < m; j++) out[(n + i) * size + n + j] = b[i * m + j];
  return out;
}

/** The n×n identity. */
export function identity(n: number): Float64Array {
  const out = new Float64Array(n * n);
  for (let i = 0; i < n; i++) out[i * n + i] = 1;
  return out;
}

/** Column j of the n×n identity: as a contrast it asks for the j-th coefficient. */
export function unitVector(n: number, j: number): Float64Array {
  const out = new Float64Array(n);
  out[j] = 1;
  return out;
}

/** Columns of length n side by side: row i of the table stands at i times their number. */
export function packRows(columns: readonly Float64Array[], n: number): Float64Array {
  const m = columns.length;
  const out = new Float64Array(n * m);
  columns.forEach((column, c) => {
    for (let i = 0; i < n; i++) out[i * m + c] = column[i];
  });
  return out;
}

/**
 * b ← a⁻¹ b for a (n×n) and b (n×m), by elimination with the largest pivot of each column (Golub & Van Loan 2013, §3.4);
 * a is used up. A singular a leaves numbers that are not finite.
 */
export function solveInPlace(a: Float64Array, b: Float64Array, n: number, m: number): void {
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i * n + k]) > Math.abs(a[pivot * n + k])) pivot = i;
    swapRows(a, n, k, pivot);
    swapRows(b, m, k, pivot);
    for (let i = k + 1; i < n; i++) {
      const factor = a[i * n + k] / a[k * n + k];
      for (let j = k; j < n; j++) a[i * n + j] -= factor * a[k * n + j];
      for (let j = 0; j < m; j++) b[i * m + j] -= factor * b[k * m + j];
    }
  }
  for (let k = n - 1; k >= 0; k--)
    for (let j = 0; j < m; j++) {
      for (let i = k + 1; i < n; i++) b[k * m + j] -= a[k * n + i] * b[i * m + j];
      b[k * m + j] /= a[k * n + k];
    }
}

function swapRows(a: Float64Array, width: number, i: number, k: number): void {
  if (i === k) return;
  const row = a.slice(i * width, (i + 1) * width);
  a.copyWithin(i * width, k * width, (k + 1) * width);
  a.set(row, k * width);
}
