/** The two tables compared: each study once, with the line on which it first stands. */
import { expect, it } from 'vitest';
import { formatProblem } from '../../src/evidence/problem.ts';
import { compareStudyLines } from '../../src/evidence/studyLines.ts';

const rows = (...studies: string[]) => studies.map((study, i) => ({ study, line: i + 2 }));
const compare = (arms: string[], studies: string[]) =>
  compareStudyLines({ rows: rows(...arms), file: 'arms.csv' }, { rows: rows(...studies), file: 'studies.csv' });

it('tables that name the same studies, in whatever order and number of rows, agree', () => {
  expect(compare(['A 1', 'B 2', 'A 1'], ['B 2', 'A 1'])).toEqual({ withoutLine: [], withoutArms: [] });
});

it('a study without its line is named once, at its first row of arms', () => {
  const { withoutLine, withoutArms } = compare(['A 1', 'B 2', 'B 2'], ['A 1']);
  expect(withoutArms).toEqual([]);
  expect(withoutLine.map((problem) => `${problem.file}: ${formatProblem(problem)}`)).toEqual([
    'arms.csv: line 3, `study`: expected a study that has a line in studies.csv, received “B 2”. Write the name as it stands there, or add the study to studies.csv (npm run references).',
  ]);
});

it('a line without arms is named with the file it stands in', () => {
  const { withoutLine, withoutArms } = compare(['A 1'], ['A 1', 'C 3']);
  expect(withoutLine).toEqual([]);
  expect(withoutArms.map(({ file, line, value }) => [file, line, value])).toEqual([['studies.csv', 3, 'C 3']]);
});

it('a name in other letters is another name, on both sides', () => {
  const { withoutLine, withoutArms } = compare(['plover 2012'], ['Plover 2012']);
  expect([withoutLine.length, withoutArms.length]).toEqual([1, 1]);
});
