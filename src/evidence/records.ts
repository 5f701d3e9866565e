/** Records of a CSV into typed rows, each cell read once per distinct text of its column. */
import { type CellRange, type Column, whyNotPlain } from './column.ts';
import type { CsvRecord } from './csv.ts';
import type { Problem } from './problem.ts';

type Columns = Readonly<Record<string, Column<unknown>>>;

/** A row that was read: every column, `line`, and `ranges` where a cell holds one, with null for the cells that are empty or have problems. */
export interface ReadRow {
  readonly values: Record<string, unknown>;
  /** True where every cell is valid. */
  readonly valid: boolean;
}

/** Reads a record and adds its problems to the list. */
export type RecordReader = (record: CsvRecord, problems: Problem[]) => ReadRow;

interface Reading {
  readonly value: unknown;
  /** Where the cell holds a range. */
  readonly range: CellRange | null;
  readonly problem: Pick<Problem, 'kind' | 'value' | 'expected' | 'remedy'> | null;
}

/**
 * Makes a reader of records. A table repeats its words and round numbers, so each distinct text of
 * a column is checked once and remembered.
 */
export function makeRecordReader(columns: Columns, names: readonly (string | null)[], file: string): RecordReader {
  const emptyRow = makeEmptyRow(Object.keys(columns));
  const readings = names.map(() => new Map<string, Reading>());
  const mayBeEmpty = names.map((name) => name === null || !columns[name].required);
  return (record, problems) => {
    const { line, cells } = record;
    const values = { ...emptyRow };
    values.line = line;
    if (cells.length !== names.length) {
      problems.push({
        kind: 'ragged-line',
        file,
        line,
        column: null,
        value: `${cells.length} cells`,
        expected: `${names.length} cells, as many as the header has`,
        remedy: 'Look for a missing or doubled delimiter, or a text with a delimiter that is not in quotation marks.',
      });
      return { values, valid: false };
    }
    let valid = true;
    for (let i = 0; i < cells.length; i++) {
      const name = names[i];
      if (name === null) continue;
      const cell = cells[i];
      if (cell === '' && mayBeEmpty[i]) continue;
      let reading = readings[i].get(cell);
      if (!reading) {
        reading = readCell(cell, columns[name]);
        readings[i].set(cell, reading);
      }
      values[name] = reading.value;
      if (reading.range) values.ranges = { ...(values.ranges as object | undefined), [name]: reading.range };
      if (reading.problem) {
        problems.push({ file, line, column: name, ...reading.problem });
        valid = false;
      }
    }
    return { values, valid };
  };
}

/**
 * A row with nothing in it, to be copied. An engine lays objects out by the kinds of values that it
 * has seen in them; having seen all kinds here, it keeps one layout for all rows (4 times faster).
 */
function makeEmptyRow(names: readonly string[]): Readonly<Record<string, unknown>> {
  const first: Record<string, unknown> = { line: 0 };
  for (const name of names) first[name] = null;
  const row = { ...first };
  for (const name of names) {
    for (const kind of ['', 0.5, true, null]) row[name] = kind;
  }
  return row;
}

/** What papers' tables say of what they leave out; the same as an empty cell wherever a cell may be empty, texts apart. */
const NOT_SAID = /^not (?:said|known|reported|stated)$/iu;

function readCell(cell: string, column: Column<unknown>): Reading {
  const trimmed = cell.trim();
  if (trimmed === '') {
    const problem = column.required
      ? ({
          kind: 'missing-value',
          value: '',
          expected: 'a value',
          remedy: null,
        } as const)
      : null;
    return { value: null, range: null, problem };
  }
  if (!column.required && column.field.constraints.maxLength === undefined && NOT_SAID.test(trimmed)) {
    return { value: null, range: null, problem: null };
  }
  const parsed = column.cell.safeParse(trimmed);
  if (parsed.success) {
    const range = column.rangeOf?.(trimmed) ?? null;
    return { value: range ? range.value : parsed.data, range, problem: null };
  }
  return {
    value: null,
    range: null,
    problem: { kind: 'wrong-value', value: trimmed, expected: column.expected, remedy: suggestRemedy(trimmed, column) },
  };
}

/** What to do about a cell that people are known to write. */
function suggestRemedy(cell: string, column: Column<unknown>): string | null {
  const { type, constraints } = column.field;
  if (type === 'number' || type === 'integer' || column.rangeOf) {
    if (/^[+-]?[1-9]\d{0,2}(?:,\d{3})+$/u.test(cell))
      return 'Write thousands without a comma, and decimals with a point.';
    if (/^[-+−–]?\d+[,·]\d+$/u.test(cell)) return 'Use a decimal point.';
    if (/^[−–]\d/u.test(cell)) return 'Write the minus as -.';
    if (/%$/u.test(cell)) return 'Leave out the per cent sign; the unit is in the data dictionary.';
    if (/^[<>≤≥]/u.test(cell)) return 'A bound is not a value: enter the exact number, or leave the cell empty.';
    if (/\d\s*(?:±|\+\/-|\()/u.test(cell)) return 'Enter the mean alone; its spread has a column of its own.';
    if (/^[+-]?[\d.]+\s*\p{L}+$/u.test(cell)) return 'Leave out the unit; it is in the data dictionary.';
    const ends = /^([\d.]+)\s*[-–—]\s*([\d.]+)$/u.exec(cell);
    if (ends && column.rangeOf && Number(ends[1]) >= Number(ends[2])) return 'Write the smaller number first.';
    if (ends && !column.rangeOf)
      return 'Enter the mean of the range and put the spread in the column of the standard deviation.';
    if (/^(?:na|n\/a|nr|null|none|nan|-|–|\.)$/iu.test(cell)) return 'Leave the cell empty where nothing is reported.';
    return null;
  }
  const words = constraints.enum;
  if (Array.isArray(words)) return words.includes(cell.toLowerCase()) ? 'Write it in small letters.' : null;
  if (type === 'string') return whyNotPlain(cell);
  return null;
}
