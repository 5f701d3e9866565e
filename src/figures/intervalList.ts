/** Intervals with their names beside them, one under the other: of studies, of choices, of contrasts. */
import * as Plot from '@observablehq/plot';
import { LIST_STYLE } from './looks.ts';

/** Said where an interval of targets without an upper end is drawn. */
export const OPEN_INTERVALS = 'Intervals without an upper end are drawn to the largest reserve studied.';

/** Pixels a line takes, and what stands above and below the lines. */
const ROW_HEIGHT = 20;
const FRAME_HEIGHT = 64;
const WIDTH = 420;
const NAME_WIDTH = 132;

export interface IntervalLine {
  readonly point: number;
  readonly low: number;
  readonly high: number;
}

export interface IntervalListOptions<Line> {
  /** Key of a line's name; names are different. */
  readonly by: keyof Line & string;
  readonly label: string;
  readonly colour: string;
  readonly symbol?: 'circle' | 'diamond';
  /** Value that the intervals are compared with; null for none. */
  readonly reference: number | null;
  /** Pixels for the names, and for a line. */
  readonly nameWidth?: number;
  readonly rowHeight?: number;
  /** Every name that has a line of its own, also one without an interval; those of the intervals by default. */
  readonly names?: readonly string[];
  /** Drawn under the intervals. */
  readonly below?: readonly Plot.Markish[];
  /** Drawn over the intervals. */
  readonly above?: readonly Plot.Markish[];
}

/** Options for a picture of intervals; it grows with their number. */
export function listIntervals<Line extends IntervalLine>(
  lines: readonly Line[],
  {
    by,
    label,
    colour,
    symbol = 'circle',
    reference,
    nameWidth = NAME_WIDTH,
    rowHeight = ROW_HEIGHT,
    names = lines.map((line) => String(line[by])),
    below = [],
    above = [],
  }: IntervalListOptions<Line>,
): Plot.PlotOptions {
  return {
    width: WIDTH,
    height: FRAME_HEIGHT + rowHeight * names.length,
    marginLeft: nameWidth,
    marginRight: 16,
    marginBottom: 44,
    style: LIST_STYLE,
    x: { label, labelAnchor: 'center', grid: true, tickSize: 0, labelOffset: 38, ticks: 6, inset: 8 },
    y: { label: null, tickSize: 0, domain: [...names] },
    marks: [
      ...below,
      ...(reference === null ? [] : [Plot.ruleX([reference], { stroke: 'currentColor', strokeDasharray: '2,4' })]),
      Plot.ruleY(lines, { y: by, x1: 'low', x2: 'high', stroke: colour, strokeOpacity: 0.6, strokeWidth: 2 }),
      Plot.dot(lines, { y: by, x: 'point', fill: colour, r: 4, symbol }),
      ...above,
    ],
  };
}
