/**
 * What coaches write, into lines of a programme: tables pasted from a spreadsheet, with or without a
 * header, and plain lines. Nothing is guessed without saying so and nothing is dropped: what is read says
 * from where, what is taken without being written stands in `assumed`, what is not understood in `notRead`
 * with what was expected, and all other text in `notes`.
 */
import type { NamedExercise } from '../../../evidence/exerciseNames.ts';
import { sortByLine } from '../../../evidence/problem.ts';
import { assemble, type ToAssemble } from './assemble.ts';
import type { Context } from './context.ts';
import {
  enter,
  enterColumn,
  enterRefused,
  NO_DAY,
  OF_A_DAY,
  readDays,
  refuseDay,
  sayDayWithin,
  writeDays,
} from './days.ts';
import { type FreeLine, type FreeSets, kindOfLine, readFreeLine } from './freeLine.ts';
import { layOut, readHeaderRow, type WrittenRow } from './layout.ts';
import type { Piece } from './piece.ts';
import { settleDays } from './settleDays.ts';
import { readTableHeader } from './tableHeader.ts';
import { readTableRow, type TableColumns } from './tableRow.ts';
import {
  type Assumed,
  type Note,
  type NotRead,
  notRead,
  type UnderstoodLine,
  type WrittenProgramme,
} from './understood.ts';

/** Characters that are read: some 10,000 lines. */
const LONGEST = 1_000_000;

/** @param exercises the reader's own before the list's. Nothing is thrown, whatever the text. */
export function readWritten(text: string, exercises: readonly NamedExercise[]): WrittenProgramme {
  if (text.length > LONGEST) {
    const expected = `a text of up to ${LONGEST} characters`;
    const value = `${text.length} characters`;
    const told = notRead(1, null, { value, expected, remedy: 'Paste one programme at a time.' });
    return { lines: [], notRead: [told], notes: [], assumed: [] };
  }
  const { rows, delimiter, problems } = layOut(text);
  const lines: UnderstoodLine[] = [];
  const notes: Note[] = [];
  const told: NotRead[] = problems.map((problem) => ({ ...problem, suggestions: [] }));
  let days = NO_DAY;
  let table: TableColumns | null = null;
  /** True where rows of the table are to name their days. */
  let namesDays = false;
  /** Lines before the table that is read. */
  let before = 0;
  const closeTable = () => {
    if (table?.columns.some((column) => column?.kind === 'context')) sortFrom(lines, before);
    before = lines.length;
  };

  const add = (one: ToAssemble, under = days, assumed: readonly Assumed[] = [], badDays: readonly NotRead[] = []) => {
    const { line, notRead: problemsOfLine } = assemble(one, exercises);
    const read = readDays(under, one.line);
    told.push(...read.notRead, ...problemsOfLine);
    const unread = [...badDays, ...read.notRead].map(({ column, value }) => ({ column, text: value }));
    // The day of a week that is not known stands in its cell.
    if (under.refused?.kind === 'week' && under.days.length > 0)
      unread.push({ column: 'day', text: writeDays(under.days) });
    const said = {
      ...line,
      week: under.days.length === 0 && !Number.isNaN(under.week) ? under.week : null,
      assumed: [...line.assumed, ...assumed, ...read.assumed],
      unread: [...unread, ...line.unread],
    };
    for (const day of read.days.length > 0 ? read.days : [null]) lines.push({ ...said, day });
  };
  const addOf = ({ notRead: badDays }: FreeLine, { begins, within, ...one }: FreeSets) => {
    const placeOf = ({ text }: Context) => ({ line: one.line, column: null, text });
    if (begins) days = enter(days, begins, placeOf(begins));
    if (badDays.length > 0) add(one, { ...days, days: [] });
    else if (within) add(one, enter(days, within, placeOf(within)), [sayDayWithin(within)]);
    else add(one);
  };
  /** The name of an exercise alone on a line, until it is known whether its sets stand below. */
  let above: { readonly name: Piece; readonly free: FreeLine; isUsed: boolean } | null = null;
  const leaveName = () => {
    if (above && !above.isUsed) addOf(above.free, above.free.lines[0]);
    above = null;
  };
  const takeFree = (written: string, line: number) => {
    const free = readFreeLine(written, line, exercises);
    if (above && free.lacksName && !free.context && free.misspeltDay === null) {
      above.isUsed = true;
      const { name, free: named } = above;
      const [alone] = named.lines;
      told.push(...free.notRead);
      for (const one of free.lines) {
        const notes = [...alone.notes, ...one.notes];
        const within = one.within ?? alone.within;
        addOf(free.notRead.length > 0 ? free : named, { ...one, pieces: [name, ...one.pieces], notes, within });
      }
      return;
    }
    leaveName();
    if (free.context) days = enter(days, free.context, { line, column: null, text: free.context.text });
    if (free.misspeltDay !== null) days = enterRefused(days, { kind: 'day', text: free.misspeltDay, line });
    told.push(...free.notRead);
    if (free.note !== null) notes.push({ line, text: free.note });
    if (free.name) above = { name: free.name, free, isUsed: false };
    else for (const one of free.lines) addOf(free, one);
  };
  const takeRow = (row: WrittenRow) => {
    const carried = days;
    const read = readTableRow(row, table, exercises);
    // Without columns a row of words is a remark, as a line of them is.
    if (!table && read.lines.every(({ text }) => kindOfLine(text, exercises) === 'words')) {
      notes.push(...read.lines.map(({ line, text }) => ({ line, text })));
      for (const { context, place } of read.contexts) days = enter(days, context, place);
      return;
    }
    for (const { context, place } of read.contexts) days = enter(days, context, place);
    for (const refused of read.refused) days = enterRefused(days, refused);
    if (read.remark !== null) notes.push({ line: row.line, text: read.remark });
    if (read.lines.length === 0) told.push(...read.refused.map((refused) => refuseDay(row.line, refused)));
    namesDays ||= read.hasDayInCell;
    const isRead = readDays(days, row.line).days.length > 0;
    const isCarried = namesDays && days === carried && isRead;
    const assumed = isCarried
      ? [{ said: `No day stands on this line: it is taken as of ${days.readFrom?.text}, as above.`, of: OF_A_DAY }]
      : [];
    for (const { under: headed, within, badDays, ...one } of read.lines) {
      told.push(...badDays);
      const place = { line: table?.line ?? row.line, column: null, text: headed?.text ?? '' };
      const ofColumn = headed ? enterColumn(days, headed, place) : days;
      if (badDays.length > 0) add(one, { ...ofColumn, days: [] }, read.assumed, badDays);
      else if (within) {
        add(one, enter(ofColumn, within.context, within.place), [sayDayWithin(within.context), ...read.assumed]);
      } else add(one, ofColumn, [...assumed, ...read.assumed]);
    }
  };

  for (const row of rows) {
    const given = row.cells.filter((cell) => cell.trim() !== '');
    if (given.every((cell) => /^[\s:=_–—-]+$/u.test(cell))) continue;
    const columns = delimiter === null ? null : readHeaderRow(row.cells);
    if (columns) {
      leaveName();
      closeTable();
      const header = readTableHeader(row, columns, rows);
      table = header.table;
      namesDays = table.columns.some((column) => column?.kind === 'day');
      told.push(...header.notRead);
      notes.push(...header.notes);
    } else if (given.length === 1 && !isOfGrid(row, table)) takeFree(given[0], row.line);
    else if (table && delimiter === ',' && row.cells.length !== table.columns.length) {
      told.push(refuseRagged(row, table.columns.length));
    } else {
      leaveName();
      takeRow(row);
    }
  }
  leaveName();
  closeTable();
  const settled = settleDays(lines, told);
  return {
    lines: settled.lines,
    notRead: sortByLine([...told, ...settled.notRead]) as readonly NotRead[],
    notes,
    assumed: settled.assumed,
  };
}

/** Days that stand side by side, one after the other. */
function sortFrom(lines: UnderstoodLine[], start: number): void {
  const dayOf = ({ day }: UnderstoodLine) => day?.value ?? 0;
  lines.push(...lines.splice(start).sort((a, b) => dayOf(a) - dayOf(b)));
}

/** True where a column of a day or week has the only cell of a row. */
function isOfGrid({ cells }: WrittenRow, table: TableColumns | null): boolean {
  return cells.some((cell, i) => cell.trim() !== '' && table?.columns[i]?.kind === 'context');
}

/** Where commas part cells, one that is a decimal sign moves all that follows. */
function refuseRagged({ line, cells }: WrittenRow, columns: number): NotRead {
  return {
    ...notRead(line, null, {
      value: cells.join(','),
      expected: `${columns} cells, as many as the header has`,
      remedy:
        'Look for a decimal comma or a comma in a text; put such a cell in quotation marks, or part the cells by semicolons.',
    }),
    kind: 'ragged-line',
  };
}
