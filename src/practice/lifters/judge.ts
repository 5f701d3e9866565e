/**
 * Lines of a programme for each lifter: the load of each, and what the check says of it there. It is the very check of
 * the programme (`readProgramme`, `checkLine`), with the lifter's own per cent of 1RM in the place of the written load.
 */
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import { formatExpectation } from '../../evidence/problem.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import type { WholeRange } from '../../model/wholeRepetitions.ts';
import {
  COMPANIES,
  type Company,
  type Guarded,
  guardCautions,
  isUnguarded,
  LEAST_RESERVE_WHEN_PINNED,
} from '../cautions.ts';
import { writeCsv } from '../programme/checkText.ts';
import { readDay } from '../programme/columns.ts';
import type { EditorLine, LineList } from '../programme/edit.ts';
import { type Cells, isBegun } from '../programme/editorColumns.ts';
import { type CheckedLine, checkLine } from '../programme/line.ts';
import { readProgramme } from '../programme/read.ts';
import { type ResolvedLine, resolveList } from '../programme/resolve.ts';
import type { TrainingStatus } from '../situation.ts';
import { type Lifter, nameExercise } from './lifter.ts';
import { checkedPercent, type LifterLoad, loadFor } from './loadFor.ts';
import { plannedSpan, tellPlanned } from './planned.ts';

/** What is said of a line by the check, as far as a lifter's sheet and the list beside it need it. */
export type JudgedSet = Pick<CheckedLine, 'line' | 'advised' | 'against' | 'unsafe' | 'plausibility'>;

export interface LifterLine {
  /** Of the editor's line. */
  readonly id: number;
  /** 1 is the first Monday; null where it cannot be read. */
  readonly day: number | null;
  /** Name of the list, or as written. */
  readonly exercise: string;
  /** As told: a range stays one, and what cannot be read is as written. */
  readonly sets: string;
  readonly repetitions: string;
  readonly load: LifterLoad;
  /** Whole repetitions to leave; null where none can be read or worked out. */
  readonly reserve: WholeRange | null;
  readonly company: Company;
  /** True where the load can pin the lifter, or where nothing is known of the exercise. */
  readonly canPin: boolean;
  /** True where nothing would take such a load, and less than safety asks for is left. */
  readonly unsafe: boolean;
  /** Those of the exercise and the company. */
  readonly cautions: readonly string[];
  /** null where the line was not checked, or not as this lifter's. */
  readonly checked: JudgedSet | null;
  /** Why it was not checked, a sentence each. */
  readonly problems: readonly string[];
}

export interface LifterLines {
  readonly lifter: Lifter;
  readonly lines: readonly LifterLine[];
}

export interface LiftersInput {
  readonly list: LineList;
  readonly lifters: readonly Lifter[];
  /** The reader's own before the list's. */
  readonly exercises: readonly NamedExercise[];
  readonly status: TrainingStatus;
}

export function judgeLifters(analysis: PracticeAnalysis, input: LiftersInput): readonly LifterLines[] {
  const { lifters, exercises, status } = input;
  const list = { ...input.list, lines: input.list.lines.filter(({ cells }) => isBegun(cells)) };
  return lifters.map((lifter) => {
    const loads = new Map(list.lines.map((line) => [line.id, loadFor(lifter, line, exercises)]));
    const own = { ...list, lines: list.lines.map((line) => putLoad(line, loads.get(line.id))) };
    const { lines: resolved } = resolveList(own, exercises);
    const read = readProgramme(writeCsv(resolved.map(({ cells }) => cells)), lifter.name, exercises);
    const checked = new Map(read.lines.map((line) => [line.line, checkLine(analysis, line, status)]));
    const waiting = new Set(read.asked.flatMap(({ lines }) => lines));
    const problemsOf = (one: ResolvedLine) => [
      ...[...one.problems, ...read.problems.filter(({ line }) => line === one.line)].map(
        (problem) => `${problem.column ?? 'line'}: ${formatExpectation(problem)}`,
      ),
      ...(waiting.has(one.line) ? ['nothing is known of this exercise yet'] : []),
    ];
    return {
      lifter,
      lines: list.lines.map((line, i) => {
        const load = loads.get(line.id) ?? { kind: 'not read', written: line.cells.load };
        // Above 1RM, and of a weight without a 1RM, there is nothing that the check could be of.
        const isOf = load.kind === 'by repetitions' || checkedPercent(load) !== null;
        const found = isOf ? (checked.get(resolved[i].line) ?? null) : null;
        return describe(line, resolved[i], load, found, isOf ? problemsOf(resolved[i]) : [], exercises);
      }),
    };
  });
}

/** The line with its load in per cent of this lifter's 1RM. */
function putLoad(line: EditorLine, load: LifterLoad | undefined): EditorLine {
  const percent = load ? checkedPercent(load) : null;
  return percent === null ? line : { ...line, cells: { ...line.cells, load: String(percent) } };
}

function describe(
  { id, cells }: EditorLine,
  resolved: ResolvedLine,
  load: LifterLoad,
  found: CheckedLine | null,
  problems: readonly string[],
  exercises: readonly NamedExercise[],
): LifterLine {
  const span = plannedSpan(cells, 'reserve') ?? (found && { least: found.line.reserve, most: found.line.reserve });
  const written = resolved.cells.company.toLowerCase();
  const company = COMPANIES.find((one) => one === written) ?? 'alone';
  // What is not checked is guarded all the same.
  const guard = { exercise: found?.line.exercise ?? findGuarded(cells, exercises), company };
  return {
    id,
    day: readDay(resolved.cells.day.trim()),
    exercise: nameExercise(exercises, cells.exercise),
    sets: tellPlanned(cells, 'sets'),
    repetitions: tellPlanned(cells, 'repetitions'),
    load,
    // Half a repetition cannot be left: it is told as the whole ones around it.
    reserve: span && { least: Math.floor(span.least), most: Math.ceil(span.most) },
    company,
    canPin: guard.exercise.canPin,
    unsafe: isUnguarded(guard) && span !== null && span.least < LEAST_RESERVE_WHEN_PINNED,
    cautions: guardCautions(guard),
    checked: found && {
      line: found.line,
      advised: found.advised,
      against: found.against,
      unsafe: found.unsafe,
      plausibility: found.plausibility,
    },
    problems,
  };
}

const YES_OR_NO: ReadonlyMap<string, boolean> = new Map([
  ['yes', true],
  ['no', false],
]);

/** As the list has it, unless the line says otherwise; the careful answers where neither does. */
function findGuarded(cells: Cells, exercises: readonly NamedExercise[]): Guarded {
  const listed = exercises.find(({ name }) => name === nameExercise(exercises, cells.exercise));
  const said = (cell: string) => YES_OR_NO.get(cell.trim().toLowerCase());
  const canPin = said(cells.can_pin) ?? listed?.canPin;
  return {
    canPin: canPin ?? true,
    stoppable: said(cells.stoppable) ?? listed?.stoppable ?? false,
    relation: listed?.relation ?? null,
    isUnlisted: canPin === undefined,
  };
}
