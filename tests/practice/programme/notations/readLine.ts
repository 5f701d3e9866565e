/** One line of sets as it is read, the numbers of its fields as they would stand in cells; and what is asked of it. */
import { formatProblem } from '../../../../src/evidence/problem.ts';
import { readWritten } from '../../../../src/practice/programme/written/readWritten.ts';
import { toCells } from '../../../../src/practice/programme/written/toCells.ts';
import { exercises } from '../shipped.ts';

export function readLines(text: string) {
  const { lines, notRead } = readWritten(text, exercises);
  return {
    cells: lines.map(toCells),
    /** What was taken for its numbers. */
    taken: lines.flatMap(({ assumed }) => assumed.map(({ said }) => said)),
    values: lines,
    asked: notRead.map(formatProblem),
    columns: notRead.map(({ column }) => column),
  };
}

/** A cell of a table in which all other cells are right. */
export function readCellOf(column: 'Sets' | 'Reps' | '%1RM' | 'RIR' | 'RPE', text: string) {
  const right = { Sets: '3', Reps: '8', '%1RM': '75', ...(column === 'RPE' ? { RPE: '8' } : { RIR: '2' }) };
  const cells = Object.entries(right).map(([name, cell]) => (name === column ? text : cell));
  return readLines(`Day\tExercise\t${Object.keys(right).join('\t')}\nMon\tleg press\t${cells.join('\t')}`);
}
