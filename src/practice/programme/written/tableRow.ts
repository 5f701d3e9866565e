/** A row of a table: its cells by the columns that the header names, or by what they say themselves. */
import type { ToAssemble } from './assemble.ts';
import { type Context, readContext } from './context.ts';
import { readContextCell, refuseDay } from './days.ts';
import type { WrittenColumn } from './headings.ts';
import type { WrittenRow } from './layout.ts';
import { takeMarks } from './marks.ts';
import { isNothing, type Piece } from './piece.ts';
import { scan } from './scan.ts';
import type { Assumed, NotRead, Place } from './understood.ts';

export interface TableColumns {
  /** Line of the header. */
  readonly line: number;
  readonly columns: readonly (WrittenColumn | null)[];
  /** As written. */
  readonly headers: readonly string[];
}

export interface TableRow {
  /** Days and weeks of the row, in the order in which they stand. */
  readonly contexts: readonly { readonly context: Context; readonly place: Place }[];
  /** A line, or where days or weeks are columns one for each of their cells. */
  readonly lines: readonly (ToAssemble & { readonly under: Context | null })[];
  readonly assumed: readonly Assumed[];
  readonly notRead: readonly NotRead[];
}

interface Cell {
  readonly place: Place;
  readonly column: WrittenColumn | null;
}

/** @param table null where the table has no header */
export function readTableRow({ line, cells }: WrittenRow, table: TableColumns | null): TableRow {
  const text = cells
    .map((cell) => cell.trim())
    .join(' ')
    .trim();
  const written = cells
    .map(
      (cell, i): Cell => ({
        place: { line, column: table?.headers[i]?.trim() || null, text: cell.trim() },
        column: table?.columns[i] ?? null,
      }),
    )
    .filter(({ place }) => !isNothing(place.text));
  const given = table ? written : partContext(written);
  const told: NotRead[] = [];
  // A row of nothing but a week and a day heads what follows, whatever its columns.
  const isHeading = given.every(({ place }) => readContext(place.text)?.rest === '');
  const contexts = given.flatMap(({ place, column }) => {
    const context = contextOf(place.text, isHeading ? null : column, table === null || isHeading);
    if (!context && (column?.kind === 'day' || column?.kind === 'week')) told.push(refuseDay(line, place.text));
    return context ? [{ context, place }] : [];
  });
  const others = given.filter(
    ({ place, column }) =>
      column?.kind !== 'day' && column?.kind !== 'week' && !contexts.some((context) => context.place === place),
  );
  const unread = table ? others.filter(({ column }) => column === null) : [];
  const notes = [
    ...contexts.flatMap(({ context }) => (context.rest === '' ? [] : [context.rest])),
    ...unread.map(({ place }) => (place.column ? `${place.column}: ${place.text}` : place.text)),
  ];
  const read = others.filter((cell) => !unread.includes(cell));
  const { pieces, assumed } = table ? { pieces: read, assumed: [] } : takeBarePair(read);
  const grid = pieces.filter(({ column }) => column?.kind === 'context');
  const shared = pieces.filter((piece) => !grid.includes(piece));
  const marked = shared.map(unmark);
  const common = { line, text, notes: [...marked.flatMap(({ superset }) => superset ?? []), ...notes] };
  const base = marked.map(({ piece }) => piece);
  return {
    contexts,
    lines:
      grid.length > 0
        ? grid.flatMap((cell) =>
            splitCell(cell).map((one) => {
              const pieces = [...base, one];
              return { ...common, text: pieces.map(({ place }) => place.text).join(' '), pieces, under: headed(cell) };
            }),
          )
        : base.length > 0
          ? [{ ...common, pieces: base, under: null }]
          : [],
    assumed,
    notRead: told,
  };
}

/** Without a header the first cell may be a day and a name, “Mon squat”: as two cells. */
function partContext(cells: readonly Cell[]): readonly Cell[] {
  const [first, ...others] = cells;
  const context = first ? readContext(first.place.text) : null;
  if (!context || context.rest === '') return cells;
  const cell = (text: string): Cell => ({ ...first, place: { ...first.place, text } });
  return [cell(context.text), cell(context.rest), ...others];
}

function contextOf(text: string, column: WrittenColumn | null, isHeadless: boolean): Context | null {
  if (column?.kind === 'day' || column?.kind === 'week') return readContextCell(text, column.kind);
  const context = isHeadless ? readContext(text) : null;
  return context?.rest === '' ? context : null;
}

function headed({ column }: Cell): Context | null {
  return column?.kind === 'context' ? column.context : null;
}

/** A cell of a grid may hold several lines. */
function splitCell(cell: Cell): readonly Piece[] {
  return cell.place.text
    .split('\n')
    .map((text) => ({ ...cell, place: { ...cell.place, text: takeMarks(text).text } }))
    .filter(({ place }) => place.text !== '');
}

function unmark(piece: Piece): { readonly piece: Piece; readonly superset: string | null } {
  if (piece.column !== null && piece.column.kind !== 'exercise') return { piece, superset: null };
  const { text, superset } = takeMarks(piece.place.text);
  return { piece: { ...piece, place: { ...piece.place, text } }, superset };
}

/** Two bare numbers side by side, and no others, are sets and repetitions where no column says what they are. */
function takeBarePair(cells: readonly Cell[]): {
  readonly pieces: readonly Piece[];
  readonly assumed: readonly Assumed[];
} {
  const isBare = ({ place }: Cell) => {
    const tokens = scan(place.text);
    return tokens.length === 1 && tokens[0].kind === 'number';
  };
  const bare = cells.filter(isBare);
  const [sets, repetitions] = bare;
  if (bare.length !== 2 || cells.indexOf(repetitions) !== cells.indexOf(sets) + 1)
    return { pieces: cells, assumed: [] };
  return {
    pieces: cells.map((cell) => {
      if (cell === sets) return { ...cell, column: { kind: 'sets' } };
      return cell === repetitions ? { ...cell, column: { kind: 'repetitions' } } : cell;
    }),
    assumed: [
      {
        said: `No header names the columns: ${sets.place.text} and ${repetitions.place.text} are taken as sets and repetitions, in this order.`,
        of: ['sets', 'repetitions'],
      },
    ],
  };
}
