/**
 * Log-likelihood of y = X β + u(study) + a(row) + e in θ = (τ², ω²), β profiled out.
 *
 *     Σ = V + τ² K + ω² I     K: 1 where two rows are of one study
 *     l_ML   = −½ [ n ln 2π + ln|Σ| + RSS ]
 *     l_REML = −½ [ (n − p) ln 2π + ln|Σ| + ln|X'Σ⁻¹X| + RSS ]
 * Derivatives: likelihoodDerivatives.ts.
 */
import {
  type LeastSquares,
  type LeastSquaresRoom,
  makeLeastSquaresRoom,
  triangularise,
} from '../numerics/leastSquares.ts';
import type { Observations } from './observations.ts';
import {
  makeWhiteningRoom,
  type Whitening,
  type WhiteningRoom,
  type WorkingCovariance,
  whiten,
  whitenInPlace,
} from './whitening.ts';

export type LikelihoodMethod = 'reml' | 'ml';

export interface LogLikelihoods {
  readonly reml: number;
  readonly ml: number;
}

/** Arrays that an evaluation is worked out in: for callers that evaluate again and again. */
export interface LikelihoodRoom {
  readonly whitening: WhiteningRoom;
  readonly solution: LeastSquaresRoom;
  /** Whitened columns and y. */
  readonly columns: readonly Float64Array[];
  readonly y: Float64Array;
  /** G, P y and Σ⁻¹1, and one column at hand. */
  readonly g: readonly Float64Array[];
  readonly py: Float64Array;
  readonly inverseOnes: Float64Array;
  readonly hand: Float64Array;
}

/** @param p number of columns of the design */
export function makeLikelihoodRoom(data: Observations, p: number): LikelihoodRoom {
  const column = () => new Float64Array(data.n);
  return {
    whitening: makeWhiteningRoom(data),
    solution: makeLeastSquaresRoom(p, data.n),
    columns: Array.from({ length: p }, column),
    y: column(),
    g: Array.from({ length: p }, column),
    py: column(),
    inverseOnes: column(),
    hand: column(),
  };
}

/** l at the given covariance; −Infinity where the columns are dependent. */
export function logLikelihoods(
  data: Observations,
  columns: readonly Float64Array[],
  at: WorkingCovariance,
  room: LikelihoodRoom = makeLikelihoodRoom(data, columns.length),
): LogLikelihoods {
  const whitening = whitenAll(data, columns, at, room);
  const factor = triangularise(room.columns, room.y);
  return logLikelihoodsOf(data.n, columns.length, whitening.logDeterminant, factor);
}

/** Puts the whitened columns and y into the room. */
export function whitenAll(
  data: Observations,
  columns: readonly Float64Array[],
  at: WorkingCovariance,
  room: LikelihoodRoom,
): Whitening {
  const whitening = whiten(data, at, room.whitening);
  for (let c = 0; c < columns.length; c++) whitenInPlace(data, whitening, copy(columns[c], room.columns[c]));
  whitenInPlace(data, whitening, copy(data.y, room.y));
  return whitening;
}

/**
 * The likelihoods of a whitened fit; −Infinity where its columns are dependent.
 *
 * @param n rows
 * @param p columns
 * @param logDeterminant ln |Σ|
 */
export function logLikelihoodsOf(
  n: number,
  p: number,
  logDeterminant: number,
  fit: Pick<LeastSquares, 'residualSumOfSquares' | 'logAbsDetR' | 'fullRank'>,
): LogLikelihoods {
  if (!fit.fullRank) return { reml: Number.NEGATIVE_INFINITY, ml: Number.NEGATIVE_INFINITY };
  const core = logDeterminant + fit.residualSumOfSquares;
  return {
    reml: -0.5 * ((n - p) * Math.log(2 * Math.PI) + core + 2 * fit.logAbsDetR),
    ml: -0.5 * (n * Math.log(2 * Math.PI) + core),
  };
}

/** Writes one column over another of the same length, which it returns. */
export function copy(from: Float64Array, to: Float64Array): Float64Array {
  to.set(from);
  return to;
}
