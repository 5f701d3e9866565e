/**
 * The share of intervals that hold the truth as tables come in, with the interval that so many tables leave it
 * (Wilson 1927): how far a count can be trusted, and that more tables narrow it.
 */
import * as Plot from '@observablehq/plot';
import { COVERAGE_QUESTION, type TableAnswer } from '../../model/coverage.ts';
import type { Curve } from '../../model/settings.ts';
import { inferShare } from '../../numerics/wilson.ts';
import { describedByWords, type Figure } from '../figure.ts';
import { formatNumber } from '../format.ts';
import { FIGURE_STYLE } from '../looks.ts';
import { CURVE_LOOKS, nameCurve, PROMISED, writeShare } from './words.ts';

export interface RunningCoverageOptions {
  readonly curves: readonly Curve[];
  /** Tables that are drawn in all. */
  readonly tables: number;
}

interface Step {
  readonly table: number;
  readonly held: number;
  readonly given: number;
  /** Per cent. */
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/** Every so many tables stand in the numbers, and the last. */
const LISTED = 20;

/** @param answers of each table, by curve */
export function runningCoverage(
  answers: readonly (readonly TableAnswer[])[],
  { curves, tables }: RunningCoverageOptions,
): Figure {
  const runs = curves.map((curve, place) => ({
    curve,
    steps: runOf(answers.map((of) => of[place])),
    ...CURVE_LOOKS[place],
  }));
  return describedByWords({
    plot: {
      width: 420,
      height: 220,
      marginLeft: 40,
      marginBottom: 40,
      marginTop: 24,
      marginRight: 12,
      style: FIGURE_STYLE,
      x: {
        label: 'tables drawn →',
        labelAnchor: 'center',
        labelOffset: 36,
        domain: [1, Math.max(2, tables)],
        ticks: 5,
        tickSize: 0,
      },
      y: { label: '% that hold the truth', domain: [0, 100], ticks: 5, grid: true, tickSize: 0 },
      marks: [
        Plot.ruleY([100 * COVERAGE_QUESTION.confidence], { stroke: 'var(--ink)', strokeDasharray: '2,4' }),
        ...runs.flatMap(({ steps, colour, dash }) => [
          Plot.areaY(steps, { x: 'table', y1: 'low', y2: 'high', fill: colour, fillOpacity: 0.18 }),
          Plot.lineY(steps, {
            x: 'table',
            y: 'share',
            stroke: colour,
            strokeWidth: 2.5,
            ...(dash ? { strokeDasharray: dash } : {}),
          }),
        ]),
      ],
    },
    title: 'The count settles as tables come in',
    caption: [
      ...runs.map(({ curve, steps }, place) => {
        const last = steps.at(-1);
        const line = `${nameCurve(curve)} (${CURVE_LOOKS[place].dash ? 'dashed' : 'drawn through'})`;
        return last ? `${line}: ${writeShare(last.held, last.given)}.` : `${line}: no interval yet.`;
      }),
      `In brackets and shaded: what so few tables leave open, a ${PROMISED} interval of the share. Dotted: the ${PROMISED} that are promised.`,
    ].join(' '),
    table: {
      columns: ['curve', 'tables drawn', 'intervals given', 'hold the truth', '%', 'interval, low', 'high'],
      rows:
        answers.length < tables
          ? []
          : runs.flatMap(({ curve, steps }) =>
              steps
                .filter(({ table }, i) => table % LISTED === 0 || i === steps.length - 1)
                .map(({ table, given, held, share, low, high }) => [
                  nameCurve(curve),
                  table,
                  given,
                  held,
                  ...[share, low, high].map((value) => formatNumber(value, 1)),
                ]),
            ),
    },
  });
}

/** One step for each table from the first that gave an interval on. */
function runOf(answers: readonly TableAnswer[]): readonly Step[] {
  let held = 0;
  let given = 0;
  return answers.flatMap(({ holds }, i) => {
    if (holds !== null) given++;
    if (holds) held++;
    if (given === 0) return [];
    const { share, low, high } = inferShare(held, given, COVERAGE_QUESTION.confidence);
    return [{ table: i + 1, held, given, share: 100 * share, low: 100 * low, high: 100 * high }];
  });
}
