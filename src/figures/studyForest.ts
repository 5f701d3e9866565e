/** The rows of one study: each effect with its interval, told apart by the loads whose fit they are in. */

import * as Plot from '@observablehq/plot';
import type { BandName } from '../model/result.ts';
import type { Settings } from '../model/settings.ts';
import type { RowReport, StudyReport } from '../model/studyReports.ts';
import { countOf } from '../numerics/countOf.ts';
import { writePercent } from '../numerics/percent.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';
import { describedByWords, type Figure } from './figure.ts';
import { upperFirst } from './firstLetter.ts';
import { formatNumber, shownDigits, shownUnit, toShown } from './format.ts';
import { LIST_STYLE, LOAD_LOOKS } from './looks.ts';

const WIDTH = 540;
const NAME_WIDTH = 232;
const ROW_HEIGHT = 24;
const FRAME_HEIGHT = 64;
/** Characters of a name beside the figure; the table below has it whole. */
const LONGEST_NAME = 34;

interface Line {
  readonly line: string;
  readonly name: string;
  readonly point: number;
  readonly low: number;
  readonly high: number;
  readonly band: BandName | null;
}

/** Rows without an effect in the settings' metric are counted in the caption and listed in the page's tables. */
export function studyForest({ study, rows }: StudyReport, { metric, confidence }: Settings): Figure {
  const lines = rows.flatMap((row): Line[] => {
    if (!row.effect || row.metric !== metric || row.ciLow === null || row.ciHigh === null) return [];
    const [point, low, high] = [row.effect.y, row.ciLow, row.ciHigh].map((value) => toShown(value, metric));
    return [{ line: String(row.arm.line), name: nameRow(row), point, low, high, band: row.band }];
  });
  const names = new Map(lines.map(({ line, name }) => [line, name]));
  const apart = lines.filter(({ low, high }) => low > 0 || high < 0).length;
  const missing = rows.length - lines.length;
  const title =
    lines.length === 0
      ? `No row has an effect in ${shownUnit(metric)}`
      : `${apart} of ${countOf(lines.length, 'change')} ${apart === 1 || lines.length === 1 ? 'is' : 'are'} apart from 0 by more than sampling error`;
  const bands = [...new Set(lines.flatMap(({ band }) => band ?? []))].map(
    (band) => `${LOAD_LOOKS[band].symbol}s ${LOAD_NAMES[band]}`,
  );
  const key = [
    bands.length > 0 ? `Filled ${bands.join(', ')}` : '',
    lines.some(({ band }) => band === null) ? 'hollow squares rows that are not in the fit' : '',
  ].filter(Boolean);
  const caption = `Each row of ${study} with its ${writePercent(confidence)} interval from sampling error alone.${key.length > 0 ? ` ${upperFirst(key.join('; '))}.` : ''}${missing > 0 ? ` ${missing} of ${countOf(rows.length, 'row')} ${missing === 1 ? 'has' : 'have'} no effect in ${shownUnit(metric)}.` : ''}`;
  return describedByWords({
    plot: {
      width: WIDTH,
      height: FRAME_HEIGHT + ROW_HEIGHT * lines.length,
      marginLeft: NAME_WIDTH,
      marginRight: 16,
      marginBottom: 44,
      style: LIST_STYLE,
      x: {
        label: `change, ${shownUnit(metric)} →`,
        labelAnchor: 'center',
        grid: true,
        tickSize: 0,
        labelOffset: 38,
        ticks: 6,
      },
      y: {
        label: null,
        tickSize: 0,
        type: 'band',
        domain: lines.map(({ line }) => line),
        tickFormat: (line: string) => shorten(names.get(line) ?? line),
      },
      marks: [Plot.ruleX([0], { stroke: 'currentColor' }), ...markLines(lines)],
    },
    title,
    caption,
    table: {
      columns: ['line', 'row', `change (${shownUnit(metric)})`, 'low', 'high'],
      rows: lines.map(({ line, name, point, low, high }) => [
        line,
        name,
        ...[point, low, high].map((value) => formatNumber(value, shownDigits(metric))),
      ]),
    },
  });
}

function markLines(lines: readonly Line[]): Plot.Markish[] {
  const looks = [...new Set(lines.map(({ band }) => band))];
  return looks.flatMap((band) => {
    const own = lines.filter((line) => line.band === band);
    const colour = band ? LOAD_LOOKS[band].colour : 'var(--quiet)';
    return [
      Plot.ruleY(own, { y: 'line', x1: 'low', x2: 'high', stroke: colour, strokeOpacity: 0.6, strokeWidth: 2 }),
      Plot.dot(own, {
        y: 'line',
        x: 'point',
        r: 4,
        symbol: band ? LOAD_LOOKS[band].symbol : 'square',
        fill: band ? colour : 'var(--paper)',
        stroke: colour,
        strokeWidth: 1.5,
      }),
    ];
  });
}

/** “quadriceps, to failure”: what was measured, and in which arm. */
function nameRow({ arm: { outcome, muscle, measure, arm, hours_after } }: RowReport): string {
  const what =
    outcome === 'growth' ? (muscle ?? measure) : outcome === 'strength' ? 'strength' : `${hours_after} h after`;
  return `${what}, ${arm}`;
}

function shorten(name: string): string {
  return name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 1)}…` : name;
}
