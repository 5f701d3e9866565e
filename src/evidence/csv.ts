/** CSV text into records of cells with their physical lines (RFC 4180; PapaParse does the reading). */
import Papa from 'papaparse';
import type { Problem } from './problem.ts';

export interface CsvRecord {
  /** Line on which the record starts, 1 being the first of the file. */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface CsvContent {
  readonly delimiter: string;
  readonly records: readonly CsvRecord[];
  readonly problems: readonly Problem[];
}

const DELIMITERS = [',', ';', '\t'] as const;

/**
 * @param text content of the file; a byte-order mark is dropped
 * @param file name for messages
 * @param knownNames column names by which the delimiter is recognised in the first record
 */
export function readCsv(text: string, file: string, knownNames: ReadonlySet<string>): CsvContent {
  const content = text.startsWith('\ufeff') ? text.slice(1) : text;
  const delimiter = recogniseDelimiter(content, knownNames);
  const { data, errors } = Papa.parse<string[]>(content, { delimiter, newline: recogniseNewline(content) });
  const records: CsvRecord[] = [];
  const lines: number[] = [];
  // Only where records and lines differ in number can a quoted cell hold a line break.
  const hasBrokenCells = data.length !== countLines(content);
  let line = 1;
  for (const cells of data) {
    lines.push(line);
    // A line without anything on it, as after the last line break, is no record.
    if (cells.length > 1 || cells[0] !== '') records.push({ line, cells });
    line += 1 + (hasBrokenCells ? cells.reduce((sum, cell) => sum + countBreaks(cell), 0) : 0);
  }
  const problems = errors
    .filter(({ type }) => type === 'Quotes')
    .map(
      ({ row, message }): Problem => ({
        kind: 'ragged-line',
        file,
        line: lines[row ?? 0] ?? null,
        column: null,
        value: message,
        expected: 'a quoted cell to end with a quotation mark, and a mark inside it to be doubled',
        remedy: 'Close or double the quotation mark; what follows it cannot be told apart.',
      }),
    );
  return { delimiter, records, problems };
}

/** The delimiter under which the first record holds most of the known names. */
function recogniseDelimiter(content: string, knownNames: ReadonlySet<string>): string {
  const found = DELIMITERS.map((delimiter) => {
    const [first = []] = Papa.parse<string[]>(content, { delimiter, preview: 1 }).data;
    return { delimiter, names: first.filter((name) => knownNames.has(name.trim())).length };
  });
  return found.reduce((best, next) => (next.names > best.names ? next : best)).delimiter;
}

function recogniseNewline(content: string): '\r\n' | '\n' | '\r' {
  const end = content.search(/[\r\n]/u);
  if (end < 0) return '\n';
  if (content[end] === '\n') return '\n';
  return content[end + 1] === '\n' ? '\r\n' : '\r';
}

function countLines(content: string): number {
  return countBreaks(content) + 1;
}

/** Line breaks of any kind: CR LF counts once. */
function countBreaks(text: string): number {
  let breaks = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 10 || (code === 13 && text.charCodeAt(i + 1) !== 10)) breaks++;
  }
  return breaks;
}
