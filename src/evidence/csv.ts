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
  // Files that went through several hands mix their line breaks, so all become one kind.
  const content = text.replace(/^\ufeff/u, '').replace(/\r\n?/gu, '\n');
  const delimiter = recogniseDelimiter(content, knownNames);
  const { data, errors } = Papa.parse<string[]>(content, { delimiter, newline: '\n' });
  const records: CsvRecord[] = [];
  const lines: number[] = [];
  // Only where records and lines differ in number can a quoted cell hold a line break.
  const hasBrokenCells = data.length !== countBreaks(content) + 1;
  let line = 1;
  for (const cells of data) {
    lines.push(line);
    // A line without anything on it, as after the last line break, is no record.
    if (cells.length > 1 || cells[0].trim() !== '') records.push({ line, cells });
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
  return { delimiter, records, problems: [...checkEncoding(content, file), ...problems] };
}

/** Bytes that are not UTF-8 are decoded to U+FFFD, which would stand in a name as if it belonged there. */
function checkEncoding(content: string, file: string): Problem[] {
  const at = content.indexOf('\ufffd');
  if (at < 0) return [];
  const line = content.slice(content.lastIndexOf('\n', at) + 1).split('\n', 1)[0] ?? '';
  return [
    {
      kind: 'file',
      file,
      line: countBreaks(content.slice(0, at)) + 1,
      column: null,
      value: line,
      expected: 'text encoded as UTF-8',
      remedy: 'Save the file as “CSV UTF-8”; this is the first line with a character that cannot be read.',
    },
  ];
}

/** The delimiter under which the first record holds most of the known names. */
function recogniseDelimiter(content: string, knownNames: ReadonlySet<string>): string {
  const found = DELIMITERS.map((delimiter) => {
    const [first = []] = Papa.parse<string[]>(content, { delimiter, preview: 1 }).data;
    return { delimiter, names: first.filter((name) => knownNames.has(name.trim())).length };
  });
  return found.reduce((best, next) => (next.names > best.names ? next : best)).delimiter;
}

function countBreaks(text: string): number {
  let breaks = 0;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) breaks++;
  return breaks;
}
