/** Written names of exercises: what is taken, what is asked about, and what a pick-list shows, on the shipped list. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { findNamed } from '../../src/evidence/findNamed.ts';
import { foldName } from '../../src/evidence/foldName.ts';
import { readExercises } from '../../src/evidence/readExercises.ts';
import { searchExercises } from '../../src/evidence/searchExercises.ts';

const { rows } = readExercises(
  readFileSync(new URL('../../data/exercises.csv', import.meta.url), 'utf8'),
  'exercises.csv',
);

describe('a name that is written', () => {
  it.each([
    ['squats', 'squat'],
    ['Back Squat', 'barbell back squat'],
    ['lat pulldown', 'pulldown'],
    ['Lat Pull-Downs', 'pulldown'],
    ['RDL', 'Romanian deadlift'],
    ['rdls', 'Romanian deadlift'],
    ['OHP', 'overhead press'],
    ['O.H.P.', 'overhead press'],
    ['bench', 'bench press'],
    ['BB Bench Press', 'bench press'],
    ['DB bench press', 'dumbbell bench press'],
    ['leg curls', 'leg curl'],
    ['pullups', 'pull-up'],
    ['pull ups', 'pull-up'],
    ['dumbbell flies', 'dumbbell fly'],
    ['leg presses', 'leg press'],
    ['biceps curls', 'arm curl'],
    ['skull-crushers', 'lying triceps extension'],
    ['1-arm DB row', 'dumbbell row'],
    ['Smith Machine Squats', 'Smith machine squat'],
  ])('“%s” is %s', (written, name) => {
    const found = findNamed(rows, written);
    expect(found.kind).toMatch(/^(?:named|synonym)$/u);
    expect('exercise' in found && found.exercise.name).toBe(name);
  });

  it('is said to be a synonym where it is one', () => {
    expect(findNamed(rows, 'ohp')).toMatchObject({ kind: 'synonym', synonym: 'OHP' });
    expect(findNamed(rows, 'Leg curls').kind).toBe('named');
  });

  it.each([
    ['sqat', 'squat'],
    ['barbel bak squat', 'barbell back squat'],
    ['paused front squat', 'front squat'],
    ['dead-lfit', 'deadlift'],
    ['romanian dead lifts (heavy)', 'Romanian deadlift'],
  ])('“%s” is not taken, but suggested to be %s', (written, name) => {
    const found = findNamed(rows, written);
    expect(found.kind).toBe('near');
    expect('suggestions' in found && found.suggestions[0].name).toBe(name);
  });

  it('that several have in part lists them', () => {
    const found = findNamed(rows, 'dumbbell press');
    expect('suggestions' in found && found.suggestions.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['dumbbell bench press', 'incline dumbbell press', 'dumbbell shoulder press']),
    );
    expect(findNamed(rows, 'press').kind).toBe('near');
  });

  it.each(['sled drag', 'Zottman', '', ' - ', 'x'.repeat(10_000)])('“%.20s” is unknown', (written) => {
    expect(findNamed(rows, written)).toEqual({ kind: 'unknown' });
  });

  it('of the reader’s own goes before the list’s', () => {
    const own = { ...rows[0], name: 'OHP' };
    expect(findNamed([own, ...rows], 'ohp')).toEqual({ kind: 'named', exercise: own });
  });
});

describe('the list', () => {
  it('has every name and synonym once, and finds each exercise by all of its own', () => {
    const names = rows.flatMap(({ name, synonyms }) => [name, ...synonyms].map((one) => ({ name, one })));
    expect(names.length).toBeGreaterThan(200);
    expect(new Set(names.map(({ one }) => foldName(one))).size).toBe(names.length);
    for (const { name, one } of names) {
      for (const spelling of [one, one.toUpperCase(), one.replaceAll(' ', '-'), one.replaceAll('-', ' ')]) {
        const found = findNamed(rows, spelling);
        expect('exercise' in found && found.exercise.name, spelling).toBe(name);
      }
    }
  });
});

describe('the pick-list', () => {
  const names = (query: string) => searchExercises(rows, query).map(({ exercise }) => exercise.name);

  it('shows all in their order before anything is typed', () => {
    expect(names(' ')).toEqual(rows.map(({ name }) => name));
  });

  it('shows what begins so first, then what has the words in any order, each once', () => {
    expect(names('squat')[0]).toBe('squat');
    expect(names('squat')).toContain('Bulgarian split squat');
    expect(names('press incl')).toEqual(expect.arrayContaining(['incline bench press', 'incline dumbbell press']));
    for (const query of ['p', 'press', 'row', 'db']) expect(new Set(names(query)).size).toBe(names(query).length);
  });

  it('finds by synonyms and says by which', () => {
    expect(searchExercises(rows, 'RD')[0]).toMatchObject({ exercise: { name: 'Romanian deadlift' }, synonym: 'RDL' });
  });

  it('finds while a name is typed letter by letter', () => {
    for (const { name } of rows) {
      for (let letters = 1; letters <= name.length; letters++) expect(names(name.slice(0, letters))).toContain(name);
    }
  });

  it('suggests for what is misspelt, and nothing for what is unknown', () => {
    expect(names('benhc press')).toContain('bench press');
    expect(names('sled drag')).toEqual([]);
  });
});
