/**
 * How often the interval of the target, as it is shown, holds the true target, whatever the truth: the straight
 * line and the flexible curve on the same simulated tables.
 */
import type { CurveCoverage } from '../../src/figures/coverageCells.ts';
import { fitCarriedArranged } from '../../src/model/carriedFit.ts';
import { makeCurve } from '../../src/model/curve.ts';
import { arrangeObservations, type Observations } from '../../src/model/observations.ts';
import type { Target } from '../../src/model/result.ts';
import type { Curve } from '../../src/model/settings.ts';
import { type Layout, type Scatter, simulateGrowth } from '../../src/model/simulation.ts';
import { findTarget, noTarget, SCAN_STEPS } from '../../src/model/target.ts';
import { ALL_TRUTHS, type TruthName, trueTargetOf } from '../../src/model/truths.ts';
import { quantileOfSorted } from '../../src/numerics/quantile.ts';
import { makeRandom } from '../../src/numerics/random.ts';
import { CONFIDENCE, KEPT_SHARE, TRUTH } from './calibration.ts';

/** Shapes that are fitted to every table, side by side. */
export const SHAPES = ['line', 'flexible'] as const satisfies readonly Curve[];
export const SHAPE_STUDY_COUNTS = [8, 15, 30] as const;
export const SHAPE_TABLES = 2000;
/** Studies and rows scatter as around the straight line. */
export const SCATTER: Scatter = { tau: TRUTH.tau, omega: TRUTH.omega, rho: TRUTH.rho };

/** Tables that share a truth, a number of studies and a layout of reserves. */
export interface Cell {
  readonly truth: TruthName;
  readonly studies: number;
  readonly layout: Layout;
}

export type CellResult = Cell & {
  readonly trueTarget: number | null;
  readonly tables: number;
  readonly shapes: Readonly<Record<(typeof SHAPES)[number], CurveCoverage>>;
};

/** Every cell has its own tables, whatever is measured before it. */
export function calibrateCell(cell: Cell, tables: number, seed: number): CellResult {
  const growth = ALL_TRUTHS[cell.truth];
  const trueTarget = trueTargetOf(growth, KEPT_SHARE);
  const random = makeRandom(seed);
  const answers = SHAPES.map((): Answer[] => []);
  for (let i = 0; i < tables; i++) {
    const { observations, reserves } = simulateGrowth(growth, SCATTER, cell.layout, cell.studies, random);
    const data = arrangeObservations(observations);
    const furthest = Math.max(...reserves);
    SHAPES.forEach((shape, j) => {
      answers[j].push({ furthest, ...answer(data, reserves, shape, furthest) });
    });
  }
  const [line, flexible] = answers.map((list) => summarise(list, trueTarget));
  return { ...cell, trueTarget: Number.isFinite(trueTarget) ? trueTarget : null, tables, shapes: { line, flexible } };
}

interface Answer {
  readonly furthest: number;
  readonly fitted: boolean;
  readonly target: Target;
}

function answer(data: Observations, reserves: readonly number[], shape: Curve, furthest: number) {
  const basis = makeCurve(shape, reserves);
  const rows = reserves.map(basis.at);
  const columns = basis.terms.map((_, j) => rows.map((row) => row[j]));
  const { fit, failure } = fitCarriedArranged(data, columns, {
    rho: SCATTER.rho,
    weighting: 'mixed',
    answerOnly: true,
  });
  if (!fit) return { fitted: false, target: noTarget(KEPT_SHARE, failure.reason) };
  const target = findTarget(fit.inference, basis.at, {
    keptShare: KEPT_SHARE,
    confidence: CONFIDENCE,
    furthest,
    nearest: Math.min(...reserves),
    studies: data.studies.length,
    step: SCAN_STEPS.coarse,
  });
  return { fitted: true, target };
}

function summarise(answers: readonly Answer[], trueTarget: number): CurveCoverage {
  const given = answers.flatMap(({ furthest, target: { point, low, high } }) =>
    point === null || low === null ? [] : [{ point, low, high, furthest }],
  );
  const count = given.length;
  const holding = given.filter(
    ({ low, high }) => low <= trueTarget && trueTarget <= (high ?? Number.POSITIVE_INFINITY),
  );
  const held = count > 0 ? holding.length / count : null;
  const refusals = answers.filter(({ fitted, target }) => fitted && target.point === null);
  const noDifference = refusals.filter(({ target }) => target.reachedEdge).length;
  const widths = given.map(({ low, high, furthest }) => (high ?? furthest) - low);
  return {
    given: count,
    held,
    heldError: held === null ? null : Math.sqrt((held * (1 - held)) / count),
    refused: {
      fit: answers.filter(({ fitted }) => !fitted).length,
      growth: refusals.length - noDifference,
      noDifference,
    },
    withoutUpperEnd: count > 0 ? given.filter(({ high }) => high === null).length / count : null,
    medianWidth: medianOf(widths),
    medianBias: Number.isFinite(trueTarget) ? medianOf(given.map(({ point }) => point - trueTarget)) : null,
  };
}

function medianOf(values: readonly number[]): number | null {
  return values.length > 0 ? quantileOfSorted(Float64Array.from(values).sort(), 0.5) : null;
}
