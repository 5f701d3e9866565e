/** A ring on a figure around what is to be looked at, at a place of its own scales. */
import * as Plot from '@observablehq/plot';
import type { Figure } from './figure.ts';

export interface Spot {
  /** Place on the figure’s scales. */
  readonly x: number;
  readonly y: number;
  /** What is ringed, for the picture and for those who do not see it. */
  readonly words: string;
}

/** Radius of a ring, pixels: around the largest mark of a row. */
const RADIUS = 15;

/** The figure with rings; as it was where there is nothing to point out. */
export function pointOut(figure: Figure, spots: readonly Spot[]): Figure {
  if (spots.length === 0) return figure;
  const ring = { x: 'x', y: 'y', r: RADIUS, fill: 'none' } as const;
  return {
    ...figure,
    isRinged: true,
    plot: {
      ...figure.plot,
      marks: [
        ...(figure.plot.marks ?? []),
        // A pale ring below sets it off from whatever it lies on.
        Plot.dot(spots, { ...ring, stroke: 'var(--paper)', strokeWidth: 6 }),
        Plot.dot(spots, { ...ring, stroke: 'var(--focus)', strokeWidth: 3 }),
      ],
    },
    alternative: `${figure.alternative} Ringed: ${spots.map(({ words }) => words).join('; ')}.`,
  };
}
