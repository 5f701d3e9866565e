/**
 * Likelihoods of the fatigue model's decay T and of the hours until recovery (fatigue.ts).
 *
 *     drop = (a + b · reserve) · exp(−hours / T)
 *
 * For a given T the columns f = exp(−h/T) and g = reserve · f make it the mixed model of the rest. Where
 * the variances are held, what a likelihood needs of a T are the inner products of Wy, Wf and Wg, from
 * one whitening: with the recovery t of a reserve r fixed, a = s − b r with s = m exp(t/T), and the
 * residual sum of squares over b is
 *     |y − s f|² − ((y − s f)'(g − r f))² / |g − r f|²
 * in whitened terms, so that a search over T and t reads the rows once for every T.
 */
import type { Effect } from '../evidence/effects.ts';
import { dot } from '../numerics/dot.ts';
import { maximiseOnInterval } from '../numerics/roots.ts';
import { rangeOf, toObservations } from './bandFit.ts';
import { fitCarriedDesign, LEAST_STUDIES } from './carriedFit.ts';
import { refuseConstantReserve } from './designRefusal.ts';
import { logLikelihoodsOf } from './likelihood.ts';
import type { FitOutcome } from './mixed.ts';
import { arrangeObservations, type Observations } from './observations.ts';
import type { FitFailure } from './result.ts';
import { estimateVarianceComponents } from './varianceComponents.ts';
import { applyWhitening, type WorkingCovariance, whiten, whitenInPlace } from './whitening.ts';

/** Least T that is looked for, hours. */
export const LEAST_HOURS = 1;
/** Largest T that is looked for: a month of hours. */
export const MOST_HOURS = 720;

/** The rows of one training status. */
export class FatigueLikelihood {
  readonly studies: number;
  /** Smallest and largest reserve of the rows; null without rows. */
  readonly studied: ReturnType<typeof rangeOf>;
  readonly #rho: number;
  readonly #data: Observations;
  /** Reserve and hours after the session, in the order of the data. */
  readonly #reserves: Float64Array;
  /** Hours after the session that occur, and which of them each row has. */
  readonly #hours: readonly number[];
  readonly #hourOf: Int32Array;

  constructor(effects: readonly Effect[], rho: number) {
    this.#rho = rho;
    this.#data = arrangeObservations(toObservations(effects).map((one) => ({ ...one, y: -one.y })));
    const inOrder = (of: (effect: Effect) => number | null) =>
      Float64Array.from(this.#data.source, (index) => of(effects[index]) ?? Number.NaN);
    this.#reserves = inOrder(({ arm }) => arm.reserve_reps);
    const after = inOrder(({ arm }) => arm.hours_after);
    this.#hours = [...new Set(after)];
    const places = new Map(this.#hours.map((hours, place) => [hours, place]));
    this.#hourOf = Int32Array.from(after, (hours) => places.get(hours) ?? 0);
    this.studies = this.#data.studies.length;
    this.studied = rangeOf([...this.#reserves]);
  }

  /** Why nothing can be fitted; null where it can. */
  refuse(): FitFailure | null {
    if (this.studies < LEAST_STUDIES)
      return {
        kind: 'too-few-studies',
        reason: `too few studies have this outcome: ${this.studies}, and at least ${LEAST_STUDIES} are needed`,
      };
    const refusal = refuseConstantReserve([...this.#reserves]);
    if (refusal) return refusal;
    const hours = rangeOf(this.#hours);
    if (hours && hours.low === hours.high) {
      return {
        kind: 'rank-deficient',
        reason: `every row was measured after ${hours.low} hours; a return needs at least two times`,
      };
    }
    return null;
  }

  /** The mixed model with T held at `hours`. */
  fitAt(hours: number): FitOutcome {
    return fitCarriedDesign(this.#data, this.#columns(hours), { rho: this.#rho, weighting: 'mixed' });
  }

  /** Highest l_ML over T, everything else at its maximum too: ln T and l. */
  maximise(): { at: number; value: number } {
    return maximiseOnInterval((logHours) => this.profile(logHours), Math.log(LEAST_HOURS), Math.log(MOST_HOURS));
  }

  /** l_ML at ln T, everything else at its maximum. */
  profile(logHours: number): number {
    return this.#componentsAt(Math.exp(logHours)).logLikelihood;
  }

  /**
   * l_ML with the variances held at their values at T = `hours`: at T itself, and with the recovery t of
   * a reserve fixed, maximised over b and T.
   *
   * @param margin inside which a drop counts as recovered, log ratio
   */
  holdVariances(hours: number, margin: number) {
    const { tau2, omega2 } = this.#componentsAt(hours);
    const products = new InnerProducts(this.#data, { tau2, omega2, rho: this.#rho }, (logHours) =>
      this.#columns(Math.exp(logHours)),
    );
    return {
      best: products.likelihoodAt(Math.log(hours)),
      ofRecovery: (reserve: number, recovery: number) =>
        maximiseOnInterval(
          (logHours) => products.ofRecovery(logHours, reserve, margin * Math.exp(recovery / Math.exp(logHours))),
          Math.log(LEAST_HOURS),
          Math.log(MOST_HOURS),
        ).value,
    };
  }

  #componentsAt(hours: number) {
    return estimateVarianceComponents(this.#data, this.#columns(hours), this.#rho, ['ml']).ml;
  }

  /** f and g. */
  #columns(hours: number): [Float64Array, Float64Array] {
    const fades = this.#hours.map((after) => Math.exp(-after / hours));
    const f = new Float64Array(this.#data.n);
    const g = new Float64Array(this.#data.n);
    for (let i = 0; i < f.length; i++) {
      f[i] = fades[this.#hourOf[i]];
      g[i] = f[i] * this.#reserves[i];
    }
    return [f, g];
  }
}

/** Inner products of Wy, Wf and Wg at one T. */
type Products = Readonly<Record<'yf' | 'yg' | 'ff' | 'fg' | 'gg', number>>;

/** The likelihoods at one working covariance, from inner products that are kept for every T looked at. */
class InnerProducts {
  readonly #known = new Map<number, Products>();
  readonly #whitened: Float64Array;
  readonly #yy: number;
  readonly #productsOf: (logHours: number) => Products;
  readonly #fromRss: (residualSumOfSquares: number) => number;

  constructor(data: Observations, at: WorkingCovariance, columns: (logHours: number) => [Float64Array, Float64Array]) {
    const whitening = whiten(data, at);
    this.#whitened = applyWhitening(data, whitening, data.y);
    this.#yy = dot(this.#whitened, this.#whitened);
    this.#productsOf = (logHours) => {
      const [f, g] = columns(logHours).map((column) => whitenInPlace(data, whitening, column));
      const y = this.#whitened;
      return { yf: dot(y, f), yg: dot(y, g), ff: dot(f, f), fg: dot(f, g), gg: dot(g, g) };
    };
    this.#fromRss = (residualSumOfSquares) =>
      logLikelihoodsOf(data.n, 0, whitening.logDeterminant, { residualSumOfSquares, logAbsDetR: 0, fullRank: true }).ml;
  }

  /** Over a and b. */
  likelihoodAt(logHours: number): number {
    const { yf, yg, ff, fg, gg } = this.#at(logHours);
    // g's part across f, and what of y is along each.
    const across = gg - (fg * fg) / ff;
    const along = yg - (fg * yf) / ff;
    return this.#fromRss(this.#yy - (yf * yf) / ff - (along * along) / across);
  }

  /** Over b, with the drop at once after a session at `reserve` held at `start`; −Infinity far outside. */
  ofRecovery(logHours: number, reserve: number, start: number): number {
    const { yf, yg, ff, fg, gg } = this.#at(logHours);
    const slope2 = gg - 2 * reserve * fg + reserve * reserve * ff;
    const along = yg - reserve * yf - start * (fg - reserve * ff);
    const rss = this.#yy - 2 * start * yf + start * start * ff - (along * along) / slope2;
    return Number.isFinite(rss) ? this.#fromRss(rss) : Number.NEGATIVE_INFINITY;
  }

  #at(logHours: number): Products {
    const known = this.#known.get(logHours) ?? this.#productsOf(logHours);
    this.#known.set(logHours, known);
    return known;
  }
}
