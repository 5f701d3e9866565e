/**
 * Growth against reserve in one band of loads: every row as a mark sized by its weight, the fitted
 * curve with its confidence band, and the target with its interval below.
 */

import * as Plot from '@observablehq/plot';
import { bandOf, listBands } from '../model/bands.ts';
import type { Analysis, Band, BandName } from '../model/result.ts';
import { writePercent } from '../numerics/percent.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';
import { describedByWords, type Figure } from './figure.ts';
import { stateFooting } from './footing.ts';
import { formatNumber, shownDigits, shownUnit, toShown } from './format.ts';
import {
  type DrawnPoint,
  drawPoints,
  type FormerCurve,
  formerCurves,
  formerMarks,
  newStudyMarks,
  stateFormer,
  stateIntervals,
} from './growthTraces.ts';
import { captionGrowth, titleGrowth } from './growthWords.ts';
import { LOAD_LOOKS, RESERVE_AXIS, RESERVE_FRAME } from './looks.ts';
import { isComparable } from './moved.ts';
import { OUTCOME_WORDS } from './outcomeWords.ts';
import { targetMarks } from './targetMarks.ts';

export interface GrowthByReserveOptions {
  readonly band: BandName;
  /** Pixels of the drawing; it scales with the page. */
  readonly width?: number;
  readonly height?: number;
  /** What stood there before: its curve, band and target are drawn pale. */
  readonly former?: Analysis | undefined;
  /** True to draw where the truth of a new study would lie. False by default. */
  readonly showsNewStudy?: boolean;
  /** Other analyses whose figures stand beside this one and share its axes. */
  readonly beside?: readonly Analysis[];
}

/** Every so many points of the drawn curve stand in the table, and its last. */
const LISTED_POINTS = 8;

/** Radius of the mark of a row with average weight, pixels. */
const MEAN_RADIUS = 4.5;

/**
 * Room at either end of the reserves, pixels as marks have them, so that those at reserve 0 are whole however narrow the
 * drawing. Marks that are larger, of a row that counts for five or more, are cut at the edge and not drawn over its numbers.
 */
const EDGE_ROOM = 10;

export function growthByReserve(
  analysis: Analysis,
  { band: name, width = 420, height = 340, former, showsNewStudy = false, beside = [] }: GrowthByReserveOptions,
): Figure {
  const band = bandOf(analysis, name);
  const { metric } = analysis.settings;
  const shown = (effect: number) => toShown(effect, metric);
  const { colour, symbol } = LOAD_LOOKS[name];
  const unit = shownUnit(metric);
  const title = titleGrowth(analysis, band, name);
  const curve = drawPoints(band, analysis.settings, 'average');
  const traces = formerCurves(former, analysis, name);
  const newStudy = showsNewStudy ? drawPoints(band, analysis.settings, 'new study') : [];
  const caption = [
    captionGrowth(analysis, band, name),
    stateFooting(analysis, band, name),
    showsNewStudy && curve.length > 0 ? stateIntervals(newStudy) : '',
    stateFormer(traces, former, analysis),
  ];
  const words = { title, caption: caption.filter(Boolean).join(' ') };
  if (band.rows === 0 && traces.length === 0)
    return describedByWords({ ...words, ...drawNothing(band, width, height) });
  const domain = sharedDomain([analysis, ...(former ? [former] : []), ...beside], analysis, showsNewStudy);
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
      x: { ...RESERVE_AXIS, domain: domain.x, insetLeft: EDGE_ROOM, insetRight: EDGE_ROOM },
      y: {
        label: `${OUTCOME_WORDS[analysis.settings.outcome].effect}, ${unit}`,
        domain: domain.y,
        ticks: 6,
        grid: true,
        tickSize: 0,
      },
      r: { type: 'identity' },
      marks: [
        Plot.ruleY([0], { stroke: 'currentColor', strokeOpacity: 0.5 }),
        ...formerMarks(traces, { first: heightAt(domain, 0.068), step: heightAt(domain, 0.05) - floor }),
        ...newStudyMarks(newStudy, colour),
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
        ...targetMarks(band.target, {
          colour,
          height: heightAt(domain, 0.035),
          studied: band.studiedReserve?.high ?? null,
          furthest: domain.x[1],
        }),
      ],
    },
    ...words,
    table: tableOf(analysis, band, traces, newStudy),
  });
}

/** In place of axes about nothing: that there is no fit, and why. */
function drawNothing({ failure }: Band, width: number, height: number): Pick<Figure, 'plot' | 'table'> {
  const nothing = { axis: null, domain: [0, 1] } as const;
  const said = [{ words: `Nothing to draw: ${failure?.reason ?? 'no rows'}.` }];
  return {
    plot: {
      width,
      height,
      ...RESERVE_FRAME,
      x: nothing,
      y: nothing,
      marks: [
        Plot.frame({ stroke: 'currentColor', strokeOpacity: 0.3, strokeDasharray: '4,4' }),
        Plot.text(said, { text: 'words', frameAnchor: 'middle', lineWidth: 22, fill: 'currentColor' }),
      ],
    },
    table: { columns: [], rows: [] },
  };
}

/** The curve at some reserves, with what stands beside it; where there is no curve the rows, each with its own interval. */
function tableOf(
  { settings }: Analysis,
  { unfitted = [], ...band }: Band,
  traces: readonly FormerCurve[],
  newStudy: readonly DrawnPoint[],
): Figure['table'] {
  const { metric, confidence, outcome } = settings;
  const write = (value: number) => formatNumber(value, shownDigits(metric));
  const columns = [
    'reserve (repetitions)',
    `${OUTCOME_WORDS[outcome].effect} (${shownUnit(metric)})`,
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
        ...[effect, ciLow, ciHigh].map((value) => write(toShown(value, metric))),
      ]),
    };
  }
  const list = (points: readonly DrawnPoint[]) =>
    points
      .filter((_, i, all) => i % LISTED_POINTS === 0 || i === all.length - 1)
      .map(({ reserve, growth, low, high }) => [formatNumber(reserve, 2), ...[growth, low, high].map(write)]);
  const now = list(drawPoints({ ...band, unfitted }, settings, 'average'));
  const beside = list(newStudy).map(([, , low, high]) => [low, high]);
  const listed = now.map((row, i) => [...row, ...(beside[i] ?? [])]);
  const wider = newStudy.length > 0 ? ['new study, low', 'high'] : [];
  if (traces.length === 0) return { columns: [...columns, ...wider], rows: listed };
  const blank = wider.map(() => '');
  return {
    columns: ['curve', ...columns, ...wider],
    rows: [
      ...listed.map((row) => ['now', ...row]),
      ...traces.flatMap(({ name, points }) =>
        list(points).map((row) => [`before, ${LOAD_NAMES[name]}`, ...row, ...blank]),
      ),
    ],
  };
}

interface Domain {
  readonly x: [number, number];
  readonly y: [number, number];
}

/** Both bands share their axes, so that they can be compared by eye, and so does whatever stands beside them. */
function sharedDomain(analyses: readonly Analysis[], { settings }: Analysis, showsNewStudy: boolean): Domain {
  const all = analyses
    .filter((one) => isComparable(one, { settings }))
    .flatMap(({ bands }) => listBands(bands).map(([, band]) => band));
  const rowsOf = ({ fitted, unfitted = [] }: Band) => [...fitted, ...unfitted];
  const reserves = all.flatMap((band) => rowsOf(band).map(({ reserve }) => reserve));
  const ends = (band: Band, of: 'average' | 'new study') =>
    drawPoints(band, settings, of).flatMap(({ low, high }) => [low, high]);
  const growths = all.flatMap((band) => [
    ...rowsOf(band).map(({ effect }) => toShown(effect, settings.metric)),
    ...ends(band, 'average'),
    ...(showsNewStudy ? ends(band, 'new study') : []),
  ]);
  // Not spread into arguments: a table may hold more rows than a call can take.
  const top = growths.reduce((most, value) => Math.max(most, value), 0);
  const bottom = growths.reduce((least, value) => Math.min(least, value), 0);
  // A tenth of the range below leaves room for the target's bar; a fiftieth keeps marks off the edges.
  const range = top - bottom || 1;
  const furthest = reserves.reduce((most, value) => Math.max(most, value), 1);
  return { x: [0, furthest], y: [bottom - range / 10, top + range / 50] };
}

/** A place above the foot of the drawing, by its share of the height, in the unit of growth. */
function heightAt({ y: [floor, top] }: Domain, share: number): number {
  return floor + (top - floor) * share;
}
