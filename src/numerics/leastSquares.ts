/**
 * Least squares by Householder reflections: the one core under every fit.
 *
 * Minimises |y − X b|² with X = Q R, Q n×p with orthonormal columns, R p×p upper triangular, so that
 * the condition of X, not of X'X, decides the error. Columns are scaled by powers of two to about
 * unit length first: that rounds nothing, and what is squared after it does not run out of a double's
 * range. A column is told from its own length to be dependent, so that units do not matter. Lengths
 * from some 1e-150 to 1e150 are meant; a column whose length is 0, infinite or NaN counts as dependent.
 *
 * Reference: Golub & Van Loan 2013, Matrix Computations, 4th ed., §5.2–5.3.
 */

/**
 * A column whose part independent of the columns before it is shorter than this share of its length
 * counts as dependent: some 500 roundings of 2⁻⁵², far below any real covariate's independent part.
 */
const DEPENDENCE_TOLERANCE = 1e-13;

export interface LeastSquares {
  /** b, length p; NaN where the columns are dependent. */
  readonly coefficients: Float64Array;
  /** R of X = QR, p×p upper triangular, row-major. */
  readonly r: Float64Array;
  /** Columns of Q, p arrays of length n. */
  readonly q: readonly Float64Array[];
  /** y − X b, length n, by projection. */
  readonly residuals: Float64Array;
  readonly residualSumOfSquares: number;
  /** ln |det R| = ½ ln |X'X|. */
  readonly logAbsDetR: number;
  /** False where columns are linearly dependent or fewer rows than columns are given. */
  readonly fullRank: boolean;
}

/** What a likelihood needs of a least-squares problem: cheaper than the whole solution. */
export interface Triangularised {
  readonly residualSumOfSquares: number;
  readonly logAbsDetR: number;
  readonly fullRank: boolean;
}

/** Arrays that a solution is worked out in and made of, p or 1 of length n: for callers that solve again and again. */
export interface LeastSquaresRoom {
  readonly work: readonly Float64Array[];
  readonly rotated: Float64Array;
  readonly q: readonly Float64Array[];
  readonly residuals: Float64Array;
}

export function makeLeastSquaresRoom(p: number, n: number): LeastSquaresRoom {
  const columns = () => Array.from({ length: p }, () => new Float64Array(n));
  return { work: columns(), rotated: new Float64Array(n), q: columns(), residuals: new Float64Array(n) };
}

/**
 * Fits y on the columns; both are left as they are.
 *
 * @param columns X, p arrays of length n
 * @param y of length n
 * @param room which the solution then shares; made where none is given
 */
export function leastSquares(
  columns: readonly Float64Array[],
  y: Float64Array,
  room: LeastSquaresRoom = makeLeastSquaresRoom(columns.length, y.length),
): LeastSquares {
  const p = columns.length;
  const n = y.length;
  const { work, rotated, q, residuals } = room;
  for (let j = 0; j < p; j++) work[j].set(columns[j]);
  rotated.set(y);
  const factor = triangularise(work, rotated);
  const coefficients = factor.fullRank ? backSubstitute(factor.r, p, rotated) : new Float64Array(p).fill(Number.NaN);
  residuals.set(rotated);
  residuals.fill(0, 0, Math.min(p, n));
  applyReflections(work, factor.heads, residuals);
  for (let j = 0; j < p; j++) {
    q[j].fill(0);
    if (j < n) q[j][j] = 1;
    applyReflections(work, factor.heads, q[j]);
  }
  return {
    coefficients,
    r: factor.r,
    q,
    residuals,
    residualSumOfSquares: factor.residualSumOfSquares,
    logAbsDetR: factor.logAbsDetR,
    fullRank: factor.fullRank,
  };
}

interface Factor extends Triangularised {
  readonly r: Float64Array;
  /** First element of each reflector; the rest stands below the diagonal of the worked columns. */
  readonly heads: Float64Array;
}

/**
 * Reduces the columns to R in place, leaving the reflectors below the diagonal, and turns y into
 * Q'y. Overwrites both arguments: for callers that made them for this.
 */
export function triangularise(columns: readonly Float64Array[], y: Float64Array): Factor {
  const p = columns.length;
  const n = y.length;
  const r = new Float64Array(p * p);
  const heads = new Float64Array(p);
  let fullRank = n >= p;
  let logAbsDetR = 0;
  for (let j = 0; j < p; j++) {
    const column = columns[j];
    const scale = powerOfTwoNear(length(column, 0));
    for (let i = 0; i < n; i++) column[i] *= 1 / scale;
    const whole = length(column, 0);
    for (let k = 0; k < j; k++) reflect(columns[k], heads[k], k, column);
    const diagonal = j < n ? makeReflector(column, j, heads) : 0;
    if (!(Math.abs(diagonal) > DEPENDENCE_TOLERANCE * whole)) fullRank = false;
    for (let i = 0; i < j; i++) r[i * p + j] = i < n ? column[i] * scale : 0;
    r[j * p + j] = diagonal * scale;
    logAbsDetR += Math.log(Math.abs(diagonal)) + Math.log(scale);
  }
  for (let k = 0; k < Math.min(p, n); k++) reflect(columns[k], heads[k], k, y);
  let residualSumOfSquares = 0;
  for (let i = p; i < n; i++) residualSumOfSquares += y[i] ** 2;
  return { r, heads, residualSumOfSquares, logAbsDetR, fullRank };
}

/** Solves R x = b for upper triangular R (p×p, row-major), using the first p of b. */
function backSubstitute(r: Float64Array, p: number, b: ArrayLike<number>): Float64Array {
  const x = new Float64Array(p);
  for (let i = p - 1; i >= 0; i--) {
    let sum = b[i];
    for (let j = i + 1; j < p; j++) sum -= r[i * p + j] * x[j];
    x[i] = sum / r[i * p + i];
  }
  return x;
}

/** Solves R'x = b for upper triangular R (p×p, row-major). */
export function forwardSubstitute(r: Float64Array, p: number, b: ArrayLike<number>): Float64Array {
  const x = new Float64Array(p);
  for (let i = 0; i < p; i++) {
    let sum = b[i];
    for (let j = 0; j < i; j++) sum -= r[j * p + i] * x[j];
    x[i] = sum / r[i * p + i];
  }
  return x;
}

/** Turns column[from…] into a reflector that maps it onto one axis; returns the diagonal of R. */
function makeReflector(column: Float64Array, from: number, heads: Float64Array): number {
  const size = length(column, from);
  if (size === 0) {
    heads[from] = 0;
    return 0;
  }
  const first = column[from];
  const diagonal = first > 0 ? -size : size;
  // Scaled so that the reflection is I − v v' / v_head, with v_head = 1 + |first| / size in (1, 2].
  for (let i = from; i < column.length; i++) column[i] = column[i] / -diagonal;
  column[from] = column[from] + 1;
  heads[from] = column[from];
  return diagonal;
}

/** Applies the reflection kept in reflector[from…] to target in place. */
function reflect(reflector: Float64Array, head: number, from: number, target: Float64Array): void {
  if (head === 0) return;
  let product = 0;
  const n = target.length;
  for (let i = from + 1; i < n; i++) product += reflector[i] * target[i];
  product = (product + head * target[from]) / -head;
  target[from] = target[from] + product * head;
  for (let i = from + 1; i < n; i++) target[i] = target[i] + product * reflector[i];
}

/** Applies Q, the product of all reflections, to target in place. */
function applyReflections(columns: readonly Float64Array[], heads: Float64Array, target: Float64Array): void {
  for (let k = Math.min(columns.length, target.length) - 1; k >= 0; k--) {
    reflect(columns[k], heads[k], k, target);
  }
}

function length(column: Float64Array, from: number): number {
  let sum = 0;
  for (let i = from; i < column.length; i++) sum += column[i] ** 2;
  return Math.sqrt(sum);
}

function powerOfTwoNear(size: number): number {
  return size > 0 && Number.isFinite(size) ? 2 ** Math.round(Math.log2(size)) : 1;
}
