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
import { findRoot } from '../numerics/roots.ts';
import { countDistinctStudies } from './counts.ts';
import { FatigueLikelihood, LEAST_HOURS, MOST_HOURS } from './fatigueLikelihood.ts';
import type { Fit } from './mixed.ts';
import { type PlainInference, packInference } from './response.ts';
import type { Estimate, ExcludedRow, FitFailure } from './result.ts';
import { inferContrast } from './robust.ts';
import { selectRows } from './selection.ts';
import type { Settings } from './settings.ts';

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

/** @param arms all rows of the table; read on the log ratio, with all loads together and no covariates */
export function analyseFatigue(arms: readonly Arm[], settings: Settings): Fatigue {
  const { effects, excluded } = selectRows(arms, {
    ...settings,
    outcome: 'fatigue',
    metric: 'log-ratio',
    split: null,
    adjust: [],
  });
  const unknown = effects
    .filter(({ arm }) => arm.training_status === null)
    .map(({ arm }) => ({ line: arm.line, reason: 'training status is not known, and recovery is fitted by it' }));
  const margin = -Math.log1p(-settings.fatigueMargin / 100);
  const byStatus = TRAINING_STATUSES.map((status) =>
    fitStatus(
      effects.filter(({ arm }) => arm.training_status === status),
      status,
      margin,
      settings,
    ),
  );
  return { margin, excluded: [...excluded, ...unknown].sort((a, b) => a.line - b.line), byStatus };
}

function fitStatus(
  effects: readonly Effect[],
  status: FatigueByStatus['status'],
  margin: number,
  settings: Settings,
): FatigueByStatus {
  const counts = { status, rows: effects.length, studies: countDistinctStudies(effects) };
  const likelihood = new FatigueLikelihood(effects, settings.rho);
  const failed = (failure: FitFailure): FatigueByStatus => ({
    ...counts,
    start: null,
    perReserve: null,
    decay: null,
    recovery: [],
    inference: null,
    failure,
  });
  const refusal = likelihood.refuse();
  if (refusal) return failed(refusal);
  const best = likelihood.maximise();
  const hours = Math.exp(best.at);
  const outcome = likelihood.fitAt(hours);
  if (!outcome.fit) return failed(outcome.failure);
  const cut = best.value - 0.5 * chiSquareOneQuantile(settings.confidence);
  const limit = (end: number) => findLimit((logHours) => likelihood.profile(logHours) - cut, best.at, Math.log(end));
  const low = limit(LEAST_HOURS);
  const high = limit(MOST_HOURS);
  return {
    ...counts,
    start: inferContrast(outcome.fit.inference, [1, 0], settings.confidence),
    perReserve: inferContrast(outcome.fit.inference, [0, 1], settings.confidence),
    decay: { hours, low: low === null ? null : Math.exp(low), high: high === null ? null : Math.exp(high) },
    recovery: listRecovery(likelihood, outcome.fit, hours, margin, settings.confidence),
    inference: packInference(outcome.fit.inference),
    failure: null,
  };
}

function listRecovery(
  likelihood: FatigueLikelihood,
  fit: Fit,
  hours: number,
  margin: number,
  confidence: number,
): Recovery[] {
  const [a, b] = fit.inference.coefficients;
  const studied = likelihood.studied ?? { low: 0, high: 0 };
  const { best, ofRecovery } = likelihood.holdVariances(hours, margin);
  const cut = best - 0.5 * chiSquareOneQuantile(confidence);
  return LISTED_RESERVES.filter((reserve) => reserve >= studied.low && reserve <= studied.high).map((reserve) => {
    const start = a + b * reserve;
    const point = start > margin ? hours * Math.log(start / margin) : 0;
    const above = (recovery: number) => ofRecovery(reserve, recovery) - cut;
    const low = findLimit(above, point, 0) ?? 0;
    const high = findLimit(above, point, MOST_HOURS);
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

/**
 * Where a profile crosses its cut between its highest point and an end; null where it stays above it up
 * to the end.
 *
 * @param above profile minus cut
 */
function findLimit(above: (x: number) => number, highest: number, end: number): number | null {
  if (above(end) >= 0) return null;
  return above(highest) >= 0 ? findRoot(above, highest, end) : highest;
}
