/** One drawn table with the truth that it was drawn from, and the curves that an analyst fits to it. */
import * as Plot from '@observablehq/plot';
import { COVERAGE_QUESTION } from '../../model/coverage.ts';
import type { DescribedTable, DrawnFit } from '../../model/drawnTable.ts';
import { MOST_RESERVE } from '../../model/simulation.ts';
import { ALL_TRUTHS, trueTargetOf } from '../../model/truths.ts';
import { countOf, countStudies } from '../../numerics/countOf.ts';
import { toPercent, writePercent } from '../../numerics/percent.ts';
import { TRUTH_WORDS } from '../coverageCells.ts';
import { describedByWords, type Figure } from '../figure.ts';
import { upperFirst } from '../firstLetter.ts';
import { formatNumber, formatRange } from '../format.ts';
import { RESERVE_AXIS, RESERVE_FRAME, TOP_LABEL } from '../looks.ts';
import { CURVE_LOOKS, nameCurve, PROMISED, REFUSAL_WORDS, writeTrueTarget } from './words.ts';

/** How much of a table is shown: the curve it comes from, the true target on that too, its rows, and what curves make of them. */
export type Shown = 'curve' | 'truth' | 'rows' | 'fits';

/** Radius of the mark of a row whose standard error is in the middle of those drawn, pixels. */
const RADIUS = 4.5;
/** Standard error in the middle of those drawn, log ratio. */
const MIDDLE_ERROR = 0.0125;
/** Distance of the points at which the truth is drawn, repetitions. */
const STEP = 0.1;
/** Scale of growth, per cent: the same for all, so that figures can be compared. A large table has rows beyond it. */
const GROWTH = { least: -4, most: 18 } as const;

/** @param shown how much of the table */
export function drawnTable(table: DescribedTable, shown: Shown): Figure {
  const { truth } = table.cell;
  const growth = ALL_TRUTHS[truth];
  const { keptShare } = COVERAGE_QUESTION;
  const trueTarget = trueTargetOf(growth, keptShare);
  const line = Array.from({ length: Math.round(MOST_RESERVE / STEP) + 1 }, (_, i) => ({
    reserve: i * STEP,
    growth: toPercent(growth(i * STEP)),
  }));
  const rows = shown === 'curve' || shown === 'truth' ? [] : table.rows.map(drawRow);
  const beyond = rows.filter(({ growth: grown }) => grown < GROWTH.least || grown > GROWTH.most).length;
  const fits = shown === 'fits' ? table.fits : [];
  const target =
    Number.isFinite(trueTarget) && shown !== 'curve'
      ? [{ truth: trueTarget, growth: toPercent(growth(trueTarget)), label: `truth ${writeTrueTarget(trueTarget)}` }]
      : [];
  return describedByWords({
    plot: {
      width: 420,
      height: 340,
      ...RESERVE_FRAME,
      x: { ...RESERVE_AXIS, domain: [-0.2, MOST_RESERVE + 0.2] },
      y: { label: 'growth, %', domain: [GROWTH.least, GROWTH.most], ticks: 6, grid: true, tickSize: 0 },
      r: { type: 'identity' },
      marks: [
        Plot.ruleY([0], { stroke: 'currentColor', strokeOpacity: 0.5 }),
        Plot.dot(rows, {
          x: 'reserve',
          y: 'growth',
          r: 'radius',
          fill: 'var(--ink)',
          fillOpacity: 0.08,
          stroke: 'var(--ink)',
          strokeOpacity: 0.45,
          clip: true,
        }),
        ...fits.flatMap(curveMarks),
        Plot.ruleX(target, { x: 'truth', stroke: 'var(--ink)', strokeWidth: 2, strokeDasharray: '2,3' }),
        Plot.lineY(line, { x: 'reserve', y: 'growth', stroke: 'var(--ink)', strokeWidth: 2.5, strokeDasharray: '2,4' }),
        Plot.text(target, {
          x: 'truth',
          text: 'label',
          ...TOP_LABEL,
          dx: 6,
          textAnchor: 'start',
          fill: 'var(--ink)',
        }),
        ...fits.flatMap(barMarks),
      ],
    },
    title: titleOf(table, shown),
    caption: [
      `Dotted: the truth, “${TRUTH_WORDS[truth]}”.`,
      shown === 'curve' ? '' : stateTarget(trueTarget),
      rows.length > 0
        ? `Marks: ${countOf(rows.length, 'row')} of ${countStudies(table.cell.studies)}, drawn around it with error${beyond > 0 ? `, ${beyond} of them beyond the picture` : ''}; larger ones are more precise.`
        : '',
      ...fits.map(
        (fit, place) => `${nameCurve(fit.curve)}, ${place === 0 ? 'dashed' : 'drawn through'}: ${stateFit(fit)}.`,
      ),
      fits.length > 0 ? `Bars at the foot: the ${PROMISED} intervals of the target.` : '',
    ]
      .filter(Boolean)
      .join(' '),
    table: {
      columns: ['study', 'reserve', 'growth (%)', 'standard error (points of %)'],
      rows: rows.map(({ study, reserve, growth: grown, error }) => [
        study,
        reserve,
        formatNumber(grown, 1),
        formatNumber(error, 1),
      ]),
    },
  });
}

function stateTarget(trueTarget: number): string {
  const share = writePercent(COVERAGE_QUESTION.keptShare);
  return Number.isFinite(trueTarget)
    ? `Up to ${writeTrueTarget(trueTarget)} in reserve it keeps ${share} of its growth at reserve 0.`
    : `Every reserve keeps ${share} of its growth at reserve 0.`;
}

function drawRow({ study, reserve, effect, standardError }: DescribedTable['rows'][number]) {
  return {
    study,
    reserve,
    growth: toPercent(effect),
    error: 100 * standardError,
    // The area goes by precision, 1/se², held within what can be seen.
    radius: Math.min(9, Math.max(2, (RADIUS * MIDDLE_ERROR) / standardError)),
  };
}

function curveMarks({ points }: DrawnFit, place: number): Plot.Markish[] {
  const { colour, dash } = CURVE_LOOKS[place];
  const drawn = points.map(({ reserve, estimate, ciLow, ciHigh }) => ({
    reserve,
    growth: toPercent(estimate),
    low: toPercent(ciLow),
    high: toPercent(ciHigh),
  }));
  return [
    Plot.areaY(drawn, { x: 'reserve', y1: 'low', y2: 'high', fill: colour, fillOpacity: 0.14, clip: true }),
    Plot.lineY(drawn, {
      x: 'reserve',
      y: 'growth',
      stroke: colour,
      strokeWidth: 3,
      clip: true,
      ...(dash ? { strokeDasharray: dash } : {}),
    }),
  ];
}

/** Height of a curve's bar at the foot, per cent of growth. */
export function heightOfBar(place: number): number {
  return GROWTH.least + 0.7 + 1.1 * place;
}

function barMarks({ answer: { point, low, high, furthest } }: DrawnFit, place: number): Plot.Markish[] {
  if (point === null || low === null) return [];
  const { colour, symbol } = CURVE_LOOKS[place];
  const bar = [{ target: point, low, high: high ?? furthest, height: heightOfBar(place) }];
  return [
    Plot.ruleY(bar, { y: 'height', x1: 'low', x2: 'high', stroke: colour, strokeWidth: 5, strokeOpacity: 0.6 }),
    Plot.dot(bar, { x: 'target', y: 'height', r: 5.5, symbol, fill: colour, stroke: 'var(--paper)', strokeWidth: 1.5 }),
  ];
}

/** “target 0.90 (0.54 to 7.69), which misses the truth”. */
export function stateFit({ answer: { point, low, high, refusal, holds } }: DrawnFit): string {
  if (refusal !== null || point === null) return `no target: ${REFUSAL_WORDS[refusal ?? 'fit']}`;
  return `target ${formatNumber(point, 2)} (${formatRange(low, high, 2)}), which ${holds ? 'holds' : 'misses'} the truth`;
}

function titleOf({ cell: { truth, studies }, fits }: DescribedTable, shown: Shown): string {
  if (shown === 'curve' || shown === 'truth') return `The truth: ${TRUTH_WORDS[truth]}`;
  if (shown === 'rows') return `A table of ${countStudies(studies)} drawn from it`;
  const held = fits.map(({ curve, answer: { holds } }) => {
    if (holds === null) return `the ${nameCurve(curve).toLowerCase()} gives no interval`;
    return `the ${nameCurve(curve).toLowerCase()}’s interval ${holds ? 'holds' : 'misses'} the truth`;
  });
  return upperFirst(`in the first table ${held.join(', ')}`);
}
