/** The lesson on intervals as a page reads without a browser's tables: each step with what calibration measured. */
import { countHeld } from '../figures/simulation/words.ts';
import { DEFAULT_EXPERIMENT, type Experiment } from '../islands/intervals/experiment.ts';
import { lessonSteps } from '../islands/intervals/lessonSteps.ts';
import { keyOf, type MeasuredCells } from '../islands/intervals/Measured.tsx';
import { type CurveResult, type Result, resultOf } from '../islands/intervals/results.ts';
import { makeWholeRun } from '../islands/intervals/wholeRun.ts';
import type { CurveCoverage } from '../model/coverage.ts';
import { measured } from './calibration.ts';

const { tables, cells, fewest, further } = measured.shapes;
const all = [...cells, ...fewest, ...further];

/** The run that the page begins with. */
export const startRun = makeWholeRun(DEFAULT_EXPERIMENT);

export const measuredCells: MeasuredCells = {
  tables,
  held: Object.fromEntries(
    all.map(({ truth, studies, layout, shapes: { line, flexible } }) => [
      keyOf({ truth, studies, reserves: layout }),
      { line: line.held, flexible: flexible.held },
    ]),
  ),
};

/** Question and measured answer of each step. */
export const measuredSteps = lessonSteps(DEFAULT_EXPERIMENT.seed).map(({ title, ask, before, after, brief }) => ({
  title,
  ask,
  came: brief(resultIn(after.experiment), resultIn(before.experiment)),
}));

/** @throws where a step asks for tables that were not measured */
function resultIn(experiment: Experiment): Result {
  const key = keyOf(experiment);
  const cell = all.find(({ truth, studies, layout }) => keyOf({ truth, studies, reserves: layout }) === key);
  if (!cell) throw new Error(`invalid step of the lesson; no cell of the calibration: ${key}`);
  const { first = null } = key === keyOf(startRun.experiment) ? (resultOf(startRun).line ?? {}) : {};
  return { line: toResult(cell.shapes.line, first), flexible: toResult(cell.shapes.flexible, null) };
}

function toResult(coverage: CurveCoverage, first: CurveResult['first']): CurveResult {
  const { given, medianWidth, refused } = coverage;
  return {
    given,
    held: countHeld(coverage),
    refused: refused.fit + refused.growth + refused.noDifference,
    medianWidth,
    first,
  };
}
