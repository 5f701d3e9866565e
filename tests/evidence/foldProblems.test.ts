/** Problems of one kind told as one. Proven: nothing is lost, few stay as they are, and what differs in more than its numbers stays apart. */
import { describe, expect, it } from 'vitest';
import { foldProblems, formatFold, listByValue } from '../../src/evidence/foldProblems.ts';
import { formatProblem } from '../../src/evidence/problem.ts';
import { readArms } from '../../src/evidence/table.ts';
import { type Cells, makeTable } from '../support/tables.ts';

const rows = (count: number, change: (i: number) => Cells) =>
  readArms(
    makeTable(Array.from({ length: count }, (_, i) => ({ arm: `a${i}`, ...change(i) }))),
    'own.csv',
  ).problems.filter(({ line }) => line !== 1);
const told = (problems: ReturnType<typeof rows>) => foldProblems(problems).map(formatFold);

describe('problems of one kind', () => {
  it('are one line with their number and the first of their lines and values', () => {
    expect(told(rows(1200, (i) => ({ reserve_reps: `${i % 7} reps` })))).toEqual([
      '1,200 lines (2, 3, 4, …), `reserve_reps`: expected a number from 0 to 30, or a range such as 8-12, received “0 reps”, “1 reps”, “2 reps”, …. Leave out the unit; it is in the data dictionary.',
    ]);
    expect(told(rows(5, () => ({ year: '' })))).toEqual([
      '5 lines (2, 3, 4, …), `year`: expected a value, received nothing.',
    ]);
  });

  it('unfold to the lines of each value', () => {
    const [fold] = foldProblems(rows(7, (i) => ({ sex: ['f', '', 'm'][i % 3] })));
    expect(listByValue(fold.problems)).toEqual(['“f”: lines 2, 5, 8', '“m”: lines 4, 7']);
  });

  it('stay by themselves up to three', () => {
    const problems = rows(3, () => ({ sex: 'f' }));
    expect(told(problems)).toEqual(problems.map(formatProblem));
  });

  it('are one kind where only numbers differ; the first is told as an example', () => {
    const problems = rows(4, (i) => ({ change_ci_low: `${4 + i}`, change_ci_high: `${3 + i}` }));
    expect(told(problems)).toEqual([
      '4 lines (2, 3, 4, …), `change_ci_high`; the first: expected a limit above `change_ci_low` (4), received “3”. Exchange the limits.',
    ]);
  });

  it('in two columns, or with two remedies, are two kinds', () => {
    const problems = rows(8, (i) => ({ baseline_mean: i % 2 ? '40 mm' : 'n/a', baseline_sd: '6 mm' }));
    expect(told(problems).map((one) => one.replace(/: expected.*\. (?=[A-Z])/u, ': '))).toEqual([
      '4 lines (2, 4, 6, …), `baseline_mean`: Leave the cell empty where nothing is reported.',
      '8 lines (2, 3, 4, …), `baseline_sd`: Leave out the unit; it is in the data dictionary.',
      '4 lines (3, 5, 7, …), `baseline_mean`: Leave out the unit; it is in the data dictionary.',
    ]);
  });

  it('keep all their problems, each once', () => {
    const problems = rows(50, (i) => ({ sex: i % 2 ? 'f' : '', year: i % 3 ? '2012' : 'x', n: `${i % 4}` }));
    const folds = foldProblems(problems);
    expect(problems.length).toBeGreaterThan(50);
    expect(folds.flatMap((fold) => fold.problems)).toHaveLength(problems.length);
    expect(new Set(folds.flatMap((fold) => fold.problems))).toEqual(new Set(problems));
    expect(folds.reduce((sum, { count }) => sum + count, 0)).toBe(problems.length);
  });
});
