/**
 * Files for print, as wide as the column they go into: 85 mm for one, 175 mm for two, the usual widths of journals (common
 * practice, no source). Type is at least 7 points as printed, and what is light and what is heavy stay apart in grey and
 * for readers who see colours differently: by lightness, besides the shape of their marks.
 */
import { NARROW_DRAWING, WIDE_DRAWING } from './drawingWidths.ts';
import { FILE_VALUES, type FileLook } from './svgFile.ts';

export const COLUMN_WIDTHS = [85, 175] as const;
export type ColumnWidth = (typeof COLUMN_WIDTHS)[number];

/** Points of an inch of 25.4 mm. */
const POINTS_PER_MM = 72 / 25.4;

/** As the style sheet has them for print. */
export const PRINT_VALUES: typeof FILE_VALUES = {
  ...FILE_VALUES,
  '--paper': '#fff',
  '--ink': '#000',
  '--quiet': '#333',
  '--light-load': '#a86500',
  '--heavy-load': '#0d3b60',
};

interface Column extends FileLook {
  readonly paperWidth: number;
  /** Width of the picture inside, pixels of the drawing: that of the page's narrow and wide ones. */
  readonly drawing: number;
}

const SHARED = { values: PRINT_VALUES, foot: { size: 11, line: 15 } } as const;

export const COLUMNS: Readonly<Record<ColumnWidth, Column>> = {
  85: { ...SHARED, margin: 8, title: { size: 15, line: 20 }, paperWidth: 85, drawing: NARROW_DRAWING },
  175: { ...SHARED, margin: 10, title: { size: 16, line: 22 }, paperWidth: 175, drawing: WIDE_DRAWING },
};

/** Points, as printed, of a size in pixels of a column's drawing. */
export function pointsOf(size: number, { drawing, margin, paperWidth }: Column): number {
  return (size * paperWidth * POINTS_PER_MM) / (drawing + 2 * margin);
}
