/** What is said of each line of an editor, by its id: the check's report is of lines of a text. */
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import type { Problem } from '../../evidence/problem.ts';
import type { LineList } from './edit.ts';
import { isBegun } from './editorColumns.ts';
import type { CheckedLine } from './line.ts';
import type { Version } from './report.ts';
import { type ResolvedList, resolveList } from './resolve.ts';

export interface LineReport {
  /** null where the line could not be checked. */
  readonly checked: CheckedLine | null;
  readonly problems: readonly Problem[];
  /** Unusual, but possible. */
  readonly warnings: readonly Problem[];
  /** What was taken for a cell, a sentence each. */
  readonly assumed: readonly string[];
  /** True where nothing is known of its exercise. */
  readonly waits: boolean;
}

export interface ListReport {
  readonly byId: ReadonlyMap<number, LineReport>;
  /** Id of the editor's line that a line of the checked text came of. */
  readonly idOf: ReadonlyMap<number, number>;
  /** Problems of no line. */
  readonly others: readonly Problem[];
}

/** The text that is checked: of the lines that say anything of what is done. */
export function resolveBegun(list: LineList, exercises: readonly NamedExercise[]): ResolvedList {
  return resolveList({ ...list, lines: list.lines.filter(({ cells }) => isBegun(cells)) }, exercises);
}

/** @param resolved what the version was checked as */
export function reportLines(version: Version, resolved: ResolvedList): ListReport {
  const checked = new Map(version.lines.map((one) => [one.line.line, one]));
  const waiting = new Set(version.asked.flatMap(({ lines }) => lines));
  const problems = groupByLine(version.problems);
  const warnings = groupByLine(version.warnings);
  const byId = new Map(
    resolved.lines.map(({ id, line, problems: own, assumed }): [number, LineReport] => [
      id,
      {
        checked: checked.get(line) ?? null,
        problems: [...own, ...(problems.get(line) ?? []).filter((problem) => !isSaid(problem, own))],
        warnings: warnings.get(line) ?? [],
        assumed,
        waits: waiting.has(line),
      },
    ]),
  );
  return {
    byId,
    idOf: new Map(resolved.lines.map(({ id, line }) => [line, id])),
    others: resolved.lines.length === 0 ? [] : version.problems.filter(({ line }) => line === null || line === 1),
  };
}

/** What is wrong with a cell in a notation stands for what the check says of it; a wrong week leaves the day empty. */
function isSaid({ column }: Problem, own: readonly Problem[]): boolean {
  return own.some((one) => one.column === column || (one.column === 'week' && column === 'day'));
}

function groupByLine(problems: readonly Problem[]): ReadonlyMap<number | null, readonly Problem[]> {
  const groups = new Map<number | null, Problem[]>();
  for (const problem of problems) {
    const group = groups.get(problem.line) ?? [];
    group.push(problem);
    groups.set(problem.line, group);
  }
  return groups;
}
