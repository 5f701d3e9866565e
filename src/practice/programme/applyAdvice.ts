/**
 * Lines moved into the range that is advised. The load stays, and so does what a set could be taken to:
 * repetitions done and left together, so that a repetition fewer is one more in reserve. Of the range the
 * end that is nearest is taken. Repetitions are whole: of a total that is not, the whole part is kept.
 *
 * A line that cannot be moved so that it is as advised, safe and without a contradiction stays as it is
 * and is named with what stands in the way.
 */
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import { PROGRAMME_COLUMNS, type ProgrammeLine } from './columns.ts';
import { addLine, changeCell, type EditorLine, type LineList } from './edit.ts';
import { type Cells, type EditorColumn, isBegun } from './editorColumns.ts';
import type { CheckedLine } from './line.ts';
import { resolveLine } from './resolve.ts';

/** What a line becomes; the cells are its repetitions and its reserve. */
export interface Move {
  readonly id: number;
  readonly checked: CheckedLine;
  readonly repetitions: number;
  readonly reserve: number;
}

export type WhyLeft =
  /** There is no range, which its sentence explains. */
  | 'no advice'
  /** Repetitions and reserve do not fit the load; moving one into the other does not mend that. */
  | 'questioned'
  /** Nothing would be left to do at this load. */
  | 'no repetition'
  /** More would be done than are possible as the line itself gives them, or than a line may hold. */
  | 'too many';

export interface LeftLine {
  readonly id: number;
  readonly checked: CheckedLine;
  readonly why: WhyLeft;
  /** Reserve that it was to have; null where there is none. */
  readonly wanted: number | null;
}

export interface AppliedAdvice {
  readonly moves: readonly Move[];
  readonly left: readonly LeftLine[];
  /** Ids of lines that were not checked: they are not complete, or wait for the facts of their exercise. */
  readonly unchecked: readonly number[];
  /** Lines that are as advised already, and safe. */
  readonly asAdvised: number;
}

/** Rounding of a sum of repetitions. */
const SLACK = 1e-9;

/**
 * @param checked by id, of the lines as they stand
 * @param only id of the line that is meant; null for all
 */
export function applyAdvice(
  { lines }: LineList,
  exercises: readonly NamedExercise[],
  checked: ReadonlyMap<number, CheckedLine>,
  only: number | null = null,
): AppliedAdvice {
  const moves: Move[] = [];
  const left: LeftLine[] = [];
  const unchecked: number[] = [];
  let asAdvised = 0;
  for (const line of lines.filter(({ id, cells }) => isBegun(cells) && (only === null || id === only))) {
    const one = checked.get(line.id);
    if (!one) {
      unchecked.push(line.id);
      continue;
    }
    const found = moveIntoRange(one, possibleAsGiven(line, exercises));
    if (found === null) asAdvised++;
    else if ('why' in found) left.push({ id: line.id, checked: one, ...found });
    else moves.push({ id: line.id, checked: one, ...found });
  }
  return { moves, left, unchecked, asAdvised };
}

/** The list with every move made in it. */
export function makeMoves(list: LineList, moves: readonly Move[]): LineList {
  return moves.reduce((now, { id, repetitions, reserve }) => setSet(now, id, { repetitions, reserve }), list);
}

/**
 * One move made in another version: in the line that came of the same one, else in the first of the same
 * day and exercise that differs, else in a line of its own at the end.
 */
export function makeMoveIn(version: LineList, from: EditorLine, move: Move): LineList {
  const { lines } = version;
  const sameId = lines.find((line) => line.id === from.id && isSameSet(line.cells, from.cells));
  const partner = sameId ?? lines.find((line) => isSameSet(line.cells, from.cells));
  if (partner) return setSet(version, partner.id, move);
  return setSet(addLine(version, lines.length, from.cells), version.nextId, move);
}

const OF_A_SET: readonly EditorColumn[] = ['week', 'day', 'exercise', 'sets', 'load'];

function isSameSet(a: Cells, b: Cells): boolean {
  return OF_A_SET.every((column) => a[column].trim() === b[column].trim());
}

function setSet(list: LineList, id: number, { repetitions, reserve }: Pick<Move, 'repetitions' | 'reserve'>): LineList {
  return changeCell(changeCell(list, id, 'repetitions', String(repetitions)), id, 'reserve', String(reserve));
}

function possibleAsGiven(line: EditorLine, exercises: readonly NamedExercise[]): number {
  const { possible } = resolveLine(line, 0, exercises).cells;
  return possible.trim() === '' ? Number.POSITIVE_INFINITY : Number(possible);
}

/** null where nothing is to be moved. */
function moveIntoRange(
  { line, advised, against, unsafe, plausibility }: CheckedLine,
  possible: number,
): Pick<Move, 'repetitions' | 'reserve'> | Pick<LeftLine, 'why' | 'wanted'> | null {
  if (against === 'inside' && !unsafe) return null;
  if (!advised.reserve) return { why: 'no advice', wanted: null };
  const { least, most } = advised.reserve;
  const reserve = Math.min(most, Math.max(least, line.reserve));
  if (plausibility.kind === 'too many') return { why: 'questioned', wanted: reserve };
  const repetitions = Math.floor(totalOf(line) - reserve + SLACK);
  if (repetitions < 1) return { why: 'no repetition', wanted: reserve };
  const isAllowed = PROGRAMME_COLUMNS.repetitions.cell.safeParse(String(repetitions)).success;
  if (repetitions > possible || !isAllowed) return { why: 'too many', wanted: reserve };
  return { repetitions, reserve };
}

/** Repetitions done and left together. */
export function totalOf({ repetitions, reserve }: Pick<ProgrammeLine, 'repetitions' | 'reserve'>): number {
  return repetitions + reserve;
}
