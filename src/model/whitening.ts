/**
 * Whitening of the working covariance, study by study, in time proportional to the rows.
 *
 * For one study Σ = V + τ² 11' + ω² I, where V has variances vᵢ and covariances ρ √(vᵢ vⱼ) inside a
 * cohort. So Σ is a diagonal D, dᵢ = (1 − ρ) vᵢ + ω² (vᵢ + ω² for a row alone), plus one outer
 * product ρ s s' a cohort (s = √v) plus one τ² 11' for the study. Each outer product is undone by a
 * symmetric factor I − κ uu' with |u| = 1: for x = c |w|²,
 *     (I + c ww')^(−1/2) = I − κ uu',   κ = 1 − 1/√(1 + x),   u = w / |w|.
 * In that order they give W with W Σ W' = I; no study's matrix is ever formed or inverted.
 */
import type { Observations } from './observations.ts';

export interface WorkingCovariance {
  /** Between-study variance τ², at least 0. */
  readonly tau2: number;
  /** Between-row variance ω², at least 0. */
  readonly omega2: number;
  /** Correlation ρ of sampling errors inside a cohort, 0 to below 1. */
  readonly rho: number;
}

export interface Whitening {
  readonly at: WorkingCovariance;
  /** ln |Σ|. */
  readonly logDeterminant: number;
  /** 1/√dᵢ by row. */
  readonly rootWeight: Float64Array;
  /** Unit direction of each cohort's shared error, by row. */
  readonly groupDirection: Float64Array;
  /** √(1 + x) of each cohort. */
  readonly groupStretch: Float64Array;
  /** Unit direction of each study's shared effect, by row. */
  readonly studyDirection: Float64Array;
  /** √(1 + x) of each study. */
  readonly studyStretch: Float64Array;
  /** W 1, the whitened column of ones, by row. */
  readonly whitenedOnes: Float64Array;
}

/** Arrays of a whitening, for callers that whiten again and again. */
export type WhiteningRoom = Omit<Whitening, 'at' | 'logDeterminant'>;

export function makeWhiteningRoom({ n, groupStart, studyStart }: Observations): WhiteningRoom {
  return {
    rootWeight: new Float64Array(n),
    groupDirection: new Float64Array(n),
    groupStretch: new Float64Array(groupStart.length - 1),
    studyDirection: new Float64Array(n),
    studyStretch: new Float64Array(studyStart.length - 1),
    whitenedOnes: new Float64Array(n),
  };
}

/** Bounds between which a product of variances is kept, far from what a double can hold. */
const PRODUCT_BOUND = 1e150;

/**
 * @param data sampling variances above 0
 * @param at the variances and ρ of Σ
 * @param room which the whitening then shares; made where none is given
 */
export function whiten(
  data: Observations,
  at: WorkingCovariance,
  room: WhiteningRoom = makeWhiteningRoom(data),
): Whitening {
  const { v, groupStart, studyStart } = data;
  const { rootWeight, groupDirection, groupStretch, studyDirection, studyStretch, whitenedOnes: ones } = room;
  let logDeterminant = 0;
  // One logarithm for many factors.
  let product = 1;
  const multiplyIn = (factor: number) => {
    product *= factor;
    if (product > 1 / PRODUCT_BOUND && product < PRODUCT_BOUND) return;
    logDeterminant += Math.log(product);
    product = 1;
  };
  for (let g = 0; g + 1 < groupStart.length; g++) {
    const from = groupStart[g];
    const to = groupStart[g + 1];
    const alone = to - from === 1;
    let size2 = 0;
    for (let i = from; i < to; i++) {
      const d = (alone ? v[i] : (1 - at.rho) * v[i]) + at.omega2;
      multiplyIn(d);
      rootWeight[i] = 1 / Math.sqrt(d);
      ones[i] = rootWeight[i];
      if (alone) continue;
      groupDirection[i] = Math.sqrt(v[i]) * rootWeight[i];
      size2 += groupDirection[i] ** 2;
    }
    groupStretch[g] = 1;
    if (alone || at.rho === 0) {
      groupDirection.fill(0, from, to);
      continue;
    }
    groupStretch[g] = Math.sqrt(1 + at.rho * size2);
    multiplyIn(1 + at.rho * size2);
    const size = Math.sqrt(size2);
    for (let i = from; i < to; i++) groupDirection[i] /= size;
    shrinkAlong(ones, groupDirection, from, to, shrinkage(groupStretch[g]));
  }
  for (let k = 0; k + 1 < studyStart.length; k++) {
    let size2 = 0;
    for (let i = studyStart[k]; i < studyStart[k + 1]; i++) size2 += ones[i] ** 2;
    studyStretch[k] = Math.sqrt(1 + at.tau2 * size2);
    multiplyIn(1 + at.tau2 * size2);
    const size = Math.sqrt(size2);
    for (let i = studyStart[k]; i < studyStart[k + 1]; i++) {
      studyDirection[i] = ones[i] / size;
      ones[i] /= studyStretch[k];
    }
  }
  return { at, logDeterminant: logDeterminant + Math.log(product), ...room };
}

/** W z: a new column of length n. */
export function applyWhitening(data: Observations, whitening: Whitening, z: Float64Array): Float64Array {
  return whitenInPlace(data, whitening, z.slice());
}

/** W z in the place of z: for columns that were made for it. */
export function whitenInPlace(data: Observations, whitening: Whitening, z: Float64Array): Float64Array {
  undoGroups(data, whitening, scaleRows(z, whitening.rootWeight));
  return undoStudies(data, whitening, z);
}

/** W'z: a new column of length n. Σ⁻¹ z is W'(W z). */
export function applyWhiteningTransposed(data: Observations, whitening: Whitening, z: Float64Array): Float64Array {
  return whitenTransposedInPlace(data, whitening, z.slice());
}

/** W'z in the place of z. */
export function whitenTransposedInPlace(data: Observations, whitening: Whitening, z: Float64Array): Float64Array {
  undoStudies(data, whitening, z);
  undoGroups(data, whitening, z);
  return scaleRows(z, whitening.rootWeight);
}

/** C z, C = W⁻¹: a new column of length n. Turns whitened columns back into their own units. */
export function applyRoot(data: Observations, whitening: Whitening, z: Float64Array): Float64Array {
  const out = z.slice();
  for (let k = 0; k + 1 < data.studyStart.length; k++) {
    const stretch = whitening.studyStretch[k];
    if (stretch !== 1)
      shrinkAlong(out, whitening.studyDirection, data.studyStart[k], data.studyStart[k + 1], 1 - stretch);
  }
  for (let g = 0; g + 1 < data.groupStart.length; g++) {
    const stretch = whitening.groupStretch[g];
    if (stretch !== 1)
      shrinkAlong(out, whitening.groupDirection, data.groupStart[g], data.groupStart[g + 1], 1 - stretch);
  }
  for (let i = 0; i < out.length; i++) out[i] /= whitening.rootWeight[i];
  return out;
}

/** Σᵢᵢ of every row. */
export function rowVariances(
  data: Observations,
  { at, rootWeight, groupDirection, groupStretch }: Whitening,
): Float64Array {
  const out = new Float64Array(data.n);
  for (let g = 0; g + 1 < data.groupStart.length; g++) {
    const shared = groupStretch[g] ** 2 - 1;
    for (let i = data.groupStart[g]; i < data.groupStart[g + 1]; i++) {
      out[i] = (1 + shared * groupDirection[i] ** 2) / rootWeight[i] ** 2 + at.tau2;
    }
  }
  return out;
}

/**
 * C = W⁻¹ of one study, so that its block of Σ is C C'.
 *
 * @param k number of the study
 * @param into room for at least m² numbers, m the study's rows; made where none is given
 * @returns m×m, row-major
 */
export function studyRoot(data: Observations, whitening: Whitening, k: number, into?: Float64Array): Float64Array {
  const from = data.studyStart[k];
  const to = data.studyStart[k + 1];
  const m = to - from;
  const root = into ?? new Float64Array(m * m);
  const column = new Float64Array(m);
  for (let j = 0; j < m; j++) {
    column.fill(0);
    column[j] = 1;
    shrinkAlong(column, whitening.studyDirection, from, to, 1 - whitening.studyStretch[k], from);
    for (let g = data.studyGroups[k]; g < data.studyGroups[k + 1]; g++) {
      const stretch = whitening.groupStretch[g];
      shrinkAlong(column, whitening.groupDirection, data.groupStart[g], data.groupStart[g + 1], 1 - stretch, from);
    }
    for (let i = 0; i < m; i++) root[i * m + j] = column[i] / whitening.rootWeight[from + i];
  }
  return root;
}

function undoGroups(
  data: Observations,
  whitening: Pick<Whitening, 'at' | 'groupStretch' | 'groupDirection'>,
  z: Float64Array,
): void {
  if (whitening.at.rho === 0) return;
  for (let g = 0; g + 1 < data.groupStart.length; g++) {
    const stretch = whitening.groupStretch[g];
    if (stretch === 1) continue;
    shrinkAlong(z, whitening.groupDirection, data.groupStart[g], data.groupStart[g + 1], shrinkage(stretch));
  }
}

function undoStudies(data: Observations, whitening: Whitening, z: Float64Array): Float64Array {
  if (whitening.at.tau2 === 0) return z;
  for (let k = 0; k + 1 < data.studyStart.length; k++) {
    const kappa = shrinkage(whitening.studyStretch[k]);
    shrinkAlong(z, whitening.studyDirection, data.studyStart[k], data.studyStart[k + 1], kappa);
  }
  return z;
}

/** κ = 1 − 1/stretch, written so that a stretch near 1 loses no digits of its own. */
function shrinkage(stretch: number): number {
  return (stretch - 1) / stretch;
}

/** z ← (I − κ uu') z on rows from … to; z's first element is row `first`. */
function shrinkAlong(z: Float64Array, u: Float64Array, from: number, to: number, kappa: number, first = 0): void {
  let product = 0;
  for (let i = from; i < to; i++) product += u[i] * z[i - first];
  product *= kappa;
  for (let i = from; i < to; i++) z[i - first] -= product * u[i];
}

function scaleRows(z: Float64Array, factor: Float64Array): Float64Array {
  for (let i = 0; i < z.length; i++) z[i] *= factor[i];
  return z;
}
