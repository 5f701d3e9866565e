/**
 * How often the interval of a target, as it is shown, holds the true one. Tables are drawn from a known truth, each is
 * fitted and its curve turned round as a band of the site's table is, and the intervals that hold the truth are
 * counted. Calibration does this thousands of times; a reader does it a few hundred times.
 *
 * Every curve answers the same tables. A refusal is not an interval, and counts neither way.
 */
import { quantileOfSorted } from '../numerics/quantile.ts';
import { makeRandom } from '../numerics/random.ts';
import { fitCarriedArranged } from './carriedFit.ts';
import { type CurveBasis, makeCurve } from './curve.ts';
import { refuseDesign } from './designRefusal.ts';
import type { FitOutcome } from './mixed.ts';
import { arrangeObservations, type Observations } from './observations.ts';
import type { Curve } from './settings.ts';
import { type Layout, type Scatter, type SimulatedTable, simulateGrowth } from './simulation.ts';
import { findTarget, noTarget, SCAN_STEPS } from './target.ts';
import { ALL_TRUTHS, type TruthName, trueTargetOf } from './truths.ts';

/** Share of growth at reserve 0 that is to be kept, and level of the intervals. */
export const COVERAGE_QUESTION = { keptShare: 0.9, confidence: 0.95 } as const;
/** Studies and rows scatter like those of the demonstration's light loads. */
export const SCATTER: Scatter = { tau: 0.02, omega: 0.008, rho: 0.5 };

/** Tables that share a truth, a number of studies and a layout of reserves. */
export interface Cell {
  readonly truth: TruthName;
  readonly studies: number;
  readonly layout: Layout;
}

/** A table as the regression reads it. */
export interface DrawnTable extends SimulatedTable {
  readonly data: Observations;
}

/** Why a table gives no interval: no fit; growth at 0 not told from nothing; no difference of reserve seen. */
export type Refusal = 'fit' | 'growth' | 'noDifference';

/** What a curve makes of a table. */
export interface TableAnswer {
  /** Largest reserve in the table, repetitions. */
  readonly furthest: number;
  /** Target and its interval, repetitions; all null where it is refused. */
  readonly point: number | null;
  readonly low: number | null;
  /** Null also where the interval has no upper end. */
  readonly high: number | null;
  /** Null where there is an interval. */
  readonly refusal: Refusal | null;
  /** Whether the interval holds the true target; null where there is none. */
  readonly holds: boolean | null;
}

/** What one curve did with many tables. A refusal is not an interval that holds. */
export interface CurveCoverage {
  readonly given: number;
  /** Share of the intervals given that hold the true target, with its simulation error; null where none was given. */
  readonly held: number | null;
  readonly heldError: number | null;
  /** Tables without an interval. */
  readonly refused: Readonly<Record<Refusal, number>>;
  /** Share of the intervals given. */
  readonly withoutUpperEnd: number | null;
  /** Repetitions, within the studied range. */
  readonly medianWidth: number | null;
  /** Repetitions. */
  readonly medianBias: number | null;
}

/** Tables of a cell, one after the other and without end: the same for the same seed. */
export function* drawTables({ truth, studies, layout }: Cell, seed: number): Generator<DrawnTable, never> {
  const random = makeRandom(seed);
  for (;;) {
    const table = simulateGrowth(ALL_TRUTHS[truth], SCATTER, layout, studies, random);
    yield { ...table, data: arrangeObservations(table.observations) };
  }
}

/** What each curve makes of each table of a cell, one table after the other and without end. */
export function* answerTables(
  cell: Cell,
  curves: readonly Curve[],
  seed: number,
): Generator<readonly TableAnswer[], never> {
  const trueTarget = trueTargetOf(ALL_TRUTHS[cell.truth], COVERAGE_QUESTION.keptShare);
  const drawn = drawTables(cell, seed);
  for (;;) {
    const table = drawn.next().value;
    yield curves.map((curve) => answerTable(table, curve, trueTarget));
  }
}

/** The fit of a curve to a drawn table, without what only AICc needs. */
export function fitDrawn({ data, reserves }: DrawnTable, curve: Curve): { basis: CurveBasis; outcome: FitOutcome } {
  const basis = makeCurve(curve, reserves);
  const refusal = refuseDesign(reserves, basis);
  const rows = reserves.map(basis.at);
  const columns = basis.terms.map((_, j) => rows.map((row) => row[j]));
  const outcome: FitOutcome = refusal
    ? { fit: null, failure: refusal }
    : fitCarriedArranged(data, columns, { rho: SCATTER.rho, weighting: 'mixed', answerOnly: true });
  return { basis, outcome };
}

/** @param trueTarget repetitions; Infinity where every reserve keeps the share */
export function answerTable(table: DrawnTable, curve: Curve, trueTarget: number): TableAnswer {
  const { reserves, data } = table;
  const { basis, outcome } = fitDrawn(table, curve);
  const furthest = Math.max(...reserves);
  const { keptShare, confidence } = COVERAGE_QUESTION;
  const { point, low, high, reachedEdge } = outcome.fit
    ? findTarget(outcome.fit.inference, basis.at, {
        keptShare,
        confidence,
        furthest,
        nearest: Math.min(...reserves),
        studies: data.studies.length,
        step: SCAN_STEPS.coarse,
      })
    : noTarget(keptShare, outcome.failure.reason);
  if (point === null || low === null) {
    const refusal = !outcome.fit ? 'fit' : reachedEdge ? 'noDifference' : 'growth';
    return { furthest, point: null, low: null, high: null, refusal, holds: null };
  }
  const holds = low <= trueTarget && trueTarget <= (high ?? Number.POSITIVE_INFINITY);
  return { furthest, point, low, high, refusal: null, holds };
}

/** @param trueTarget repetitions; Infinity where every reserve keeps the share */
export function summariseCoverage(answers: readonly TableAnswer[], trueTarget: number): CurveCoverage {
  const given = answers.flatMap(({ furthest, point, low, high, holds }) =>
    point === null || low === null ? [] : [{ furthest, point, low, high, holds }],
  );
  const count = given.length;
  const held = count > 0 ? given.filter(({ holds }) => holds).length / count : null;
  const refusedFor = (reason: Refusal) => answers.filter(({ refusal }) => refusal === reason).length;
  return {
    given: count,
    held,
    heldError: held === null ? null : Math.sqrt((held * (1 - held)) / count),
    refused: { fit: refusedFor('fit'), growth: refusedFor('growth'), noDifference: refusedFor('noDifference') },
    withoutUpperEnd: count > 0 ? given.filter(({ high }) => high === null).length / count : null,
    medianWidth: medianOf(given.map(({ low, high, furthest }) => (high ?? furthest) - low)),
    medianBias: Number.isFinite(trueTarget) ? medianOf(given.map(({ point }) => point - trueTarget)) : null,
  };
}

function medianOf(values: readonly number[]): number | null {
  return values.length > 0 ? quantileOfSorted(Float64Array.from(values).sort(), 0.5) : null;
}
