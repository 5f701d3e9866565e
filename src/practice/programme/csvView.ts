/**
 * The lines of an editor as CSV text and back: the site's own form, with a week and a note where there are
 * any. Cells stand as they were typed, mistakes among them, so that the two views hold the same.
 */
import Papa from 'papaparse';
import { type CsvRecord, openCsv, readBlocks } from '../../evidence/csv.ts';
import { type Problem, sortByLine } from '../../evidence/problem.ts';
import { columnNamed } from './columns.ts';
import { type LineList, replaceLines } from './edit.ts';
import { type Cells, EDITOR_COLUMNS, type EditorColumn, EMPTY_CELLS, USUAL_COLUMNS } from './editorColumns.ts';

/** Columns that are empty on every line are left out, but for the usual ones. */
export function toCsv({ lines }: LineList): string {
  const columns = EDITOR_COLUMNS.filter(
    (column) => USUAL_COLUMNS.includes(column) || lines.some(({ cells }) => cells[column] !== ''),
  );
  const rows = lines.map(({ cells }) => columns.map((column) => cells[column]));
  return `${Papa.unparse([columns, ...rows], { newline: '\n' })}\n`;
}

export interface CsvLines {
  /** null where no column is known: the text is no table of this form. */
  readonly list: LineList | null;
  /** What has no cell in an editor's line; all of it stands in the notes of its line. */
  readonly problems: readonly Problem[];
}

/** @param before the list that the text is another version of: a line keeps its id at its place. Nothing is thrown. */
export function fromCsv(text: string, file: string, before: LineList): CsvLines {
  const source = openCsv(text, file, new Set<string>(EDITOR_COLUMNS), editorColumn);
  const problems = [...source.problems];
  const records: CsvRecord[] = [];
  for (const block of readBlocks(source, file)) {
    problems.push(...block.problems);
    records.push(...block.records);
  }
  const [header, ...rows] = records;
  const columns = (header?.cells ?? []).map(placeColumn);
  if (!header || columns.every((column) => column === null)) {
    problems.push({
      kind: 'header',
      file,
      line: header?.line ?? null,
      column: null,
      value: header?.cells.join(source.delimiter) ?? '',
      expected: `a row that names the columns, ${USUAL_COLUMNS.join(', ')}`,
      remedy: 'Write it above the lines; what is written in another form can be pasted instead.',
    });
    return { list: null, problems };
  }
  problems.push(...listUnknown(header, columns, file));
  const lines = rows.map((row) => takeCells(row, header, columns, file, problems));
  return { list: replaceLines(before, lines), problems: sortByLine(problems) };
}

function editorColumn(written: string): string {
  const word = written.trim().toLowerCase();
  return word === 'week' || word === 'note' ? word : columnNamed(written.trim());
}

/** A column that stands twice is read where it stands first. */
function placeColumn(cell: string, place: number, header: readonly string[]): EditorColumn | null {
  const name = editorColumn(cell);
  const isFirst = header.findIndex((other) => editorColumn(other) === name) === place;
  return EDITOR_COLUMNS.find((column) => isFirst && column === name) ?? null;
}

function listUnknown({ cells, line }: CsvRecord, columns: readonly (EditorColumn | null)[], file: string): Problem[] {
  return cells.flatMap((cell, i) =>
    columns[i] === null && cell.trim() !== ''
      ? [
          {
            kind: 'unknown-column' as const,
            file,
            line,
            column: cell.trim(),
            value: cell.trim(),
            expected: `each of the columns ${EDITOR_COLUMNS.join(', ')} at most once`,
            remedy: 'Its cells stand in the notes of their lines.',
          },
        ]
      : [],
  );
}

function takeCells(
  { cells, line }: CsvRecord,
  header: CsvRecord,
  columns: readonly (EditorColumn | null)[],
  file: string,
  problems: Problem[],
): Cells {
  const taken: Record<EditorColumn, string> = { ...EMPTY_CELLS };
  const others: string[] = [];
  for (const [i, cell] of cells.entries()) {
    const column = columns[i] ?? null;
    if (column) taken[column] = cell;
    else if (cell.trim() !== '') others.push(i < columns.length ? `${header.cells[i].trim()}: ${cell}` : cell);
  }
  if (others.length > 0) taken.note = [taken.note, ...others].filter(Boolean).join('; ');
  if (cells.length !== columns.length) {
    problems.push({
      kind: 'ragged-line',
      file,
      line,
      column: null,
      value: `${cells.length} cells`,
      expected: `${columns.length} cells, as many as the header has`,
      remedy: 'Look for a missing or doubled delimiter; cells beyond the header stand in the note of the line.',
    });
  }
  return taken;
}
