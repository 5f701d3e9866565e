/**
 * Which set each problem of a written week is about. A problem names its line of the text, and a line may hold
 * several sets, “squat 4x6 80%; paused press 3x5 75%”, or a set that stands for several days: asked beside another
 * set, a question would be answered for the wrong one. A set has the problem whose value it holds, or lacks.
 */
import { sayMaximum } from '../../practice/programme/written/maximum.ts';
import {
  type NotRead,
  type UnderstoodLine,
  type WrittenProgramme,
  writeLoad,
} from '../../practice/programme/written/understood.ts';

export interface PlacedProblems {
  /** By the line that they are shown beside; of a set of several days that is the first. */
  readonly beside: ReadonlyMap<UnderstoodLine, readonly NotRead[]>;
  /** Of no line of sets. */
  readonly others: readonly NotRead[];
}

/** A set as it was written, whatever the days that it stands for. */
interface WrittenSet {
  readonly first: UnderstoodLine;
  readonly days: Set<number>;
  readonly problems: NotRead[];
}

/** Each problem once. */
export function placeProblems({ lines, notRead }: Pick<WrittenProgramme, 'lines' | 'notRead'>): PlacedProblems {
  const byLine = gatherSets(lines);
  const others: NotRead[] = [];
  for (const problem of notRead) {
    const sets = problem.line === null ? undefined : byLine.get(problem.line);
    if (sets) setOf(problem, sets).problems.push(problem);
    else others.push(problem);
  }
  const all = [...byLine.values()].flat();
  return { beside: new Map(all.map(({ first, problems }) => [first, problems])), others };
}

/** True where the line holds what the problem was told of, as it was written. */
export function holdsValue({ exercise, unread }: UnderstoodLine, { column, value }: Pick<NotRead, 'column' | 'value'>) {
  return (
    (column === 'exercise' && exercise?.value === value) ||
    unread.some((one) => one.column === column && one.text === value)
  );
}

/** Sets by their line of the text, in the order in which they stand there. */
function gatherSets(lines: readonly UnderstoodLine[]): ReadonlyMap<number, readonly WrittenSet[]> {
  const byLine = new Map<number, WrittenSet[]>();
  for (const line of lines) {
    const sets = byLine.get(line.line) ?? [];
    byLine.set(line.line, sets);
    const same = sets.find((set) => isOfOtherDay(line, set));
    const set = same ?? { first: line, days: new Set(), problems: [] };
    if (!same) sets.push(set);
    if (line.day) set.days.add(line.day.value);
  }
  return byLine;
}

/** True where a line is the set on one more of the days that were named for it, “Mon/Thu squat 4x6”. */
function isOfOtherDay({ text, day }: UnderstoodLine, { first, days }: WrittenSet): boolean {
  if (!day || day.readFrom.text === '' || first.text !== text) return false;
  return first.day?.readFrom.text === day.readFrom.text && !days.has(day.value);
}

/** The first that has it and was not given it yet, since two sets may lack the same. */
function setOf(problem: NotRead, sets: readonly WrittenSet[]): WrittenSet {
  const about = sets.filter(({ first }) => timesIn(problem, first) > 0);
  const isGiven = ({ first, problems }: WrittenSet) =>
    problems.filter((one) => isSame(one, problem)).length >= timesIn(problem, first);
  return about.find((set) => !isGiven(set)) ?? about[0] ?? sets[0];
}

function isSame(a: NotRead, b: NotRead): boolean {
  return a.column === b.column && a.value === b.value && a.remedy === b.remedy;
}

/** How often a line has the problem. */
function timesIn(problem: NotRead, line: UnderstoodLine): number {
  const { column, value } = problem;
  const unread = line.unread.filter((one) => one.column === column && one.text === value).length;
  if (unread > 0) return unread;
  const isIn =
    value === '' ? lacks(line, column) : column === 'load' ? asksMaximum(line, problem) : holdsValue(line, problem);
  return isIn ? 1 : 0;
}

/** True where it is the weight of the line, whose 1RM is asked for. */
function asksMaximum(line: UnderstoodLine, { value, remedy }: NotRead): boolean {
  if (!line.load || isToldOf(line, 'load')) return false;
  const { value: load } = line.load;
  return writeLoad(load) === value && sayMaximum(line.exercise?.value ?? '', load.unit).remedy === remedy;
}

/** True where a column has nothing. */
function lacks(line: UnderstoodLine, column: string | null): boolean {
  if (isToldOf(line, column)) return false;
  switch (column) {
    case 'load':
      return line.load === null && line.possible === null;
    case 'exercise':
    case 'sets':
    case 'repetitions':
    case 'day':
      return line[column] === null;
    default:
      return false;
  }
}

/** True where something was written that may be meant for a column: what it lacks is then not told besides. */
function isToldOf({ unread }: UnderstoodLine, column: string | null): boolean {
  const isOfAny = column !== 'exercise' && column !== 'day';
  return unread.some((one) => one.column === column || (one.column === null && isOfAny));
}
