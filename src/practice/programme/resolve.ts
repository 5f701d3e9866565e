/**
 * Cells as typed into the form that the check reads. A cell of that form stays as it is; one in a notation
 * that coaches write, “80 %”, “6-8”, “RIR 2”, is read by the same rules as pasted text, and what was taken for
 * it is said. What cannot be read stays as typed, so that the check names it.
 *
 * Of a range the end is checked that leaves least in reserve: most repetitions and most load, fewest possible
 * and fewest left.
 */
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import { findNamed } from '../../evidence/findNamed.ts';
import type { Problem } from '../../evidence/problem.ts';
import { writeCsv } from './checkText.ts';
import { PROGRAMME_COLUMNS } from './columns.ts';
import type { EditorLine, LineList } from './edit.ts';
import type { Cells, ProgrammeColumn } from './editorColumns.ts';
import { resolveDay } from './resolveDay.ts';
import { sayNoUnit } from './written/bare.ts';
import { sayMaximum } from './written/maximum.ts';
import { readPiece } from './written/piece.ts';
import { FIELDS, type Field, type Found, type Span, writeLoad, writeSpan } from './written/understood.ts';

export interface ResolvedLine {
  readonly id: number;
  /** Line of the text that is checked; the header is line 1. */
  readonly line: number;
  readonly cells: Readonly<Record<ProgrammeColumn, string>>;
  /** What was taken for a cell, a sentence each. */
  readonly assumed: readonly string[];
  /** What is wrong with a cell in a notation; it stands for what the check says of the same line and column. */
  readonly problems: readonly Problem[];
}

export interface ResolvedList {
  /** CSV that `readProgramme` reads. */
  readonly text: string;
  readonly lines: readonly ResolvedLine[];
}

/** Name by which messages carry the list. */
const FILE = 'programme';
/** The header, and that lines are counted from 1. */
const FIRST_LINE = 2;

/** @param exercises the reader's own before the list's */
export function resolveList({ lines }: LineList, exercises: readonly NamedExercise[]): ResolvedList {
  const resolved = lines.map((line, i) => resolveKnown(line, i + FIRST_LINE, exercises));
  return { text: writeCsv(resolved.map(({ cells }) => cells)), lines: resolved };
}

const made = new WeakMap<
  EditorLine,
  { readonly exercises: readonly NamedExercise[]; readonly resolved: ResolvedLine }
>();

/** A line is resolved once: with each key that is typed one line of a list is another. */
function resolveKnown(one: EditorLine, line: number, exercises: readonly NamedExercise[]): ResolvedLine {
  const known = made.get(one);
  if (known?.exercises === exercises && known.resolved.line === line) return known.resolved;
  const resolved = resolveLine(one, line, exercises);
  made.set(one, { exercises, resolved });
  return resolved;
}

export function resolveLine(
  { id, cells }: EditorLine,
  line: number,
  exercises: readonly NamedExercise[],
): ResolvedLine {
  const { week: _week, note: _note, ...typed } = cells;
  const assumed: string[] = [];
  const problems: Problem[] = [];
  const read: Record<ProgrammeColumn, string> = { ...typed };
  const wrong = (column: string, value: string, expected: string, remedy: string | null) =>
    problems.push({ kind: 'wrong-value', file: FILE, line, column, value, expected, remedy });
  const day = resolveDay(cells);
  read.day = day.cell;
  if (day.assumed !== null) assumed.push(day.assumed);
  if (day.problem) wrong('week', cells.week, day.problem.expected, day.problem.remedy);
  const named = findNamed(exercises, cells.exercise);
  if (named.kind === 'named' || named.kind === 'synonym') read.exercise = named.exercise.name;
  if (named.kind === 'synonym') assumed.push(`“${cells.exercise}” is taken as ${named.exercise.name}.`);
  for (const field of FIELDS) {
    if (isOfForm(cells[field], field)) continue;
    const found = readField(cells, field, line);
    if (found.kind === 'refused') wrong(field, cells[field], found.expected, found.remedy);
    if (found.kind !== 'read') continue;
    read[field] = found.cell;
    assumed.push(...found.assumed);
  }
  return { id, line, cells: read, assumed, problems };
}

/** True for what the check reads as it stands. */
function isOfForm(cell: string, field: Field): boolean {
  return cell.trim() === '' || PROGRAMME_COLUMNS[field].cell.safeParse(cell.trim()).success;
}

type ReadField =
  | { readonly kind: 'read'; readonly cell: string; readonly assumed: readonly string[] }
  | { readonly kind: 'refused'; readonly expected: string; readonly remedy: string | null }
  /** Nothing better can be said than what the check says. */
  | { readonly kind: 'left' };

function readField(cells: Cells, field: Field, line: number): ReadField {
  const column = field === 'load' ? ({ kind: 'load', unit: 'form' } as const) : ({ kind: field } as const);
  const { found, refused, words, notes, assumed } = readPiece({
    place: { line, column: field, text: cells[field] },
    column,
  });
  if (refused.length > 0) {
    const [{ refusal }] = refused;
    return { kind: 'refused', expected: refusal.expected, remedy: refusal.remedy || null };
  }
  if (found.length !== 1 || found[0].found.field !== field || words.length > 0 || notes.length > 0) {
    return { kind: 'left' };
  }
  const [{ found: one }] = found;
  if (one.field === 'load' && one.value.unit !== '%') {
    return { kind: 'refused', ...sayMaximum(cells.exercise, one.value.unit) };
  }
  const cell = checkedEnd(one);
  if (!isOfForm(cell, field)) return { kind: 'left' };
  // Under a heading in per cent of 1RM a bare number has its unit.
  const noUnit = one.field === 'load' ? sayNoUnit(one.value) : null;
  const said = assumed.map((taken) => taken.said).filter((sentence) => sentence !== noUnit);
  return { kind: 'read', cell, assumed: [...said, ...sayRange(one, cell)] };
}

const LEAST_LEFT: Readonly<Record<Exclude<Field, 'company'>, keyof Span>> = {
  sets: 'most',
  repetitions: 'most',
  load: 'most',
  possible: 'least',
  reserve: 'least',
};

function checkedEnd(found: Found): string {
  return found.field === 'company' ? found.value : String(found.value[LEAST_LEFT[found.field]]);
}

const NAMES: Readonly<Record<Exclude<Field, 'company'>, string>> = {
  sets: 'sets',
  repetitions: 'repetitions',
  load: 'of 1RM',
  possible: 'repetitions possible',
  reserve: 'in reserve',
};

function sayRange(found: Found, cell: string): readonly string[] {
  if (found.field === 'company' || found.value.least === found.value.most) return [];
  const written = found.field === 'load' ? writeLoad(found.value) : writeSpan(found.value);
  const why = found.field === 'sets' ? '' : ', which leave least';
  return [`Of ${written} ${NAMES[found.field]} ${cell}${found.field === 'load' ? '%' : ''} are checked${why}.`];
}
