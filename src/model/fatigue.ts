/**
 * Fatigue: how much performance has dropped some hours after a session, and when it is back.
 *
 *     drop = (a + b · reserve) · exp(−hours / T)      drop = −ln(after / before)
 *
 * fitted separately by training status. For a given T the model is linear in a and b and is the mixed
 * model of the rest; T maximises its likelihood (ML), and its interval is the profile likelihood's:
 * every T with 2 (l_max − l(T)) ≤ χ²₁ (Venzon & Moolgavkar 1988, Appl Stat 37:87).
 *
 * The hours until the expected drop is inside a margin m are t(r) = T ln((a + b r)/m). Their interval
 * is profiled too: with t(r) fixed, a = m exp(t/T) − b r, and l is maximised over b and T. The
 * variance components stay at their values at the maximum there.
 *
 * Assumes that performance, higher being better, returns exponentially to its baseline.
 */
import type { Effect } from '../evidence/effects.ts';
import type { Arm } from '../evidence/schema.ts';
import { TRAINING_STATUSES } from '../evidence/vocabulary.ts';
import { chiSquareOneQuantile } from '../numerics/distributions.ts';
import { bisect, maximiseOnInterval } from '../numerics/roots.ts';
import { rangeOf, toObservations } from './bandFit.ts';
import { logLikelihoods } from './likelihood.ts';
import { type Fit, fitModel } from './mixed.ts';
import { arrangeObservations } from './observations.ts';
import { type PlainInference, packInference } from './response.ts';
import type { Estimate, ExcludedRow, FitFailure } from './result.ts';
import { inferContrast } from './robust.ts';
import { selectRows } from './selection.ts';
import type { Settings } from './settings.ts';
import { estimateVarianceComponents } from './varianceComponents.ts';

/** Hours between which T is looked for: an hour to a month. */
const LEAST_HOURS = 1;
const MOST_HOURS = 720;
/** Reserves, repetitions, for which recovery is listed where they were studied. */
const LISTED_RESERVES = [0, 1, 2, 3, 4, 5] as const;
/** Hours between the points of a drawn recovery curve, and its length. */
const CURVE_STEP = 4;
const CURVE_END = 96;

export interface Recovery {
  readonly reserve: number;
  /** Hours until the expected drop is inside the margin; 0 where it never leaves it. */
  readonly hours: number;
  /** Profile limits; null where this evidence does not limit them. */
  readonly low: number | null;
  readonly high: number | null;
  /** Expected drop (log ratio, above 0 a loss) along the hours. */
  readonly curve: readonly { readonly hours: number; readonly drop: number }[];
}

export interface FatigueByStatus {
  readonly status: (typeof TRAINING_STATUSES)[number];
  readonly rows: number;
  readonly studies: number;
  /** a: drop at once after a session at reserve 0, log ratio; robust, T taken as known. */
  readonly start: Estimate | null;
  /** b: change of that drop per repetition in reserve. */
  readonly perReserve: Estimate | null;
  /** T in hours, with its profile limits; null where not limited. */
  readonly decay: { readonly hours: number; readonly low: number | null; readonly high: number | null } | null;
  readonly recovery: readonly Recovery[];
  /** Of a and b, T taken as known: for a difference of two sessions' drops. */
  readonly inference: PlainInference | null;
  readonly failure: FitFailure | null;
}

export interface Fatigue {
  /** Margin inside which a drop counts as recovered, log ratio. */
  readonly margin: number;
  readonly excluded: readonly ExcludedRow[];
  readonly byStatus: readonly FatigueByStatus[];
}

export function analyseFatigue(arms: readonly Arm[], settings: Settings): Fatigue {
  const { effects, excluded } = selectRows(arms, {
    ...settings,
    outcome: 'fatigue',
    metric: 'log-ratio',
    split: null,
    adjust: [],
  });
  const margin = -Math.log1p(-settings.fatigueMargin / 100);
  const byStatus = TRAINING_STATUSES.map((status) =>
    fitStatus(
      effects.filter(({ arm }) => arm.training_status === status),
      status,
      margin,
      settings,
    ),
  );
  return { margin, excluded, byStatus };
}

function fitStatus(
  effects: readonly Effect[],
  status: FatigueByStatus['status'],
  margin: number,
  settings: Settings,
): FatigueByStatus {
  const counts = { status, rows: effects.length, studies: new Set(effects.map(({ arm }) => arm.study)).size };
  const problem = new FatigueProblem(effects, settings.rho);
  const failed = (failure: FitFailure): FatigueByStatus => ({
    ...counts,
    start: null,
    perReserve: null,
    decay: null,
    recovery: [],
    inference: null,
    failure,
  });
  const refusal = problem.refuse();
  if (refusal) return failed(refusal);
  const logHours = maximiseOnInterval((x) => problem.profile(Math.exp(x)), Math.log(LEAST_HOURS), Math.log(MOST_HOURS));
  const hours = Math.exp(logHours.at);
  const outcome = fitModel(problem.observations, problem.columns(hours), { rho: settings.rho, weighting: 'mixed' });
  if (!outcome.fit) return failed(outcome.failure);
  const cut = logHours.value - 0.5 * chiSquareOneQuantile(settings.confidence);
  const holds = (x: number) => problem.profile(Math.exp(x)) >= cut;
  const low = holds(Math.log(LEAST_HOURS))
    ? null
    : Math.exp(bisect((x) => !holds(x), Math.log(LEAST_HOURS), logHours.at));
  const high = holds(Math.log(MOST_HOURS)) ? null : Math.exp(bisect(holds, logHours.at, Math.log(MOST_HOURS)));
  return {
    ...counts,
    start: inferContrast(outcome.fit.inference, [1, 0], settings.confidence),
    perReserve: inferContrast(outcome.fit.inference, [0, 1], settings.confidence),
    decay: { hours, low, high },
    recovery: listRecovery(problem, outcome.fit, hours, margin, settings.confidence),
    inference: packInference(outcome.fit.inference),
    failure: null,
  };
}

function listRecovery(
  problem: FatigueProblem,
  fit: Fit,
  hours: number,
  margin: number,
  confidence: number,
): Recovery[] {
  const [a, b] = fit.inference.coefficients;
  const studied = rangeOf(problem.reserves) ?? { low: 0, high: 0 };
  const variances = problem.variancesAt(hours);
  const profile = (reserve: number, recovery: number) => problem.profileRecovery(reserve, recovery, margin, variances);
  const best = problem.likelihoodAt(hours, variances);
  const cut = best - 0.5 * chiSquareOneQuantile(confidence);
  return LISTED_RESERVES.filter((reserve) => reserve >= studied.low && reserve <= studied.high).map((reserve) => {
    const start = a + b * reserve;
    const point = start > margin ? hours * Math.log(start / margin) : 0;
    const holds = (recovery: number) => profile(reserve, recovery) >= cut;
    const low = holds(0) ? 0 : bisect((recovery) => !holds(recovery), 0, point);
    const high = holds(MOST_HOURS) ? null : bisect(holds, point, MOST_HOURS);
    const curve = Array.from({ length: CURVE_END / CURVE_STEP + 1 }, (_, i) => {
      const after = i * CURVE_STEP;
      return { hours: after, drop: start * Math.exp(-after / hours) };
    });
    return {
      reserve,
      hours: point,
      low: Math.min(low, point),
      high: high === null ? null : Math.max(high, point),
      curve,
    };
  });
}

/** The rows of one status and the likelihoods asked of them. */
class FatigueProblem {
  readonly reserves: readonly number[];
  readonly observations: ReturnType<typeof toObservations>;
  readonly #after: readonly number[];
  readonly #rho: number;
  readonly #data: ReturnType<typeof arrangeObservations>;

  constructor(effects: readonly Effect[], rho: number) {
    this.reserves = effects.map(({ arm }) => arm.reserve_reps ?? Number.NaN);
    this.#after = effects.map(({ arm }) => arm.hours_after ?? Number.NaN);
    this.observations = toObservations(effects).map((observation) => ({ ...observation, y: -observation.y }));
    this.#rho = rho;
    this.#data = arrangeObservations(this.observations);
  }

  refuse(): FitFailure | null {
    const studies = this.#data.studies.length;
    if (studies < 2)
      return {
        kind: 'too-few-studies',
        reason: `too few studies have this outcome: ${studies}, and at least 2 are needed`,
      };
    const reserve = rangeOf(this.reserves);
    if (reserve && reserve.low === reserve.high) {
      return { kind: 'reserve-does-not-vary', reason: `every row has reserve ${reserve.low}` };
    }
    const hours = rangeOf(this.#after);
    if (hours && hours.low === hours.high) {
      return {
        kind: 'rank-deficient',
        reason: `every row was measured after ${hours.low} hours; a return needs at least two times`,
      };
    }
    return null;
  }

  /** exp(−h/T) and reserve · exp(−h/T), in the order of the rows. */
  columns(hours: number): [number[], number[]] {
    const fade = this.#after.map((after) => Math.exp(-after / hours));
    return [fade, fade.map((value, i) => value * this.reserves[i])];
  }

  /** l_ML at T, everything else at its maximum. */
  profile(hours: number): number {
    return estimateVarianceComponents(this.#data, this.#arranged(this.columns(hours)), this.#rho, ['ml']).ml
      .logLikelihood;
  }

  /** Variance components at T by ML. */
  variancesAt(hours: number) {
    const { tau2, omega2 } = estimateVarianceComponents(this.#data, this.#arranged(this.columns(hours)), this.#rho, [
      'ml',
    ]).ml;
    return { tau2, omega2, rho: this.#rho };
  }

  likelihoodAt(hours: number, at: ReturnType<FatigueProblem['variancesAt']>): number {
    return logLikelihoods(this.#data, this.#arranged(this.columns(hours)), at).ml;
  }

  /** l_ML with the recovery of a reserve fixed, maximised over b and T. */
  profileRecovery(
    reserve: number,
    recovery: number,
    margin: number,
    at: ReturnType<FatigueProblem['variancesAt']>,
  ): number {
    const atDecay = (logHours: number) => {
      const hours = Math.exp(logHours);
      const [fade] = this.columns(hours);
      const start = margin * Math.exp(recovery / hours);
      const y = Float64Array.from(this.#data.source, (index, row) => this.#data.y[row] - start * fade[index]);
      const slope = fade.map((value, i) => value * (this.reserves[i] - reserve));
      return logLikelihoods({ ...this.#data, y }, this.#arranged([slope]), at).ml;
    };
    return maximiseOnInterval(atDecay, Math.log(LEAST_HOURS), Math.log(MOST_HOURS)).value;
  }

  #arranged(columns: readonly (readonly number[])[]): Float64Array[] {
    return columns.map((column) => Float64Array.from(this.#data.source, (index) => column[index]));
  }
}
