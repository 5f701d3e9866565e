/**
 * CSV text into records of cells with their physical lines (RFC 4180; PapaParse does the reading).
 *
 * A large text is read in blocks that end at a line break outside quotation marks: the cells of a
 * block can be let go before the next is read, and a caller can report progress between blocks.
 */
import Papa from 'papaparse';
import type { Problem } from './problem.ts';

export interface CsvRecord {
  /** Line on which the record starts, 1 being the first of the file. */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface CsvSource {
  readonly delimiter: string;
  /** The text with line feeds only and without a byte-order mark. */
  readonly content: string;
  /** What is wrong with the file as a whole. */
  readonly problems: readonly Problem[];
}

export interface CsvBlock {
  readonly records: readonly CsvRecord[];
  readonly problems: readonly Problem[];
  /** Characters of the content read so far. */
  readonly read: number;
}

const DELIMITERS = [',', ';', '\t'] as const;

/** Characters of a block at least: some 5 ms of work, and small beside the memory an engine first fills. */
const BLOCK_CHARACTERS = 100_000;

/**
 * @param text content of the file; a byte-order mark is dropped
 * @param file name for messages
 * @param knownNames column names by which the delimiter is recognised in the first record
 * @param nameOf column name that a header cell stands for; the cell itself by default
 */
export function openCsv(
  text: string,
  file: string,
  knownNames: ReadonlySet<string>,
  nameOf: (written: string) => string = (written) => written,
): CsvSource {
  // Files that went through several hands mix their line breaks, so all become one kind.
  const content = text.replace(/^\ufeff/u, '').replace(/\r\n?/gu, '\n');
  return {
    content,
    delimiter: recogniseDelimiter(content, (cell) => knownNames.has(nameOf(cell.trim()))),
    problems: checkEncoding(content, file),
  };
}

/**
 * The records of a text, block by block; a caller may stop between two.
 *
 * @param file name for messages
 */
export function* readBlocks({ content, delimiter }: CsvSource, file: string): Generator<CsvBlock, void> {
  const nextMark = makeMarkFinder(content);
  let start = 0;
  let line = 1;
  while (start < content.length) {
    const end = findBlockEnd(content, start, nextMark);
    const block = content.slice(start, end);
    const { records, problems } = readBlock(block, delimiter, line, file);
    yield { records, problems, read: end };
    line += countBreaks(block) + 1;
    start = end + 1;
  }
}

function readBlock(block: string, delimiter: string, firstLine: number, file: string): Omit<CsvBlock, 'read'> {
  const { data, errors } = Papa.parse<string[]>(block, { delimiter, newline: '\n' });
  const records: CsvRecord[] = [];
  const lines: number[] = [];
  // Only where records and lines differ in number can a quoted cell hold a line break.
  const hasBrokenCells = data.length !== countBreaks(block) + 1;
  let line = firstLine;
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
  return { records, problems };
}

/** Place of the first quotation mark at or after a place, −1 where there is none. */
type MarkFinder = (from: number) => number;

/** For places that only ascend: every part of the text is searched once, however many blocks and lines it has. */
function makeMarkFinder(content: string): MarkFinder {
  let next = content.indexOf('"');
  return (from) => {
    if (next >= 0 && next < from) next = content.indexOf('"', from);
    return next;
  };
}

/** Place of the first line break from a block's least length on that has an even number of marks before it. */
function findBlockEnd(content: string, start: number, nextMark: MarkFinder): number {
  let isQuoted = false;
  let mark = nextMark(start);
  let end = content.indexOf('\n', start + BLOCK_CHARACTERS);
  while (end >= 0) {
    for (; mark >= 0 && mark < end; mark = nextMark(mark + 1)) isQuoted = !isQuoted;
    if (!isQuoted) return end;
    // Every line break up to the next mark is inside the quotation.
    if (mark < 0) return content.length;
    end = content.indexOf('\n', mark);
  }
  return content.length;
}

/** The delimiter under which the first record holds most of the known names. */
function recogniseDelimiter(content: string, isKnown: (cell: string) => boolean): string {
  const found = DELIMITERS.map((delimiter) => {
    const [first = []] = Papa.parse<string[]>(content, { delimiter, preview: 1 }).data;
    return { delimiter, names: first.filter(isKnown).length };
  });
  return found.reduce((best, next) => (next.names > best.names ? next : best)).delimiter;
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

function countBreaks(text: string): number {
  let breaks = 0;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) breaks++;
  return breaks;
}
