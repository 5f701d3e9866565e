/**
 * Intervals of many drawn tables, one line a table, as one curve gives them. A line that misses the truth is
 * thick and crossed at the right; a table without an interval has a ring at the left; what reaches the right
 * edge has no upper end.
 */
import * as Plot from '@observablehq/plot';
import { summariseCoverage, type TableAnswer } from '../../model/coverage.ts';
import type { Curve } from '../../model/settings.ts';
import { MOST_RESERVE } from '../../model/simulation.ts';
import { describedByWords, type Figure } from '../figure.ts';
import { RESERVE_AXIS, RESERVE_FRAME } from '../looks.ts';
import {
  CURVE_LOOKS,
  nameCurve,
  PROMISED,
  stateHeld,
  stateRefused,
  writeAnswer,
  writeTrueTarget,
  writeWidth,
} from './words.ts';

export interface DrawnIntervalsOptions {
  readonly curve: Curve;
  /** Place among the curves that are compared: the first or the second. */
  readonly place: 0 | 1;
  /** Tables that are drawn in all, so that lines keep their places while they come. */
  readonly tables: number;
  /** Repetitions; Infinity where every reserve keeps the share. */
  readonly trueTarget: number;
}

/** Height of a table's line, pixels. */
const LINE = 2.2;
/** Right edge: a little beyond the largest reserve that is drawn. */
const EDGE = MOST_RESERVE + 0.3;

/** @param answers of the first tables, in the order in which they were drawn; there may be none yet */
export function drawnIntervals(answers: readonly TableAnswer[], options: DrawnIntervalsOptions): Figure {
  const { curve, place, tables, trueTarget } = options;
  const { colour } = CURVE_LOOKS[place];
  const lines = answers.flatMap(({ low, high, holds, point }, i) =>
    point === null || low === null ? [] : [{ table: i + 1, low, high: high ?? EDGE, isHeld: holds === true }],
  );
  const missed = lines.filter(({ isHeld }) => !isHeld);
  const refused = answers.flatMap(({ refusal }, i) => (refusal === null ? [] : [{ table: i + 1 }]));
  const coverage = summariseCoverage(answers, trueTarget);
  const rule = { y: 'table', x1: 'low', x2: 'high', stroke: colour } as const;
  const truth = Number.isFinite(trueTarget) ? [{ truth: trueTarget }] : [];
  return describedByWords({
    plot: {
      width: 420,
      height: RESERVE_FRAME.marginTop + RESERVE_FRAME.marginBottom + LINE * tables,
      ...RESERVE_FRAME,
      marginLeft: 28,
      marginRight: 20,
      x: { ...RESERVE_AXIS, domain: [0, EDGE] },
      y: { axis: null, domain: [tables + 0.5, 0.5] },
      marks: [
        Plot.frame({ anchor: 'left', stroke: 'var(--rule)' }),
        Plot.ruleY(
          lines.filter(({ isHeld }) => isHeld),
          { ...rule, strokeWidth: 1, strokeOpacity: 0.75 },
        ),
        Plot.ruleY(missed, { ...rule, strokeWidth: 2 }),
        Plot.dot(missed, {
          y: 'table',
          frameAnchor: 'right',
          dx: 10,
          r: 2,
          symbol: 'times',
          stroke: 'var(--ink)',
          strokeWidth: 1.2,
        }),
        Plot.dot(refused, { y: 'table', frameAnchor: 'left', dx: -10, r: 2.2, stroke: 'var(--ink)', strokeWidth: 1.2 }),
        Plot.ruleX(truth, { x: 'truth', stroke: 'var(--ink)', strokeWidth: 2, strokeDasharray: '2,3' }),
        Plot.text(truth, {
          x: 'truth',
          text: () => `truth ${writeTrueTarget(trueTarget)}`,
          frameAnchor: 'top',
          dy: -18,
          dx: trueTarget < 1.5 ? -8 : 0,
          textAnchor: trueTarget < 1.5 ? 'start' : 'middle',
          fill: 'var(--ink)',
          fontWeight: 600,
        }),
      ],
    },
    title:
      answers.length === 0 ? `${nameCurve(curve)}: no table drawn yet` : `${nameCurve(curve)}: ${stateHeld(coverage)}`,
    caption: captionOf(answers, options),
    table: {
      columns: ['table', 'target', 'interval, low', 'high', 'holds the truth'],
      // A table of hundreds of lines is made once, when the last is known.
      rows: answers.length < tables ? [] : answers.map((answer, i) => [i + 1, ...writeAnswer(answer)]),
    },
  });
}

function captionOf(answers: readonly TableAnswer[], { tables, trueTarget }: DrawnIntervalsOptions): string {
  const coverage = summariseCoverage(answers, trueTarget);
  const progress =
    answers.length < tables ? `${answers.length} of ${tables} tables drawn.` : `${tables} tables, a line each.`;
  const where = Number.isFinite(trueTarget)
    ? `Dotted: the true target, ${writeTrueTarget(trueTarget)} in reserve.`
    : 'Every reserve keeps the share: only an interval without an upper end holds that.';
  const missed = `A thick line with a cross at the right misses it; ${PROMISED} are promised to hold it.`;
  const open = coverage.withoutUpperEnd ?? 0;
  const isMostlyOpen = open > 0.5;
  const width = isMostlyOpen ? 'no upper end' : writeWidth(coverage);
  const typical = coverage.given > 0 ? `A typical interval ${isMostlyOpen ? 'has' : 'spans'} ${width}.` : '';
  const counted = isMostlyOpen ? '' : '; in that width they count up to the largest reserve of their table';
  const openEnd = open > 0 ? `Lines that reach the right edge have no upper end${counted}.` : '';
  const refused = stateRefused(coverage);
  const ring = answers.length - coverage.given === 1 ? 'It has' : 'They have';
  return [progress, where, missed, typical, openEnd, refused && `${refused} ${ring} a ring at the left.`]
    .filter(Boolean)
    .join(' ');
}
