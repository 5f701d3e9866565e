/** What every figure is: options for Plot, and its content in words and numbers. */
import type { PlotOptions } from '@observablehq/plot';

export interface FigureTable {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

export interface Figure {
  readonly plot: PlotOptions;
  /** The finding, computed; never stronger than its interval. */
  readonly title: string;
  readonly caption: string;
  /** What the picture shows, for those who do not see it. */
  readonly alternative: string;
  /** True where something of it is ringed, to be looked at. */
  readonly isRinged?: boolean;
  /** The plotted numbers. */
  readonly table: FigureTable;
}

/** A figure that is described, to those who do not see it, by its title and caption. */
export function describedByWords(figure: Omit<Figure, 'alternative'>): Figure {
  return { ...figure, alternative: `${figure.title}. ${figure.caption}` };
}
