/** A text into rows of cells: a table by its delimiter, with or without a header, or plain lines. */
import Papa from 'papaparse';
import { readBlocks } from '../../../evidence/csv.ts';
import type { Problem } from '../../../evidence/problem.ts';
import { columnOf, type WrittenColumn } from './headings.ts';
import { isNothing } from './piece.ts';
import { scan } from './scan.ts';
import { WRITTEN } from './understood.ts';

export interface WrittenRow {
  /** Physical line, from 1. */
  readonly line: number;
  /** One where the text is no table. */
  readonly cells: readonly string[];
}

export interface Layout {
  readonly rows: readonly WrittenRow[];
  /** null where the text is no table. */
  readonly delimiter: Delimiter | null;
  readonly problems: readonly Problem[];
}

const DELIMITERS = ['\t', ';', '|', ','] as const;
type Delimiter = (typeof DELIMITERS)[number];

/** Rows in which a header is looked for: a title, remarks and a good many blank rows may stand before it. */
const ROWS_BEFORE_HEADER = 200;
/** Cells, not empty, of a table without a header: fewer may be two exercises on a line. */
const LEAST_CELLS = 3;

export function layOut(text: string): Layout {
  const content = text.replace(/^\ufeff/u, '').replace(/\r\n?|[\u2028\u2029]/gu, '\n');
  const delimiter = findDelimiter(content);
  if (delimiter === null) {
    const rows = content.split('\n').map((line, i) => ({ line: i + 1, cells: [line] }));
    return { rows: rows.filter(({ cells: [cell] }) => cell.trim() !== ''), delimiter, problems: [] };
  }
  const rows: WrittenRow[] = [];
  const problems: Problem[] = [];
  for (const block of readBlocks({ content, delimiter, problems: [] }, WRITTEN)) {
    for (const record of block.records) rows.push(record);
    for (const problem of block.problems) problems.push(problem);
  }
  return { rows, delimiter, problems };
}

/** Columns of a row that heads a table; null for any other row. */
export function readHeaderRow(cells: readonly string[]): readonly (WrittenColumn | null)[] | null {
  const columns = cells.map((cell) => (cell.trim() === '' ? null : columnOf(cell.trim())));
  const given = cells.filter((cell) => cell.trim() !== '').length;
  const fields = columns.filter((column) => column && column.kind !== 'context').length;
  const contexts = columns.filter((column) => column?.kind === 'context').length;
  // A week and a day beside each other are no columns: they head what follows.
  const isGrid = contexts + fields === given && given >= 2 && !(fields === 0 && isWeekAndDay(columns));
  const isWordy = fields >= 1 && given >= 2 && cells.every((cell) => !/\d/u.test(cell));
  return fields >= 2 || isGrid || isWordy ? columns : null;
}

function isWeekAndDay(columns: readonly (WrittenColumn | null)[]): boolean {
  const contexts = columns.flatMap((column) => (column?.kind === 'context' ? [column.context] : []));
  return contexts.length === 2 && contexts.filter(({ days }) => days.length === 0).length === 1;
}

/** The one under which a row names most columns; else one that parts the lines into cells; null for plain lines. */
function findDelimiter(content: string): Delimiter | null {
  const parsed = DELIMITERS.map((delimiter) => ({
    delimiter,
    rows: Papa.parse<string[]>(content, { delimiter, newline: '\n', preview: ROWS_BEFORE_HEADER }).data,
  }));
  const headed = parsed.map(({ delimiter, rows }) => ({ delimiter, names: Math.max(0, ...rows.map(countColumns)) }));
  const best = headed.reduce((most, next) => (next.names > most.names ? next : most));
  if (best.names >= 2) return best.delimiter;
  // Commas alone are decimal signs as often as delimiters.
  return parsed.find(({ delimiter, rows }) => delimiter !== ',' && isTable(rows, delimiter))?.delimiter ?? null;
}

function countColumns(cells: readonly string[]): number {
  return readHeaderRow(cells)?.filter(Boolean).length ?? 0;
}

function isTable(rows: readonly (readonly string[])[], delimiter: Delimiter): boolean {
  const given = rows.map((cells) => cells.filter((cell) => !isNothing(cell))).filter((cells) => cells.length > 0);
  // Nobody types tabs between words of a sentence.
  if (delimiter === '\t') return given.some((cells) => cells.length > 1);
  const parted = given.filter((cells) => cells.length >= LEAST_CELLS && cells.filter(holdsSets).length <= 1);
  return 2 * parted.length > given.length;
}

/** True for a cell that is a line of its own, “squat 4x6”. */
export function holdsSets(text: string): boolean {
  return scan(text).some(
    (token) => token.kind === 'notation' && token.said.found?.some(({ field }) => field === 'sets'),
  );
}
