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
  /** The plotted numbers. */
  readonly table: FigureTable;
}
