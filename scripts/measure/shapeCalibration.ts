/**
 * How often the interval of the target, as it is shown, holds the true target, whatever the truth: the straight
 * line and the flexible curve on the same simulated tables.
 */
import {
  answerTables,
  type Cell,
  COVERAGE_QUESTION,
  type CurveCoverage,
  summariseCoverage,
} from '../../src/model/coverage.ts';
import type { Curve } from '../../src/model/settings.ts';
import { ALL_TRUTHS, trueTargetOf } from '../../src/model/truths.ts';

/** Shapes that are fitted to every table, side by side. */
export const SHAPES = ['line', 'flexible'] as const satisfies readonly Curve[];
export const SHAPE_STUDY_COUNTS = [8, 15, 30] as const;
export const SHAPE_TABLES = 2000;

export type CellResult = Cell & {
  readonly trueTarget: number | null;
  readonly tables: number;
  readonly shapes: Readonly<Record<(typeof SHAPES)[number], CurveCoverage>>;
};

/** Every cell has its own tables, whatever is measured before it. */
export function calibrateCell(cell: Cell, tables: number, seed: number): CellResult {
  const trueTarget = trueTargetOf(ALL_TRUTHS[cell.truth], COVERAGE_QUESTION.keptShare);
  const drawn = answerTables(cell, SHAPES, seed);
  const answers = Array.from({ length: tables }, () => drawn.next().value);
  const [line, flexible] = SHAPES.map((_, place) =>
    summariseCoverage(
      answers.map((table) => table[place]),
      trueTarget,
    ),
  );
  return { ...cell, trueTarget: Number.isFinite(trueTarget) ? trueTarget : null, tables, shapes: { line, flexible } };
}
