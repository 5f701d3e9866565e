/** The target with its interval below a curve of growth against reserve: a bar with its ends, a mark on it, and words above. */
import * as Plot from '@observablehq/plot';
import type { Target } from '../model/result.ts';
import { drawnLow } from '../model/wholeRepetitions.ts';
import { formatNumber, formatWhole } from './format.ts';
import { TOP_LABEL } from './looks.ts';

/** Radius of the target's mark, pixels. */
const TARGET_RADIUS = 5.5;
/** Half the height of an interval's ends: taller than a mark, which would hide one close by. Pixels. */
const END_RADIUS = 9;

interface Path {
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
}

/** The end of an interval: a line across it. */
const END = {
  draw: (context: Path, area: number) => {
    // Plot gives the area of a circle of the mark's radius.
    const half = Math.sqrt(area / Math.PI);
    context.moveTo(0, -half);
    context.lineTo(0, half);
  },
};

interface Bar {
  readonly low: number;
  readonly high: number;
  readonly height: number;
}

/**
 * The ends of a target's interval; one that has no upper end is drawn as far as studies go, and does not end there.
 * @param bar as drawn: one, or none @param high of the interval
 */
export function endMarks(bar: readonly Bar[], high: number | null, look: Plot.DotOptions): Plot.Markish[] {
  return (high === null ? (['low'] as const) : (['low', 'high'] as const)).map((end) =>
    Plot.dot(bar, { x: end, y: 'height', r: END_RADIUS, symbol: END, ...look }),
  );
}

interface Place {
  readonly colour: string;
  /** Of the bar, in the unit of growth. */
  readonly height: number;
  /** Largest reserve studied, where an interval without an upper end is drawn to; null where none is known. */
  readonly studied: number | null;
  /** Largest reserve of the axis. */
  readonly furthest: number;
}

/** Nothing without a target. */
export function targetMarks(target: Target, { colour, height, studied, furthest }: Place): Plot.Markish[] {
  const { point, high, shown, whole } = target;
  const low = drawnLow(target);
  if (point === null || low === null) return [];
  const beyondMiddle = point > furthest * 0.6;
  const label = `target ${formatNumber(shown?.point ?? point, 1)}, in practice ${formatWhole(whole)}`;
  const bar = [{ target: point, low, high: high ?? studied ?? point, height, label }];
  return [
    Plot.ruleX(bar, { x: 'target', stroke: colour, strokeDasharray: '2,4', strokeWidth: 1.5 }),
    Plot.ruleY(bar, { y: 'height', x1: 'low', x2: 'high', stroke: colour, strokeWidth: 5, strokeOpacity: 0.55 }),
    Plot.dot(bar, {
      x: 'target',
      y: 'height',
      r: TARGET_RADIUS,
      fill: colour,
      stroke: 'var(--paper)',
      strokeWidth: 1.5,
    }),
    ...endMarks(bar, high, { stroke: colour, strokeWidth: 2 }),
    Plot.text(bar, {
      x: 'target',
      text: 'label',
      ...TOP_LABEL,
      dx: beyondMiddle ? -6 : 6,
      textAnchor: beyondMiddle ? 'end' : 'start',
      fill: colour,
    }),
  ];
}
