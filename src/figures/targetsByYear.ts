/** The target as it stood after each year's studies. */

import * as Plot from '@observablehq/plot';
import type { CumulativeYear } from '../model/checks/cumulative.ts';
import type { BandName } from '../model/result.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';
import { describedByWords, type Figure } from './figure.ts';
import { formatNumber, formatRange } from './format.ts';
import { OPEN_INTERVALS } from './intervalList.ts';
import { LIST_STYLE, LOAD_LOOKS } from './looks.ts';

const WIDTH = 420;
const HEIGHT = 280;

/** @param furthest largest reserve studied, repetitions, to which intervals without an upper end are drawn */
export function targetsByYear(years: readonly CumulativeYear[], furthest: number, band: BandName): Figure {
  const found = years.flatMap(({ year, target: { point, low, high } }) =>
    point === null || low === null ? [] : [{ year, point, low, high }],
  );
  const points = found.map((line) => ({ ...line, high: line.high ?? furthest }));
  // A year that gives none is a gap, not the target of the year before it.
  const steps = years.map(
    ({ year }) => points.find((one) => one.year === year) ?? { year, point: null, low: null, high: null },
  );
  const { colour, symbol } = LOAD_LOOKS[band];
  const none = years.length - points.length;
  const caption = [
    `Target and interval for ${LOAD_NAMES[band]} from the studies published by each year; ${none} of ${years.length} years ${none === 1 ? 'gives' : 'give'} none.`,
    found.some(({ high }) => high === null) ? OPEN_INTERVALS : '',
  ];
  return describedByWords({
    plot: {
      width: WIDTH,
      height: HEIGHT,
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
        Plot.areaY(steps, { x: 'year', y1: 'low', y2: 'high', curve: 'step-after', fill: colour, fillOpacity: 0.18 }),
        Plot.lineY(steps, { x: 'year', y: 'point', curve: 'step-after', stroke: colour, strokeWidth: 2.5 }),
        // A step is as wide as the time to the next year: the last one would have no interval.
        Plot.ruleX(steps, { x: 'year', y1: 'low', y2: 'high', stroke: colour, strokeOpacity: 0.6 }),
        Plot.dot(steps, { x: 'year', y: 'point', symbol, fill: colour, r: 3.5 }),
      ],
    },
    title: titleOf(points, years.at(-1)?.year),
    caption: caption.filter(Boolean).join(' '),
    table: {
      columns: ['year', 'studies', 'target', 'interval'],
      rows: years.map(({ year, studies, target }) => [
        year,
        studies,
        target.point === null ? 'none' : formatNumber(target.point, 2),
        formatRange(target.low, target.high, 2),
      ]),
    },
  });
}

/** First and last target, and whether the last year has none. */
function titleOf(points: readonly { readonly year: number; readonly point: number }[], lastYear: number | undefined) {
  const [first] = points;
  const last = points.at(-1);
  if (!first || !last) return 'No year gives a target';
  const state = ({ year, point }: typeof first) => `${formatNumber(point, 1)} in ${year}`;
  const parts = [
    state(first),
    ...(last === first ? [] : [state(last)]),
    ...(last.year === lastYear ? [] : [`none in ${lastYear}`]),
  ];
  return `The target by year: ${parts.join(', ')}`;
}
