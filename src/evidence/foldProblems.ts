/** Problems of one kind told as one, with a count and the first of their lines: a thousand alike hide the others. */
import { nameLines } from '../numerics/countOf.ts';
import { formatExpectation, formatProblem, type Problem, showReceived, showValue } from './problem.ts';

/** One problem, or several of one kind. */
export interface ProblemFold {
  readonly count: number;
  /** In the order of their lines; all, or the first of them. Never empty. */
  readonly problems: readonly Problem[];
  /** True where all expect the same and have the same remedy, to the last digit. */
  readonly isSame: boolean;
}

/** Problems of one kind up to which each is told by itself. */
const FEW = 3;
/** Lines and values that a message of several names. */
const SHOWN = 3;

/** @param problems by line; all come back, once each, a kind standing where its first problem stood */
export function foldProblems(problems: readonly Problem[]): readonly ProblemFold[] {
  const kinds = new Map<string, Problem[]>();
  for (const problem of problems) {
    const kind = nameKind(problem);
    const alike = kinds.get(kind);
    if (alike) alike.push(problem);
    else kinds.set(kind, [problem]);
  }
  const told = new Set<string>();
  return problems.flatMap((problem): ProblemFold[] => {
    const kind = nameKind(problem);
    const alike = kinds.get(kind) ?? [];
    if (alike.length <= FEW) return [{ count: 1, problems: [problem], isSame: true }];
    if (told.has(kind)) return [];
    told.add(kind);
    const isSame = alike.every(({ expected, remedy }) => expected === problem.expected && remedy === problem.remedy);
    return [{ count: alike.length, problems: alike, isSame }];
  });
}

/** One line of text: “1,593 lines (2, 3, 4, …), `reserve_reps`: expected a number from 0 to 30, received “1,5”, … ” */
export function formatFold({ count, problems, isSame }: ProblemFold): string {
  const [first] = problems;
  if (count === 1) return formatProblem(first);
  const shown = problems.slice(0, SHOWN);
  const lines = `${count.toLocaleString('en')} lines (${shown.map(({ line }) => line).join(', ')}, …)`;
  const place = first.column === null ? lines : `${lines}, \`${showValue(first.column)}\``;
  if (!isSame) return `${place}; the first: ${formatExpectation(first)}`;
  const values = [...new Set(problems.map(({ value }) => value))].slice(0, SHOWN + 1);
  return `${place}: ${formatExpectation({ ...first, value: values[0] }, values.slice(1, SHOWN), values.length > SHOWN)}`;
}

/** The lines of problems that differ in nothing but their value: “1,5”: lines 2, 4, 9. */
export function listByValue(problems: readonly Problem[]): readonly string[] {
  const lines = new Map<string, (number | null)[]>();
  for (const { value, line } of problems) {
    const known = lines.get(value);
    if (known) known.push(line);
    else lines.set(value, [line]);
  }
  return [...lines].map(([value, at]) => `${showReceived(value)}: ${nameLines(at.filter((line) => line !== null))}`);
}

/** What is alike in problems of one kind: all but their line, their value and the numbers and words that come of it. */
function nameKind({ kind, line, column, expected, remedy }: Problem): string {
  // A problem of the file or of a whole column is no other's like.
  if (line === null) return `${kind} ${column} ${expected}`;
  const plain = `${expected} ${remedy}`.replace(/“[^”]*”/gu, '“”').replace(/[−-]?\d+(?:\.\d+)?(?:e[+-]?\d+)?/giu, '0');
  return `${kind} ${column} ${plain}`;
}
