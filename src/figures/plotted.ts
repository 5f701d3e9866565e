/**
 * The numbers that a picture is drawn from, as CSV: one row a datum, marks of one layer together.
 * Nothing else goes into the picture but its options, so the same figure can be drawn from the file again.
 */
import type { Markish, PlotOptions } from '@observablehq/plot';
import Papa from 'papaparse';

type Cell = string | number | null;

export interface PlottedLayer {
  /** Kinds of mark that show the layer: “area, line”. */
  readonly drawnAs: string;
  readonly rows: readonly Readonly<Record<string, Cell>>[];
}

/** Significant digits: far more than are seen, and fewer than those in which machines and browsers differ. */
const DIGITS = 10;

/** Column of a datum that is a number or a word by itself. */
const OWN_VALUE = 'value';

/** A mark as Plot makes it, with what it was given; Plot's types do not show it. */
export interface MarkWithData {
  data: unknown;
  readonly ariaLabel?: string;
}

/** The layers of a picture, in the order in which they are drawn; marks of the same data are one layer. */
export function listPlotted(plot: PlotOptions): readonly PlottedLayer[] {
  return groupMarks(plot).map(([data, marks]) => ({
    drawnAs: [...new Set(marks.map(({ ariaLabel }) => ariaLabel ?? 'mark'))].join(', '),
    rows: data.map(toRecord),
  }));
}

/** Marks of the same data, with the data. */
export function groupMarks({ marks = [] }: PlotOptions): readonly (readonly [readonly unknown[], MarkWithData[]])[] {
  const groups = new Map<readonly unknown[], MarkWithData[]>();
  for (const mark of flatten(marks)) {
    if (!Array.isArray(mark.data) || mark.data.length === 0) continue;
    groups.set(mark.data, [...(groups.get(mark.data) ?? []), mark]);
  }
  return [...groups];
}

/** @param note said in every row, where there is something to say of all of them */
export function writePlotted(plot: PlotOptions, note: string | null): string {
  const rows = listPlotted(plot).flatMap(({ drawnAs, rows: own }, i) =>
    own.map((row) => ({ layer: i + 1, 'drawn as': drawnAs, ...row, ...(note === null ? {} : { note }) })),
  );
  const columns = [...new Set(['layer', 'drawn as', ...rows.flatMap((row) => Object.keys(row))])];
  // The note belongs to all columns before it.
  const ordered = note === null ? columns : [...columns.filter((column) => column !== 'note'), 'note'];
  return `${Papa.unparse(rows, { columns: ordered, newline: '\r\n' })}\r\n`;
}

function flatten(marks: readonly (Markish | undefined)[]): readonly MarkWithData[] {
  return marks.flatMap((mark) => {
    if (Array.isArray(mark)) return flatten(mark);
    return mark !== null && typeof mark === 'object' && 'data' in mark ? [mark as unknown as MarkWithData] : [];
  });
}

/** @throws where a datum holds something that has no place in a cell */
function toRecord(datum: unknown): Readonly<Record<string, Cell>> {
  if (typeof datum !== 'object' || datum === null) return { [OWN_VALUE]: toCell(datum, OWN_VALUE) };
  return Object.fromEntries(Object.entries(datum).map(([name, value]) => [name, toCell(value, name)]));
}

function toCell(value: unknown, name: string): Cell {
  if (typeof value === 'number') return Number(value.toPrecision(DIGITS));
  if (value === null || typeof value === 'string') return value;
  throw new Error(`invalid datum; ${name} is neither number nor word: ${JSON.stringify(value)}`);
}
