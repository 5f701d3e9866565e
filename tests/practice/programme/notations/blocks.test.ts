/** A block of weeks in many notations: each reads to the same days, or is refused with a message that names the fix. */
import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../../../src/evidence/problem.ts';
import { readWhole } from '../written.ts';
import { BLOCKS, REFUSED_BLOCKS } from './blocks.ts';

const BLOCK = [
  [1, 'barbell back squat', 4, 6, 80, 2],
  [4, 'Romanian deadlift', 3, 8, 70, 3],
  [15, 'barbell back squat', 4, 6, 82.5, 2],
  [18, 'Romanian deadlift', 3, 8, 72.5, 3],
];

describe('a block written', () => {
  it.each(Object.entries(BLOCKS))('with %s is the same programme', (_, text) => {
    const { written, programme, sets } = readWhole(text);
    expect(written.notRead.map(formatProblem)).toEqual([]);
    expect(programme.problems.map(formatProblem)).toEqual([]);
    expect(
      sets.map(({ day, exercise, sets: count, repetitions, load, reserve }) => [
        day,
        exercise,
        count,
        repetitions,
        load,
        reserve,
      ]),
    ).toEqual(BLOCK);
  });

  it.each(Object.entries(REFUSED_BLOCKS))('with %s is refused and told the fix', (_, [text, fix]) => {
    const { written, sets } = readWhole(text);
    expect(written.notRead.map(formatProblem).join('\n')).toMatch(fix);
    for (const { day } of sets) expect([1, 4]).toContain(day);
  });

  it('as a week and then a title that speaks of weeks is the week, and the title a note', () => {
    const { written, sets } = readWhole('Winter, 12-week block\nMon back squat 4x6 80% 2 RIR');
    expect(written.notes.map(({ text }) => text)).toEqual(['Winter, 12-week block']);
    expect(written.notRead).toEqual([]);
    expect(sets.map(({ day }) => day)).toEqual([1]);
  });
});
