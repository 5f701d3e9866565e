/** A row of a table: its cells by the columns that the header names, or by what they say themselves. */
import type { NamedExercise } from '../../../evidence/exerciseNames.ts';
import { isNamed } from '../../../evidence/findNamed.ts';
import type { ToAssemble } from './assemble.ts';
import { type Context, readContext } from './context.ts';
import { type RefusedDay, readContextCell, refuseDay } from './days.ts';
import { dateCells, type NamedDays } from './daysOfCells.ts';
import { refuseDayWithin } from './daysWithin.ts';
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
  readonly contexts: readonly NamedDays[];
  /** True where a cell of another column names one of them: “Mon squat”. */
  readonly hasDayInCell: boolean;
  /** A line, or where days or weeks are columns one for each of their cells. */
  readonly lines: readonly RowLine[];
  /** What stands beside a day where nothing of sets does: “Tuesday, rest”; null else. */
  readonly remark: string | null;
  readonly assumed: readonly Assumed[];
  /** What stands for a day or a week and names none. */
  readonly refused: readonly RefusedDay[];
}

interface RowLine extends ToAssemble {
  /** Day or week of its column; null where those are no columns. */
  readonly under: Context | null;
  /** A day that a cell of it names, of this line only. */
  readonly within: NamedDays | null;
  /** Days of its cells that cannot stand together. */
  readonly badDays: readonly NotRead[];
}

interface Cell {
  readonly place: Place;
  readonly column: WrittenColumn | null;
}

/** @param table null where the table has no header */
export function readTableRow(
  { line, cells }: WrittenRow,
  table: TableColumns | null,
  exercises: readonly NamedExercise[],
): TableRow {
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
  const refused: RefusedDay[] = [];
  // A row of nothing but a week and a day heads what follows, whatever its columns.
  const isHeading = given.every(({ place }) => readContext(place.text)?.rest === '');
  const contexts = given.flatMap(({ place, column }) => {
    const context = contextOf(place.text, isHeading ? null : column, table === null || isHeading);
    if (!context && (column?.kind === 'day' || column?.kind === 'week'))
      refused.push({ kind: column.kind, text: place.text, line });
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
  const isName = (text: string) => isNamed(exercises, text);
  const ofRow = contexts.flatMap(({ context }) => context.days);
  const shared = dateCells(
    pieces.filter((piece) => !grid.includes(piece)),
    ofRow,
    isName,
  );
  if (shared.misspelt !== null) refused.push({ kind: 'day', text: shared.misspelt, line });
  const marked = shared.cells.map(unmark);
  const common = { line, text, notes: [...marked.flatMap(({ superset }) => superset ?? []), ...notes] };
  const base = marked.map(({ piece }) => piece).filter(({ place }) => !isNothing(place.text));
  const named = shared.begins ?? shared.within;
  const known = ofRow.length > 0 ? ofRow : (named?.context.days ?? []);
  const ofGrid = grid.flatMap((cell) => {
    const under = headed(cell);
    return splitCell(cell).map((one): RowLine => {
      const dated = dateCells([one], under && under.days.length > 0 ? under.days : known, isName);
      const unclear = [...shared.refused, ...dated.refused];
      const pieces = [...base, ...dated.cells];
      return {
        ...common,
        text: [...base, one].map(({ place }) => place.text).join(' '),
        pieces,
        under,
        within: dated.begins ?? dated.within ?? shared.within,
        badDays:
          dated.misspelt !== null
            ? [refuseDay(line, { kind: 'day', text: dated.misspelt, line })]
            : unclear.length > 0
              ? [refuseDayWithin(line, unclear)]
              : [],
      };
    });
  });
  const badDays = shared.refused.length > 0 ? [refuseDayWithin(line, shared.refused)] : [];
  const alone = { ...common, pieces: base, under: null, within: shared.within, badDays };
  const namesDay = contexts.length > 0 || refused.length > 0 || shared.begins !== null;
  const isRemark = namesDay && grid.length === 0 && base.every(isRemarkCell);
  return {
    contexts: shared.begins ? [...contexts, shared.begins] : contexts,
    hasDayInCell: shared.begins !== null,
    lines: grid.length > 0 ? ofGrid : base.length > 0 && !isRemark ? [alone] : [],
    remark: isRemark && base.length + notes.length > 0 ? written.map(({ place }) => place.text).join(' ') : null,
    assumed,
    refused,
  };
}

/** Words outside the column of exercises. */
function isRemarkCell({ place, column }: Piece): boolean {
  return column !== null && column.kind !== 'exercise' && column.kind !== 'fact' && !/\d/u.test(place.text);
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
