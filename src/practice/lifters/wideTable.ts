/**
 * Lifters as many coaches list them: a line for each, a column for each exercise, and what can be lifted once in the
 * cells. Read into the lines of the other form (lifterColumns.ts).
 */
import { type CsvRecord, openCsv, readBlocks } from '../../evidence/csv.ts';
import { pairWithFirst } from '../../evidence/groupRows.ts';
import type { Problem } from '../../evidence/problem.ts';
import { foldPerson } from './lifter.ts';
import { LIFTER_COLUMNS, lifterColumnNamed, type WrittenLifterLine } from './lifterColumns.ts';
import type { WeightUnit } from './weight.ts';

export interface WideLines {
  readonly rows: readonly WrittenLifterLine[];
  readonly problems: readonly Problem[];
}

/** What the head of a column says: of the lifter, or of an exercise and the unit of its cells. */
type Head =
  | { readonly kind: 'lifter' | 'unit' | 'step' }
  | { readonly kind: 'exercise'; readonly exercise: string; readonly unit: WeightUnit | null }
  | { readonly kind: 'none' };

/** @returns null for a text of the other form, or of none */
export function readWide(text: string, file: string): WideLines | null {
  const source = openCsv(text, file, new Set(Object.keys(LIFTER_COLUMNS)), lifterColumnNamed);
  const problems = [...source.problems];
  const records: CsvRecord[] = [];
  for (const block of readBlocks(source, file)) {
    problems.push(...block.problems);
    records.push(...block.records);
  }
  const [header, ...lines] = records;
  const heads = (header?.cells ?? []).map(readHead);
  const isWide = heads.some(({ kind }) => kind === 'lifter') && heads.some(({ kind }) => kind === 'exercise');
  const isLong = (header?.cells ?? []).some((cell) => ['exercise', 'one_rm'].includes(lifterColumnNamed(cell.trim())));
  if (!isWide || isLong) return null;
  const taken = lines.flatMap((record) => takeRecord(record, heads, file, problems));
  const doubled = pairWithFirst(taken, ({ lifter }) => foldPerson(lifter)).map(({ row, first }) => {
    problems.push({
      kind: 'duplicate',
      file,
      line: row.line,
      column: 'lifter',
      value: row.lifter,
      expected: `a name that line ${first.line} does not have already`,
      remedy: 'Give the two lifters two names, or remove one of the two lines.',
    });
    return row;
  });
  return { rows: taken.filter((one) => !doubled.includes(one)).flatMap(({ rows }) => rows), problems };
}

function readHead(cell: string): Head {
  const written = cell.trim();
  const column = lifterColumnNamed(written);
  if (column === 'lifter' || column === 'unit' || column === 'step') return { kind: column };
  const groups = /^(?<name>.*?)\s*(?:1\s?rm|max(?:imum)?)?\s*[[(]?\s*(?:(?<kg>kgs?)|(?<lb>lbs?))?\s*[\])]?$/iu.exec(
    written,
  )?.groups;
  const exercise = groups?.name ?? written;
  if (!LIFTER_COLUMNS.exercise.cell.safeParse(exercise).success || exercise === '') return { kind: 'none' };
  return { kind: 'exercise', exercise, unit: groups?.kg ? 'kg' : groups?.lb ? 'lb' : null };
}

interface TakenRecord {
  readonly lifter: string;
  readonly line: number;
  readonly rows: readonly WrittenLifterLine[];
}

function takeRecord(
  { cells, line }: CsvRecord,
  heads: readonly Head[],
  file: string,
  problems: Problem[],
): TakenRecord[] {
  const refuse = (column: string, value: string, expected: string) => {
    problems.push({
      kind: value === '' ? 'missing-value' : 'wrong-value',
      file,
      line,
      column,
      value,
      expected,
      remedy: null,
    });
    return [];
  };
  const cellOf = (kind: Head['kind']) => cells[heads.findIndex((head) => head.kind === kind)]?.trim() ?? '';
  const name = LIFTER_COLUMNS.lifter.cell.safeParse(cellOf('lifter'));
  if (cellOf('lifter') === '') return refuse('lifter', '', 'the name of a lifter');
  if (!name.success) return refuse('lifter', cellOf('lifter'), LIFTER_COLUMNS.lifter.expected);
  const unit = LIFTER_COLUMNS.unit.cell.safeParse(cellOf('unit'));
  if (cellOf('unit') !== '' && !unit.success) return refuse('unit', cellOf('unit'), LIFTER_COLUMNS.unit.expected);
  const own = unit.success ? unit.data : null;
  const beyond = cells.slice(heads.length).find((cell) => cell.trim() !== '');
  if (beyond !== undefined) refuse('lifter', beyond, `no more cells than the header has, ${heads.length}`);
  const lifter = name.data;
  const step = cellOf('step') || null;
  const first = heads.find((head) => head.kind === 'exercise' && head.unit !== null);
  const rows = heads.flatMap((head, i): WrittenLifterLine[] => {
    const cell = cells[i]?.trim() ?? '';
    if (head.kind !== 'exercise' || cell === '') return [];
    return [{ line, lifter, exercise: head.exercise, one_rm: cell, unit: head.unit ?? own, step: null }];
  });
  const whole = { line, lifter, exercise: null, one_rm: null, step };
  return [
    { lifter, line, rows: [{ ...whole, unit: own ?? (first?.kind === 'exercise' ? first.unit : null) }, ...rows] },
  ];
}
