/** A whole run in one go: for the build, whose page begins with one. */
import { answerTables, type TableAnswer } from '../../model/coverage.ts';
import { describeFirst } from '../../model/drawnTable.ts';
import { cellOf, curvesOf, type Experiment, TABLES } from './experiment.ts';
import type { Run } from './running.state.ts';

/** Decimals of a repetition that a page carries of each interval: far more than are seen. */
const DIGITS = 4;

export function makeWholeRun(experiment: Experiment): Run {
  const cell = cellOf(experiment);
  const curves = curvesOf(experiment);
  const drawn = answerTables(cell, curves, experiment.seed);
  return {
    experiment,
    answers: Array.from({ length: TABLES }, () => drawn.next().value.map(round)),
    table: describeFirst(cell, curves, experiment.seed),
  };
}

function round({ point, low, high, ...answer }: TableAnswer): TableAnswer {
  const cut = (value: number | null) => (value === null ? null : Number(value.toFixed(DIGITS)));
  return { ...answer, point: cut(point), low: cut(low), high: cut(high) };
}
