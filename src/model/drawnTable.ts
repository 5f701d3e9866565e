/** One drawn table as it can be looked at: its rows, and what each curve makes of them. */
import {
  answerTable,
  type Cell,
  COVERAGE_QUESTION,
  type DrawnTable,
  drawTables,
  fitDrawn,
  type TableAnswer,
} from './coverage.ts';
import { drawCurve } from './curvePoints.ts';
import type { CurvePoint } from './result.ts';
import type { Curve } from './settings.ts';
import { ALL_TRUTHS, trueTargetOf } from './truths.ts';

export interface DrawnRow {
  readonly study: string;
  /** Repetitions. */
  readonly reserve: number;
  /** Log ratio, with its standard error. */
  readonly effect: number;
  readonly standardError: number;
}

export interface DrawnFit {
  readonly curve: Curve;
  /** Empty where no fit was made. */
  readonly points: readonly Pick<CurvePoint, 'reserve' | 'estimate' | 'ciLow' | 'ciHigh'>[];
  readonly answer: TableAnswer;
}

export interface DescribedTable {
  readonly cell: Cell;
  readonly rows: readonly DrawnRow[];
  /** In the order of the curves asked for. */
  readonly fits: readonly DrawnFit[];
}

/** The first table of a cell, which is the first of any number of tables drawn with this seed. */
export function describeFirst(cell: Cell, curves: readonly Curve[], seed: number): DescribedTable {
  const table = drawTables(cell, seed).next().value;
  const trueTarget = trueTargetOf(ALL_TRUTHS[cell.truth], COVERAGE_QUESTION.keptShare);
  return {
    cell,
    rows: table.observations.map(({ study, y, v }, i) => ({
      study,
      reserve: table.reserves[i],
      effect: y,
      standardError: Math.sqrt(v),
    })),
    fits: curves.map((curve) => ({
      curve,
      points: pointsOf(table, curve),
      answer: answerTable(table, curve, trueTarget),
    })),
  };
}

function pointsOf(table: DrawnTable, curve: Curve): DrawnFit['points'] {
  const { basis, outcome } = fitDrawn(table, curve);
  if (!outcome.fit) return [];
  const points = drawCurve(outcome.fit, basis.at, Math.max(...table.reserves), COVERAGE_QUESTION.confidence);
  return points.map(({ reserve, estimate, ciLow, ciHigh }) => ({ reserve, estimate, ciLow, ciHigh }));
}
