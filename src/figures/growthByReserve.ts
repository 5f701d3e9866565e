/**
 * Growth against reserve in one band of loads: every row as a mark sized by its weight, the fitted
 * curve with its confidence band, and the target with its interval below.
 */

import * as Plot from '@observablehq/plot';
import { bandOf, listBands } from '../model/bands.ts';
import { type Analysis, type Band, type BandName, LEAST_RELIABLE_DF, type Target } from '../model/result.ts';
import { countOf, countStudies } from '../numerics/countOf.ts';
import { writePercent } from '../numerics/percent.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';
import { describedByWords, type Figure } from './figure.ts';
import { upperFirst } from './firstLetter.ts';
import { stateFooting } from './footing.ts';
import { formatChange, formatNumber, formatRange, formatWhole, shownDigits, shownUnit, toShown } from './format.ts';
import { hedge } from './hedge.ts';
import { LOAD_LOOKS, RESERVE_AXIS, RESERVE_FRAME } from './looks.ts';
import { stateSimplerCurve } from './settingsWords.ts';

export interface GrowthByReserveOptions {
  readonly band: BandName;
  /** Pixels of the drawing; it scales with the page. */
  readonly width?: number;
  readonly height?: number;
}

/** Every so many points of the drawn curve stand in the table, and its last. */
const LISTED_POINTS = 8;

/** Radius of the mark of a row with average weight, pixels. */
const MEAN_RADIUS = 4.5;

export function growthByReserve(
  analysis: Analysis,
  { band: name, width = 420, height = 340 }: GrowthByReserveOptions,
): Figure {
  const band = bandOf(analysis, name);
  const { metric } = analysis.settings;
  const shown = (effect: number) => toShown(effect, metric);
  const { colour, symbol } = LOAD_LOOKS[name];
  const unit = shownUnit(metric);
  const domain = sharedDomain(analysis, shown);
  const curve = band.curvePoints.map((point) => ({
    reserve: point.reserve,
    growth: shown(point.estimate),
    low: shown(point.ciLow),
    high: shown(point.ciHigh),
  }));
  const { fitted, unfitted = [] } = band;
  const rows = [...fitted, ...unfitted.map((row) => ({ ...row, weight: 1 / unfitted.length }))].map((row, _, all) => ({
    line: row.line,
    study: row.study,
    arm: row.arm,
    weight: row.weight,
    reserve: row.reserve,
    growth: shown(row.effect),
    radius: MEAN_RADIUS * Math.sqrt(row.weight * all.length),
  }));
  const floor = domain.y[0];
  return describedByWords({
    plot: {
      width,
      height,
      ...RESERVE_FRAME,
      x: { ...RESERVE_AXIS, domain: domain.x },
      y: { label: `${analysis.settings.outcome}, ${unit}`, domain: domain.y, ticks: 6, grid: true, tickSize: 0 },
      r: { type: 'identity' },
      marks: [
        Plot.ruleY([0], { stroke: 'currentColor', strokeOpacity: 0.5 }),
        Plot.areaY(curve, { x: 'reserve', y1: 'low', y2: 'high', fill: colour, fillOpacity: 0.18 }),
        Plot.dot(rows, {
          x: 'reserve',
          y: 'growth',
          r: 'radius',
          symbol,
          fill: colour,
          fillOpacity: 0.28,
          stroke: colour,
          strokeOpacity: 0.7,
          strokeWidth: 1,
          clip: true,
        }),
        Plot.lineY(curve, { x: 'reserve', y: 'growth', stroke: colour, strokeWidth: 3 }),
        ...targetMarks(band, colour, floor, domain),
      ],
    },
    title: titleOf(analysis, band, name),
    caption: [captionOf(analysis, band, name), stateFooting(analysis, band, name)].filter(Boolean).join(' '),
    table: tableOf(analysis, band),
  });
}

/** The curve at some reserves; where there is none the rows, each with its own interval. */
function tableOf({ settings }: Analysis, { curvePoints, unfitted = [] }: Band): Figure['table'] {
  const { metric, confidence, outcome } = settings;
  const write = (value: number) => formatNumber(toShown(value, metric), shownDigits(metric));
  const columns = [
    'reserve (repetitions)',
    `${outcome} (${shownUnit(metric)})`,
    `${writePercent(confidence)} interval, low`,
    'high',
  ];
  if (unfitted.length > 0) {
    return {
      columns: ['study', 'arm', ...columns],
      rows: unfitted.map(({ study, arm, reserve, effect, ciLow, ciHigh }) => [
        study,
        arm,
        formatNumber(reserve, 2),
        ...[effect, ciLow, ciHigh].map(write),
      ]),
    };
  }
  return {
    columns,
    rows: curvePoints
      .filter((_, i, all) => i % LISTED_POINTS === 0 || i === all.length - 1)
      .map(({ reserve, estimate, ciLow, ciHigh }) => [
        formatNumber(reserve, 2),
        ...[estimate, ciLow, ciHigh].map(write),
      ]),
  };
}

interface Domain {
  readonly x: [number, number];
  readonly y: [number, number];
}

/** Both bands share their axes, so that they can be compared by eye. */
function sharedDomain({ bands }: Analysis, shown: (effect: number) => number): Domain {
  const all = listBands(bands).map(([, band]) => band);
  const rowsOf = ({ fitted, unfitted = [] }: Band) => [...fitted, ...unfitted];
  const reserves = all.flatMap((band) => rowsOf(band).map(({ reserve }) => reserve));
  const growths = all.flatMap((band) => [
    ...rowsOf(band).map(({ effect }) => shown(effect)),
    ...band.curvePoints.flatMap(({ ciLow, ciHigh }) => [shown(ciLow), shown(ciHigh)]),
  ]);
  // Not spread into arguments: a table may hold more rows than a call can take.
  const top = growths.reduce((most, value) => Math.max(most, value), 0);
  const bottom = growths.reduce((least, value) => Math.min(least, value), 0);
  // A tenth of the range below leaves room for the target's bar; a fiftieth keeps marks off the edges.
  const range = top - bottom || 1;
  const furthest = reserves.reduce((most, value) => Math.max(most, value), 1);
  return { x: [-furthest / 50, furthest * 1.02], y: [bottom - range / 10, top + range / 50] };
}

function targetMarks(band: Band, colour: string, floor: number, domain: Domain): Plot.Markish[] {
  const { point, low, high, shown, whole } = band.target;
  if (point === null || low === null) return [];
  const furthest = band.studiedReserve?.high ?? point;
  const height = floor + (domain.y[1] - floor) * 0.035;
  const beyondMiddle = point > domain.x[1] * 0.6;
  const label = `target ${formatNumber(shown?.point ?? point, 1)}, in practice ${formatWhole(whole)}`;
  const bar = [{ target: point, low, high: high ?? furthest, height, label }];
  return [
    Plot.ruleX(bar, { x: 'target', stroke: colour, strokeDasharray: '2,4', strokeWidth: 1.5 }),
    Plot.ruleY(bar, { y: 'height', x1: 'low', x2: 'high', stroke: colour, strokeWidth: 5, strokeOpacity: 0.55 }),
    Plot.dot(bar, { x: 'target', y: 'height', r: 5.5, fill: colour, stroke: 'var(--paper)', strokeWidth: 1.5 }),
    Plot.text(bar, {
      x: 'target',
      text: 'label',
      frameAnchor: 'top',
      dx: beyondMiddle ? -6 : 6,
      dy: -2,
      textAnchor: beyondMiddle ? 'end' : 'start',
      fill: colour,
      fontWeight: 600,
      stroke: 'var(--paper)',
      strokeWidth: 4,
    }),
  ];
}

/** What differs from growth at reserve 0 for sure, no stronger than its degrees of freedom allow. */
function titleOf({ settings: { outcome } }: Analysis, band: Band, name: BandName): string {
  const where = upperFirst(LOAD_NAMES[name]);
  if (band.failure) return `${where}: no curve could be fitted`;
  const { less, more } = band.difference;
  if (less && more) return `${where}: less ${outcome} at some reserves, more at others`;
  if (less) return `${where}: ${hedge(`less ${outcome} with more in reserve`, less)}`;
  if (more) return `${where}: ${hedge(`more ${outcome} with more in reserve`, more)}`;
  return `${where}: no difference of ${outcome} by reserve distinguishable from none`;
}

function captionOf({ settings }: Analysis, band: Band, name: BandName): string {
  const { metric, confidence, outcome } = settings;
  if (band.failure) {
    const rows =
      band.rows > 0
        ? ` The marks are the ${countOf(band.rows, 'row')} of ${countStudies(band.studies)} that there are.`
        : '';
    return `Not fitted: ${band.failure.reason}.${rows}`;
  }
  const fit = `${countOf(band.rows, 'row')} of ${countStudies(band.studies)}, ${LOAD_NAMES[name]}; marks by weight, curve with ${writePercent(confidence)} band.`;
  const growth = band.atFailure ? `At reserve 0 ${outcome} is ${formatChange(band.atFailure, metric)}.` : '';
  const few = band.unreliable
    ? `A coefficient has fewer than ${LEAST_RELIABLE_DF} degrees of freedom: the intervals are unreliable.`
    : '';
  return [fit, stateSimplerCurve(band, settings), growth, stateTarget(band.target, settings.keptShare), few]
    .filter(Boolean)
    .join(' ');
}

/** The target under the picture, and what is missing of it or open about it. */
function stateTarget({ shown, reason }: Target, keptShare: number): string {
  const note = reason === null ? '' : `${upperFirst(reason)}.`;
  if (shown === null) return note;
  const found = `${formatNumber(shown.point, 1)} in reserve keep ${writePercent(keptShare)} of it (${formatRange(shown.low, shown.high, 1)}), the bar at the foot.`;
  return [found, note].filter(Boolean).join(' ');
}
