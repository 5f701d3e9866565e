/** What was understood, as the cells of an editor's line; what was not understood stands as it was written, to be mended. */
import { weekdayOf, weekOfDay } from '../columns.ts';
import { type Cells, EDITOR_COLUMNS, type EditorColumn, EMPTY_CELLS } from '../editorColumns.ts';
import { FACTS, type UnderstoodLine, writeLoad, writeSpan } from './understood.ts';

export function toCells(line: UnderstoodLine): Cells {
  const cells: Record<EditorColumn, string> = { ...EMPTY_CELLS, ...writeDayCells(line) };
  cells.exercise = line.exercise?.value ?? '';
  for (const field of ['sets', 'repetitions', 'possible', 'reserve'] as const) {
    const reading = line[field];
    if (reading) cells[field] = writeSpan(reading.value);
  }
  // The column is of per cent; a weight says its unit.
  if (line.load) cells.load = line.load.value.unit === '%' ? writeSpan(line.load.value) : writeLoad(line.load.value);
  cells.company = line.company?.value ?? '';
  for (const fact of FACTS) cells[fact] = line.facts[fact]?.value ?? '';
  const unplaced: string[] = [];
  for (const { column, text } of line.unread) {
    if (text === '') continue;
    if (isColumn(column) && cells[column] === '') cells[column] = text;
    else if (!isColumn(column) || cells[column] !== text) unplaced.push(text);
  }
  cells.note = [...line.notes, ...unplaced.filter((text) => !line.notes.includes(text))].join('; ');
  return cells;
}

function writeDayCells({ day, week }: UnderstoodLine): Pick<Cells, 'week' | 'day'> {
  if (!day) return { week: week === null ? '' : String(week), day: '' };
  const ofWeek = weekOfDay(day.value);
  return { week: ofWeek === 1 ? '' : String(ofWeek), day: weekdayOf(day.value) };
}

function isColumn(column: string | null): column is EditorColumn {
  return EDITOR_COLUMNS.some((name) => name === column);
}
