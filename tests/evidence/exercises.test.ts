/** The list of exercises: the shipped one reads without a problem; names and muscles are compared as people write them. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { EXERCISE_COLUMNS, findExercise, splitMuscles } from '../../src/evidence/exercises.ts';
import { readExercises } from '../../src/evidence/readExercises.ts';

const header = Object.keys(EXERCISE_COLUMNS).join(',');
const line = (exercise: string, muscles = 'quadriceps') => `${exercise},${muscles},multi,yes,no,yes,general,,`;
const read = (...lines: string[]) => readExercises([header, ...lines].join('\n'), 'exercises.csv');

describe('the list of exercises', () => {
  it('as shipped has no problem, and every exercise a muscle', () => {
    const shipped = readFileSync(new URL('../../data/exercises.csv', import.meta.url), 'utf8');
    const { rows, problems, warnings } = readExercises(shipped, 'exercises.csv');
    expect([problems, warnings]).toEqual([[], []]);
    expect(rows.length).toBeGreaterThan(10);
    for (const { muscles } of rows) expect(muscles).not.toEqual([]);
  });

  it('gives the facts of a line', () => {
    expect(
      read('leg press,quadriceps; gluteus maximus,multi,yes,no,yes,leg press,sled,sled leg press; 45° press').rows,
    ).toEqual([
      {
        name: 'leg press',
        muscles: ['quadriceps', 'gluteus maximus'],
        canPin: true,
        stoppable: false,
        partials: true,
        relation: 'leg press',
        synonyms: ['sled leg press', '45° press'],
      },
    ]);
    expect(read(line('squat')).rows[0].relation).toBeNull();
  });

  it('names both lines of an exercise that stands twice, whatever its case and spacing, and a line without a muscle', () => {
    const { problems } = read(line('Leg  Press'), line('squat', '" ; "'), line('leg press'));
    expect(problems.map((problem) => [problem.line, problem.column, problem.expected])).toEqual([
      [3, 'muscles', 'at least one muscle'],
      [4, 'exercise', 'an exercise that line 2 does not name already'],
    ]);
  });

  it('names both lines of a synonym that another exercise has, in any spelling, or its own name repeats', () => {
    const { problems } = read(
      `${line('squat')}`,
      `${line('front squat').slice(0, -1)},clean squat; Squats; front-squat`,
    );
    expect(problems.map((problem) => [problem.line, problem.column, problem.value])).toEqual([
      [3, 'synonyms', 'Squats'],
      [3, 'synonyms', 'front-squat'],
    ]);
  });

  it('is searched whatever the case and spacing', () => {
    const { rows } = read(line('leg press'), line('squat'));
    expect(findExercise(rows, ' Leg   PRESS ')?.name).toBe('leg press');
    expect(findExercise(rows, 'bench press')).toBeUndefined();
  });
});

it.each([
  ['Quadriceps; gluteus maximus', ['quadriceps', 'gluteus maximus']],
  ['biceps/brachialis + biceps', ['biceps', 'brachialis']],
  [' ; ', []],
])('the muscles written “%s” are read one by one', (written, muscles) => {
  expect(splitMuscles(written)).toEqual(muscles);
});
