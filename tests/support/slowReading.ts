/**
 * What a table of study arms means, read slowly: RFC 4180 one character at a time, cells by the machine-readable
 * half of the schema (Table Schema's constraints, and the words for open limits). Shares no code with the reading
 * that it is held against.
 */
import type { Column, TableSchemaField } from '../../src/evidence/column.ts';
import { ARM_COLUMNS, type Arm, type ArmColumn } from '../../src/evidence/schema.ts';

interface SlowRecord {
  readonly line: number;
  readonly cells: readonly string[];
}

/** Rows as they stand, or what must keep the table from being read, in words for a failing test. */
export type Meaning = { readonly arms: readonly Arm[] } | { readonly wrong: string };

const names = Object.keys(ARM_COLUMNS) as ArmColumn[];
const known = new Set<string>(names);
const isColumn = (name: string): name is ArmColumn => known.has(name);

export function readMeaning(text: string): Meaning {
  if (text.includes('\ufffd')) return { wrong: 'a lost character' };
  const plain = text.replace(/^\ufeff/u, '').replace(/\r\n|\r/gu, '\n');
  const headers = [',', ';', '\t'].map((delimiter) => {
    const [first] = splitRecords(plain, delimiter, 1).records;
    return { delimiter, found: (first?.cells ?? []).filter((cell) => isColumn(cell.trim())).length };
  });
  const most = Math.max(...headers.map(({ found }) => found));
  const { delimiter = ',' } = headers.find(({ found }) => found === most) ?? {};
  const { records, malformed } = splitRecords(plain, delimiter);
  if (malformed) return { wrong: malformed };
  const [first, ...rows] = records;
  if (!first || rows.length === 0) return { wrong: 'no rows' };
  const given = first.cells.map((cell) => cell.trim());
  const missing = names.find((name) => ARM_COLUMNS[name].required && !given.includes(name));
  if (missing) return { wrong: `no column ${missing}` };
  const doubled = names.find((name) => given.indexOf(name) !== given.lastIndexOf(name));
  if (doubled) return { wrong: `two columns ${doubled}` };
  const arms: Arm[] = [];
  const header = given.join(BETWEEN);
  for (const record of rows) {
    const arm = readRow(record, given, header);
    if ('wrong' in arm) return arm;
    arms.push(arm);
  }
  return { arms };
}

/** Stands in no cell: a text that holds it is refused. */
const BETWEEN = '\ufffd';
/** Rows that were read already: tables that differ in a few rows share the rest. */
const readAlready = new Map<string, Arm | { readonly wrong: string }>();

/** @param header `given` as one text */
function readRow(record: SlowRecord, given: readonly string[], header: string): Arm | { readonly wrong: string } {
  const key = [record.line, header, ...record.cells].join(BETWEEN);
  const row = readAlready.get(key) ?? interpretRow(record, given);
  readAlready.set(key, row);
  return row;
}

function interpretRow({ line, cells }: SlowRecord, given: readonly string[]): Arm | { readonly wrong: string } {
  if (cells.length !== given.length) return { wrong: `line ${line} has ${cells.length} cells` };
  const arm: Record<string, unknown> = { line };
  for (const name of names) arm[name] = null;
  for (const [place, name] of given.entries()) {
    if (!isColumn(name)) continue;
    const read = interpret(cells[place].trim(), name);
    if (read === undefined) return { wrong: `line ${line}, ${name}: ${cells[place].slice(0, 80)}` };
    if (isRanged(read)) {
      arm.ranges = { ...(arm.ranges as object | undefined), [name]: read };
      arm[name] = read.value;
    } else arm[name] = read;
  }
  return arm as unknown as Arm;
}

/** undefined where the cell is none of the column's. */
function interpret(cell: string, name: ArmColumn): unknown {
  const column: Column<unknown> = ARM_COLUMNS[name];
  const { field, required, expected } = column;
  if (cell === '') return required ? undefined : null;
  const isText = field.type === 'string' && !column.endField && !Array.isArray(field.constraints.enum);
  if (!required && !isText && ['not said', 'not known', 'not reported', 'not stated'].includes(cell.toLowerCase())) {
    return null;
  }
  if (column.endField) return interpretNumber(cell, column.endField, expected) ?? interpretRange(cell, column, name);
  if (field.type === 'boolean') return cell === 'yes' ? true : cell === 'no' ? false : undefined;
  const { enum: words } = field.constraints;
  if (Array.isArray(words)) return words.includes(cell) ? cell : undefined;
  if (field.type === 'string') return isPlain(cell) ? cell : undefined;
  return interpretNumber(cell, field, expected);
}

interface Ranged {
  readonly low: number;
  readonly high: number;
  readonly value: number | null;
}

function isRanged(read: unknown): read is Ranged {
  return typeof read === 'object' && read !== null;
}

/** Two numbers with a dash or “to” between them; of a p-value a sign before one number. */
function interpretRange(cell: string, { endField, expected }: Column<unknown>, name: ArmColumn): Ranged | undefined {
  if (!endField) return undefined;
  if (name === 'change_p') {
    const bound = interpretNumber(cell.slice(1).trim(), endField, expected);
    if (bound === undefined || bound >= 1 || !/^[0-9.]/u.test(cell.slice(1).trim())) return undefined;
    if ('<≤'.includes(cell[0])) return { low: 0, high: bound, value: bound };
    return '>≥'.includes(cell[0]) ? { low: bound, high: 1, value: null } : undefined;
  }
  const parts = cell.split(/[-–—]|to/iu).map((part) => part.trim());
  if (parts.length !== 2 || parts.some((part) => !/^[0-9.]+$/u.test(part))) return undefined;
  const [low, high] = parts.map((part) => interpretNumber(part, endField, expected));
  if (low === undefined || high === undefined || low >= high) return undefined;
  return { low, high, value: (low + high) / 2 };
}

function interpretNumber(cell: string, field: TableSchemaField, expected: string): number | undefined {
  const { minimum, maximum } = field.constraints;
  if (!/^[+-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?$/u.test(cell)) return undefined;
  const value = Number(cell);
  if (!Number.isFinite(value) || (field.type === 'integer' && !Number.isSafeInteger(value))) return undefined;
  if (typeof minimum === 'number' && (value < minimum || (value === minimum && /\babove\b/u.test(expected))))
    return undefined;
  if (typeof maximum === 'number' && (value > maximum || (value === maximum && /\bbelow\b/u.test(expected))))
    return undefined;
  return value;
}

function isPlain(cell: string): boolean {
  if (cell.length > 500 || '=+-@'.includes(cell.charAt(0)) || /;[=+\-@]/u.test(cell)) return false;
  const characters = [...cell];
  return characters.every((character, i) => {
    if ('\u200c\u200d'.includes(character)) return true;
    if (/^[\p{C}\p{Zl}\p{Zp}]$/u.test(character)) return /^[\p{Co}\p{Cn}]$/u.test(character);
    return character !== '<' || !/^[a-zA-Z\u017f\u212a/!?]$/u.test(characters[i + 1] ?? '');
  });
}

function splitRecords(
  text: string,
  delimiter: string,
  most = Number.POSITIVE_INFINITY,
): { records: readonly SlowRecord[]; malformed: string | null } {
  const records: { line: number; cells: string[] }[] = [];
  let line = 1;
  let at = 0;
  let malformed: string | null = null;
  let record = { line, cells: [] as string[] };
  while (at <= text.length && records.length < most) {
    let cell = '';
    if (text[at] === '"') {
      at++;
      while (at < text.length && !(text[at] === '"' && text[at + 1] !== '"')) {
        if (text[at] === '"') at++;
        if (text[at] === '\n') line++;
        cell += text[at++];
      }
      if (at >= text.length) malformed ??= `line ${record.line}: a mark without an end`;
      at++;
      // What is between the closing mark and the delimiter may be spaces.
      while (text[at] === ' ') at++;
      if (at < text.length && text[at] !== delimiter && text[at] !== '\n') {
        malformed ??= `line ${record.line}: text behind a closing mark`;
        while (at < text.length && text[at] !== delimiter && text[at] !== '\n') at++;
      }
    } else {
      const from = at;
      while (at < text.length && text[at] !== delimiter && text[at] !== '\n') at++;
      cell = text.slice(from, at);
    }
    record.cells.push(cell);
    if (at >= text.length || text[at] === '\n') {
      records.push(record);
      line++;
      record = { line, cells: [] };
    }
    at++;
  }
  return { records: records.filter(({ cells }) => cells.length > 1 || cells[0].trim() !== ''), malformed };
}
