/** What was taken without being written is said as long as the cells that it explains stay as they came in. */
import { expect, it } from 'vitest';
import { addTaken, saidOf, type Taken } from '../../../src/islands/programme/taken.ts';
import { changeCell, NO_LINES, replaceLines } from '../../../src/practice/programme/edit.ts';

const list = replaceLines(NO_LINES, [{ day: 'Monday', exercise: 'squat', sets: '4', reserve: '2' }]);
const RATING = { said: 'A rating of 8 is taken as 2.', of: ['reserve'] } as const;
const DAY = { said: 'Day 1 is taken as Monday.', of: ['week', 'day'] } as const;
const taken = addTaken(new Map(), list.lines, [{ assumed: [RATING, DAY] }]);
const said = (all: Taken, of = list) => saidOf(all, of.lines[0]);

it('of a cell that changes goes, of the others stays, and comes back with the cell', () => {
  expect(said(taken)).toEqual([RATING.said, DAY.said]);
  const changed = changeCell(list, 1, 'reserve', '3');
  expect(said(taken, changed)).toEqual([DAY.said]);
  expect(said(taken, changeCell(changed, 1, 'sets', '5'))).toEqual([DAY.said]);
  expect(said(taken, changeCell(changed, 1, 'reserve', '2'))).toEqual([RATING.said, DAY.said]);
});

it('of another exercise is not said, nor of another line', () => {
  expect(said(taken, changeCell(list, 1, 'exercise', 'lunge'))).toEqual([]);
  expect(saidOf(taken, { ...list.lines[0], id: 9 })).toEqual([]);
});

it('of the last time that lines came in is said, and of the time before where that was undone', () => {
  const other = { said: 'The load 80 has no unit.', of: ['load'] } as const;
  const next = replaceLines(list, [{ day: 'Monday', exercise: 'lunge', load: '80' }]);
  const both = addTaken(taken, next.lines, [{ assumed: [other] }]);
  expect(said(both, next)).toEqual([other.said]);
  expect(said(both)).toEqual([RATING.said, DAY.said]);
});
