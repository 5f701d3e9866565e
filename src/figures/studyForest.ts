/** The rows of one study: each effect with its interval, told apart by the loads whose fit they are in. */

import * as Plot from '@observablehq/plot';
import { groupRows } from '../evidence/groupRows.ts';
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

/** A change that is printed without anything of its spread. */
interface Bare {
  readonly line: string;
  readonly name: string;
  readonly point: number;
  readonly low: null;
  readonly high: null;
}

/**
 * Rows without a variance stand as their change alone; those without an effect in the settings' metric are counted in
 * the caption and listed in the page's tables.
 */
export function studyForest({ study, rows }: StudyReport, { metric, confidence }: Settings): Figure {
  const nameOf = nameRows(rows);
  const name = ({ arm }: RowReport) => nameOf.get(arm.line) ?? '';
  const lines = rows.flatMap((row): Line[] => {
    if (!row.effect || row.metric !== metric || row.ciLow === null || row.ciHigh === null) return [];
    const [point, low, high] = [row.effect.y, row.ciLow, row.ciHigh].map((value) => toShown(value, metric));
    return [{ line: String(row.arm.line), name: name(row), point, low, high, band: row.band }];
  });
  const bare = rows.flatMap((row): Bare[] =>
    row.alone === null
      ? []
      : [{ line: String(row.arm.line), name: name(row), point: toShown(row.alone, metric), low: null, high: null }],
  );
  const drawn = [...lines, ...bare].sort((a, b) => Number(a.line) - Number(b.line));
  const names = new Map(drawn.map(({ line, name }) => [line, name]));
  const apart = lines.filter(({ low, high }) => low > 0 || high < 0).length;
  const missing = rows.filter(({ arm }) => !names.has(String(arm.line)));
  const title =
    lines.length === 0
      ? `No row has an effect in ${shownUnit(metric)} with a variance`
      : `${apart} of ${countOf(lines.length, 'change')} ${apart === 1 || lines.length === 1 ? 'is' : 'are'} apart from 0 by more than sampling error`;
  const bands = [...new Set(lines.flatMap(({ band }) => band ?? []))].map(
    (band) => `${LOAD_LOOKS[band].symbol}s ${LOAD_NAMES[band]}`,
  );
  const key = [
    bands.length > 0 ? `Filled ${bands.join(', ')}` : '',
    lines.some(({ band }) => band === null) ? 'hollow squares rows that are not in the fit' : '',
    bare.length > 0 ? 'crosses changes without a variance, whose interval is not known' : '',
  ].filter(Boolean);
  const caption = `${lines.length > 0 ? `Each row of ${study} with its ${writePercent(confidence)} interval from sampling error alone.` : `The rows of ${study}.`}${key.length > 0 ? ` ${upperFirst(key.join('; '))}.` : ''}${stateMissing(missing, rows.length, shownUnit(metric))}`;
  return describedByWords({
    plot: {
      width: WIDTH,
      height: FRAME_HEIGHT + ROW_HEIGHT * drawn.length,
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
        domain: drawn.map(({ line }) => line),
        tickFormat: (line: string) => shorten(names.get(line) ?? line),
      },
      marks: [Plot.ruleX([0], { stroke: 'currentColor' }), ...markLines(lines), ...markBare(bare)],
    },
    title,
    caption,
    table: {
      columns: ['line', 'row', `change (${shownUnit(metric)})`, 'low', 'high'],
      rows: drawn.map(({ line, name, ...numbers }) => [
        line,
        name,
        ...[numbers.point, numbers.low, numbers.high].map((value) =>
          value === null ? 'not known' : formatNumber(value, shownDigits(metric)),
        ),
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

function markBare(bare: readonly Bare[]): Plot.Markish[] {
  if (bare.length === 0) return [];
  return [Plot.dot(bare, { y: 'line', x: 'point', r: 4, symbol: 'times', stroke: 'var(--quiet)', strokeWidth: 1.5 })];
}

/** How many rows are not drawn, and why. */
function stateMissing(missing: readonly RowReport[], all: number, unit: string): string {
  if (missing.length === 0) return '';
  const reasons = [
    ...new Set(
      missing.map(({ noEffect, metric }) => noEffect ?? `what is printed gives one in ${shownUnit(metric)} only`),
    ),
  ];
  const why = reasons.length === 0 ? '' : `: ${reasons.join('; ')}`;
  return ` ${missing.length} of ${countOf(all, 'row')} ${missing.length === 1 ? 'has' : 'have'} no effect in ${unit}${why}.`;
}

/** “quadriceps, to failure”: what was measured, and in which arm. */
function nameRow({ arm: { outcome, muscle, measure, arm, hours_after } }: RowReport): string {
  const what =
    outcome === 'growth' ? (muscle ?? measure) : outcome === 'strength' ? 'strength' : `${hours_after} h after`;
  return `${what}, ${arm}`;
}

/** Names of rows, by line; the measure where two rows of an arm would have one name. */
function nameRows(rows: readonly RowReport[]): ReadonlyMap<number, string> {
  const groups = [...groupRows(rows, nameRow).values()];
  return new Map(
    groups.flatMap((group) =>
      group.map((row) => {
        const { line, measure, arm, weeks, later } = row.arm;
        if (group.length === 1) return [line, nameRow(row)] as const;
        return [line, `${measure}${later ? `, ${weeks} weeks` : ''}, ${arm}`] as const;
      }),
    ),
  );
}

function shorten(name: string): string {
  return name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 1)}…` : name;
}
