/**
 * Text of a CSV file into validated rows. All problems are reported at once; a table with problems
 * yields only its valid rows and must not be analysed. Warnings do not stop anything.
 */
import type { Column } from './column.ts';
import { checkAcrossRows } from './crossRow.ts';
import { openCsv, readBlocks } from './csv.ts';
import { deriveDesign } from './deriveDesign.ts';
import { findUnusualDois } from './doi.ts';
import { ALL_DOUBTS, type Doubts } from './doubts.ts';
import { pairWithFirst } from './groupRows.ts';
import { markHalfway } from './halfway.ts';
import { type Header, readHeader } from './header.ts';
import { findLookAlikeStudies } from './lookAlike.ts';
import { type Problem, sortByLine } from './problem.ts';
import { makeRecordReader, type RecordReader } from './records.ts';
import { checkRow } from './rowRules.ts';
import { ARM_COLUMNS, type Arm, STUDY_COLUMNS, type Study } from './schema.ts';
import {
  findSelfContradictions,
  type PrintedText,
  REFUSING_CHECKS,
  warnOfContradictions,
} from './selfContradiction.ts';
import { type HeaderFacts, suspectHeader } from './suspectHeader.ts';

export interface Table<Row> {
  readonly rows: readonly Row[];
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
}

/** Rows as they were read, before they are looked at together. */
interface ReadTable<Row> extends Table<Row> {
  /** null where no header could be used. */
  readonly header: HeaderFacts | null;
}

export interface ArmTable extends Omit<Table<Arm>, 'rows'> {
  readonly arms: readonly Arm[];
}

/** How far a reading has come, in characters of the text. */
export interface Progress {
  readonly done: number;
  readonly total: number;
}

/** Reads `arms.csv`. Nothing is thrown, whatever the text. */
export function readArms(text: string, file: string): ArmTable {
  return drain(readArmsInSteps(text, file));
}

/** Reads rows and problems of a table that is only analysed: nothing is doubted that does not refuse it. */
export function readArmsToAnalyse(text: string, file: string): Omit<ArmTable, 'warnings'> {
  return drain(readWithDoubts(text, file, { ofRow: REFUSING_CHECKS, ofTable: () => [] }));
}

/** As `readArms`, in steps that report progress; a caller may stop between them. */
export function readArmsInSteps(text: string, file: string): Generator<Progress, ArmTable> {
  return readWithDoubts(text, file, ALL_DOUBTS);
}

function* readWithDoubts(text: string, file: string, doubts: Doubts): Generator<Progress, ArmTable> {
  const contradictions: Problem[] = [];
  const read = yield* readRows<Arm>(text, file, ARM_COLUMNS, (arm, printed) => {
    const found = findSelfContradictions(arm, doubts.ofRow, printed);
    for (const warning of warnOfContradictions(arm, file, found)) contradictions.push(warning);
    return checkRow(arm, file, found);
  });
  const { warnings, header } = read;
  const rows = markHalfway(read.rows.map(deriveDesign));
  const problems = [...read.problems, ...checkAcrossRows(rows, file)];
  return {
    arms: rows,
    problems: sortByLine([...problems, ...(header ? suspectHeader(problems, header, ARM_COLUMNS) : [])]),
    warnings: sortByLine([...warnings, ...contradictions, ...doubts.ofTable(rows, file)]),
  };
}

/** Reads `studies.csv`. Nothing is thrown, whatever the text. */
export function readStudies(
  text: string,
  file: string,
): { studies: readonly Study[]; problems: readonly Problem[]; warnings: readonly Problem[] } {
  const { rows, problems, warnings, header } = drain(readRows<Study>(text, file, STUDY_COLUMNS, () => []));
  const doubled = pairWithFirst(rows, ({ study }) => study).map(
    ({ row, first }): Problem => ({
      kind: 'duplicate',
      file,
      line: row.line,
      column: 'study',
      value: row.study,
      expected: `a study that line ${first.line} does not name already`,
      remedy: 'Remove one of the two lines.',
    }),
  );
  const all = [...problems, ...doubled];
  const suspected = header ? suspectHeader(all, header, STUDY_COLUMNS) : [];
  return {
    studies: rows,
    problems: sortByLine([...all, ...suspected]),
    warnings: sortByLine([...warnings, ...findUnusualDois(rows, file), ...findLookAlikeStudies(rows, file)]),
  };
}

/** Reads a table of other columns than the evidence's own. Nothing is thrown, whatever the text. */
export function readTable<Row extends { readonly line: number }>(
  text: string,
  file: string,
  columns: Readonly<Record<string, Column<unknown>>>,
  check: (row: Row) => Problem[],
  /** Turns a header cell into the column's name, where more than the exact name is accepted. */
  nameOf?: (written: string) => string,
): Table<Row> {
  const { rows, problems, warnings } = drain(readRows<Row>(text, file, columns, check, nameOf));
  return { rows, problems: sortByLine(problems), warnings };
}

function* readRows<Row extends { readonly line: number }>(
  text: string,
  file: string,
  columns: Readonly<Record<string, Column<unknown>>>,
  check: (row: Row, printed: PrintedText) => Problem[],
  nameOf: (written: string) => string = (written) => written,
): Generator<Progress, ReadTable<Row>> {
  const source = openCsv(text, file, new Set(Object.keys(columns)), nameOf);
  const problems = [...source.problems];
  const rows: Row[] = [];
  let header: Header | null = null;
  let read: RecordReader | null = null;
  let places: ReadonlyMap<string | null, number> = new Map();
  let isComplete = true;
  let headerLine = 1;
  let records = 0;
  for (const block of readBlocks(source, file)) {
    for (const problem of block.problems) problems.push(problem);
    for (const record of block.records) {
      if (!header || !read) {
        headerLine = record.line;
        header = readHeader({ ...record, cells: record.cells.map(nameOf) }, columns, file, source.delimiter);
        for (const problem of header.problems) problems.push(problem);
        // Without any known column every cell would be reported; the header says it all.
        if (header.names.every((name) => name === null)) {
          return { rows, problems, warnings: header.warnings, header: null };
        }
        read = makeRecordReader(columns, header.names, file);
        places = new Map(header.names.map((name, place) => [name, place]));
        isComplete = !header.problems.some(({ kind }) => kind === 'missing-column');
        continue;
      }
      records++;
      const { values, valid } = read(record, problems);
      // Where a required column is missing no row is complete; the header's problem says it.
      if (!valid || !isComplete) continue;
      // Every required cell was read, each with its own column's schema.
      const row = values as unknown as Row;
      const printed: PrintedText = (column) => (record.cells[places.get(column) ?? -1] ?? '').trim();
      for (const problem of check(row, printed)) problems.push(problem);
      rows.push(row);
    }
    yield { done: block.read, total: source.content.length };
  }
  const whole = { file, line: null, column: null, value: '', kind: 'file' } as const;
  if (!header) {
    problems.push({ ...whole, expected: 'a header row and at least one row of data', remedy: 'The file is empty.' });
  } else if (records === 0) {
    problems.push({
      ...whole,
      expected: 'at least one row of data below the header',
      remedy: 'The table has only a header.',
    });
  }
  const facts = header && { file, line: headerLine, names: header.names, records };
  return { rows, problems, warnings: header?.warnings ?? [], header: facts };
}

/** The result of a reading in steps, at once. */
export function drain<Result>(steps: Generator<unknown, Result>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
