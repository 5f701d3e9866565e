/** Figures of the studies one by one: distance from the curve, the target without each, by year. */
import * as Plot from '@observablehq/plot';
import type { CumulativeYear } from '../model/checks/cumulative.ts';
import type { Influence } from '../model/checks/influence.ts';
import type { SmallStudyPattern } from '../model/checks/smallStudies.ts';
import type { StudyDeviation } from '../model/checks/studies.ts';
import type { BandName, Target } from '../model/result.ts';
import type { Metric } from '../model/settings.ts';
import type { Figure } from './figure.ts';
import { formatNumber, formatP, formatRange } from './format.ts';
import { BAND_LOOKS } from './growthByReserve.ts';
import { LIST_STYLE, listIntervals } from './intervalList.ts';

const WIDTH = 480;

/** How far each study lies above or below the curve. */
export function deviationsByStudy(deviations: readonly StudyDeviation[], band: BandName, metric: Metric): Figure {
  // A distance on the log scale is shown in hundredths, near enough to points of per cent.
  const scale = metric === 'log-ratio' ? 100 : 1;
  const unit = metric === 'log-ratio' ? 'hundredths of the log ratio' : 'baseline SDs';
  const lines = [...deviations]
    .sort((a, b) => b.deviation - a.deviation)
    .map(({ study, deviation, low, high }) => ({
      study,
      point: scale * deviation,
      low: scale * low,
      high: scale * high,
    }));
  const outside = lines.filter(({ low, high }) => low > 0 || high < 0).length;
  const title = `${outside} of ${lines.length} studies lie off the curve by more than their own error`;
  return describe({
    plot: listIntervals(lines, {
      by: 'study',
      reference: 0,
      label: metric === 'log-ratio' ? 'distance, log ratio × 100 →' : 'distance, baseline SDs →',
      ...looksOf(band),
    }),
    title,
    caption: `Mean distance of each study's rows from the fitted curve, ${BAND_LOOKS[band].name}, with its interval from sampling error and the variance between rows.`,
    columns: ['study', `distance (${unit})`, 'low', 'high'],
    rows: lines.map(({ study, point, low, high }) => [
      study,
      ...[point, low, high].map((value) => formatNumber(value, 2)),
    ]),
  });
}

/** The target without each study. */
export function targetsWithoutStudies(
  { studies }: Influence,
  target: Target,
  furthest: number,
  band: BandName,
): Figure {
  const lines = studies
    .flatMap(({ study, targetWithout: { point, low, high } }) =>
      point === null || low === null ? [] : [{ study, point, low, high: high ?? furthest }],
    )
    .sort((a, b) => b.point - a.point);
  const points = lines.map(({ point }) => point);
  const range =
    points.length > 0 ? `${formatNumber(Math.min(...points), 1)} to ${formatNumber(Math.max(...points), 1)}` : 'none';
  return describe({
    plot: listIntervals(lines, {
      by: 'study',
      reference: target.point,
      label: 'target without the study →',
      ...looksOf(band),
    }),
    title: `Without any one study the target lies from ${range}`,
    caption: `Target and interval for ${BAND_LOOKS[band].name} with each study left out; the line is the target of all studies, ${target.point === null ? 'none' : formatNumber(target.point, 1)}. Intervals without an upper end are drawn to the largest reserve studied.`,
    columns: ['study left out', 'target', 'interval', 'distance (Cook)'],
    rows: studies.map(({ study, targetWithout, cooksDistance }) => [
      study,
      targetWithout.point === null ? 'none' : formatNumber(targetWithout.point, 2),
      formatRange(targetWithout.low, targetWithout.high, 2),
      cooksDistance === null ? 'none' : formatNumber(cooksDistance, 2),
    ]),
  });
}

/** Distance from the curve against standard error. */
export function smallStudyPattern({ rows, slope, reason }: SmallStudyPattern, band: BandName, metric: Metric): Figure {
  const scale = metric === 'log-ratio' ? 100 : 1;
  const points = rows.flatMap(({ line, study, standardError, deviation }) =>
    deviation === null ? [] : [{ line, study, error: scale * standardError, deviation: scale * deviation }],
  );
  const title =
    slope === null
      ? 'No pattern could be tested'
      : slope.ciLow > 0
        ? 'Less precise rows show larger effects'
        : slope.ciHigh < 0
          ? 'Less precise rows show smaller effects'
          : 'No pattern by precision distinguishable from none';
  const found =
    slope === null
      ? `Not tested: ${reason}.`
      : `Slope on the standard error ${formatNumber(slope.estimate, 2)} (${formatNumber(slope.ciLow, 2)} to ${formatNumber(slope.ciHigh, 2)}, p ${formatP(slope.p)}).`;
  return describe({
    plot: {
      width: WIDTH,
      height: 300,
      marginLeft: 48,
      marginTop: 28,
      marginRight: 12,
      marginBottom: 44,
      style: LIST_STYLE,
      x: {
        label: 'standard error →',
        labelAnchor: 'center',
        tickSize: 0,
        labelOffset: 38,
        grid: true,
        domain: [0, Math.max(1e-9, ...points.map(({ error }) => error)) * 1.05],
      },
      y: { label: 'distance from the curve', tickSize: 0, grid: true, inset: 8 },
      marks: [
        Plot.ruleY([0], { stroke: 'currentColor' }),
        Plot.dot(points, {
          x: 'error',
          y: 'deviation',
          symbol: BAND_LOOKS[band].symbol,
          fill: BAND_LOOKS[band].colour,
          fillOpacity: 0.35,
          stroke: BAND_LOOKS[band].colour,
        }),
      ],
    },
    title,
    caption: `${found} Rows of ${BAND_LOOKS[band].name}; a pattern may come from unpublished small studies, or from small studies that differ in something else.`,
    columns: ['line', 'study', 'standard error', 'distance from the curve'],
    rows: points.map(({ line, study, error, deviation }) => [
      line,
      study,
      formatNumber(error, 2),
      formatNumber(deviation, 2),
    ]),
  });
}

/** The target as it stood after each year's studies. */
export function targetsByYear(years: readonly CumulativeYear[], furthest: number, band: BandName): Figure {
  const points = years.flatMap(({ year, target: { point, low, high } }) =>
    point === null || low === null ? [] : [{ year, point, low, high: high ?? furthest }],
  );
  const [first] = points;
  const last = points.at(-1);
  const title =
    first && last
      ? `The target by year: ${formatNumber(first.point, 1)} in ${first.year}, ${formatNumber(last.point, 1)} in ${last.year}`
      : 'No year gives a target';
  return describe({
    plot: {
      width: WIDTH,
      height: 280,
      marginLeft: 44,
      marginTop: 28,
      marginRight: 16,
      marginBottom: 44,
      style: LIST_STYLE,
      x: {
        label: 'studies published up to →',
        labelAnchor: 'center',
        tickFormat: (year: number) => String(year),
        tickSize: 0,
        labelOffset: 38,
        ticks: 6,
      },
      y: {
        label: 'target, repetitions',
        grid: true,
        tickSize: 0,
        domain: [0, Math.max(1, ...points.map(({ high }) => high))],
      },
      marks: [
        Plot.areaY(points, {
          x: 'year',
          y1: 'low',
          y2: 'high',
          curve: 'step-after',
          fill: BAND_LOOKS[band].colour,
          fillOpacity: 0.18,
        }),
        Plot.lineY(points, {
          x: 'year',
          y: 'point',
          curve: 'step-after',
          stroke: BAND_LOOKS[band].colour,
          strokeWidth: 2.5,
        }),
        Plot.dot(points, {
          x: 'year',
          y: 'point',
          symbol: BAND_LOOKS[band].symbol,
          fill: BAND_LOOKS[band].colour,
          r: 3.5,
        }),
      ],
    },
    title,
    caption: `Target and interval for ${BAND_LOOKS[band].name} from the studies published by each year; ${years.length - points.length} of ${years.length} years give none.`,
    columns: ['year', 'studies', 'target', 'interval'],
    rows: years.map(({ year, studies, target }) => [
      year,
      studies,
      target.point === null ? 'none' : formatNumber(target.point, 2),
      formatRange(target.low, target.high, 2),
    ]),
  });
}

function looksOf(band: BandName) {
  const { colour, symbol } = BAND_LOOKS[band];
  return { colour, symbol };
}

function describe({ columns, rows, ...figure }: Pick<Figure, 'plot' | 'title' | 'caption'> & Figure['table']): Figure {
  return { ...figure, alternative: `${figure.title}. ${figure.caption}`, table: { columns, rows } };
}
