/** The numbers of a programme's line held against each other, and against what is possible at its load. */
import type { Problem } from '../../evidence/problem.ts';
import type { Relation } from '../../evidence/repetitions.ts';
import { judgePlausibility } from '../plausible.ts';
import { loadForPossible, PUBLISHED_REPETITIONS, possibleAt } from '../possible.ts';
import type { ProgrammeLine, WrittenLine } from './columns.ts';

/**
 * What is missing or contradicts itself; the first of it, since the rest follows from that.
 *
 * @param relation published relation of the exercise; null where it has none
 */
export function checkNumbers(row: WrittenLine, file: string, relation: Relation | null): Problem[] {
  const { line, load, possible, reserve, repetitions } = row;
  const problem = (found: Pick<Problem, 'kind' | 'column' | 'value' | 'expected' | 'remedy'>) => [
    { file, line, ...found },
  ];
  if (load === null && possible === null) {
    return problem({
      kind: 'missing-value',
      column: 'load',
      value: '',
      expected: 'a load in per cent of 1RM, or the repetitions possible',
      remedy: 'Fill in one of the two columns load and possible.',
    });
  }
  if (possible !== null && repetitions > possible) {
    return problem({
      kind: 'contradiction',
      column: 'repetitions',
      value: String(repetitions),
      expected: `no more repetitions than the ${possible} possible`,
      remedy: 'One of the two numbers is wrong.',
    });
  }
  if (load === null && possible !== null && loadForPossible(possible, relation) === null) {
    const { from, to } = PUBLISHED_REPETITIONS;
    return problem({
      kind: 'wrong-value',
      column: 'possible',
      value: String(possible),
      expected: `so many repetitions that a load is published for them (${from} to ${to})`,
      remedy: 'Enter the load in per cent of 1RM.',
    });
  }
  if (reserve === null && possible === null && load !== null && possibleAt(load, relation) === null) {
    return problem({
      kind: 'missing-value',
      column: 'reserve',
      value: '',
      expected: `a reserve, since no repetitions are published for ${load} % of 1RM`,
      remedy: 'Fill in reserve, or the repetitions possible.',
    });
  }
  return [];
}

/** Repetitions done and left that do not make those possible: as the line itself gives them, or as published for its load. */
export function findUnusual(line: ProgrammeLine, file: string): readonly Problem[] {
  const found = judgePlausibility({ ...line, relation: line.exercise.relation });
  if (found.kind === 'usual' || found.kind === 'not known') return [];
  return [
    {
      kind: 'unusual',
      file,
      line: line.line,
      column: 'reserve',
      value: `${line.repetitions} done and ${Number(line.reserve.toFixed(1))} left`,
      expected: found.expected,
      remedy: `Are load, repetitions and reserve right? ${found.unusual}`,
    },
  ];
}
