/** A programme as text: forgiving about what does not matter, and all mistakes at once about what does. */
import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../../src/evidence/problem.ts';
import { loadForPossible, PUBLISHED_REPETITIONS, possibleAt } from '../../../src/practice/possible.ts';
import { readDay, writeDay } from '../../../src/practice/programme/columns.ts';
import { readProgramme } from '../../../src/practice/programme/read.ts';
import { exampleWeek, exercises, exerciseTable } from './shipped.ts';

const read = (text: string) => readProgramme(text, 'week', exercises);
const HEADER = 'day,exercise,sets,repetitions,load,possible,reserve,company';

describe('the list of exercises', () => {
  it('has no problems and knows what the worked example trains', () => {
    expect(exerciseTable.problems).toEqual([]);
    expect(exerciseTable.warnings).toEqual([]);
    expect(exercises.length).toBeGreaterThan(25);
    expect(read(exampleWeek).asked).toEqual([]);
  });

  it('lets no bar over chest, neck or back pass as one that cannot pin', () => {
    const pins = exercises.filter(({ canPin }) => canPin).map(({ name }) => name);
    expect(pins).toEqual(
      expect.arrayContaining([
        'bench press',
        'incline bench press',
        'barbell back squat',
        'front squat',
        'leg press',
        'overhead press',
      ]),
    );
    for (const { name, canPin, stoppable } of exercises) expect(canPin && stoppable, name).toBe(false);
  });
});

describe('a programme', () => {
  const plain = `${HEADER}\nMonday,leg press,3,10,75,,3,spotter\n`;

  it.each([
    ['semicolons', plain.replaceAll(',', ';')],
    ['tabs', plain.replaceAll(',', '\t')],
    ['a byte-order mark and other line breaks', `\ufeff${plain.replaceAll('\n', '\r\n')}`],
    ['capitals in header and words', plain.toUpperCase()],
    [
      'spaces and underscores in its header',
      plain.replace('repetitions', ' Repetitions ').replace('reserve', '_reserve'),
    ],
    ['a weekday cut short', plain.replace('Monday', 'mon')],
    ['a numbered day', plain.replace('Monday', '1')],
    [
      'another order of columns',
      'company,reserve,load,repetitions,sets,exercise,day\nspotter,3,75,10,3,leg press,Monday\n',
    ],
  ])('is read the same with %s', (_, text) => {
    const { lines, problems, warnings } = read(text);
    expect(problems.map(formatProblem)).toEqual([]);
    expect(warnings).toEqual([]);
    expect(lines).toEqual(read(plain).lines);
    expect(lines[0]).toMatchObject({
      day: 1,
      sets: 3,
      repetitions: 10,
      load: 75,
      reserve: 3,
      company: 'spotter',
      how: null,
    });
  });

  it('takes load from the repetitions possible and reserve from those left', () => {
    const { lines } = read(`${HEADER}\nTue,bench press,3,10,,14.08,,spotter\nTue,bench press,3,5,80,,,spotter\n`);
    // Published: 14.08 at 70 %, 8.82 at 80 % (Nuzzo et al. 2024, bench press, second-hand).
    expect(lines[0].load).toBeCloseTo(70, 10);
    expect(lines[0].reserve).toBeCloseTo(4.08, 10);
    expect(lines[1].reserve).toBeCloseTo(3.82, 10);
    expect(lines[0].how).toMatch(/load from 14.08 possible repetitions.*reserve from 14.1 possible, as given/u);
    expect(lines[1].how).toMatch(/reserve from 8.8 possible, on average/u);
  });

  it('counts an empty company as alone, the careful reading', () => {
    expect(read(`${HEADER}\nMon,leg press,3,10,75,,3,\n`).lines[0].company).toBe('alone');
  });

  it('asks about an exercise that neither list nor programme describes, once for all its lines', () => {
    const text = `${HEADER}\nMon,Sled Drag,3,10,75,,3,alone\nTue,leg press,3,10,75,,3,spotter\nWed,sled drag,3,10,75,,3,alone\n`;
    const { asked, lines, problems } = read(text);
    expect(problems).toEqual([]);
    expect(asked).toEqual([{ name: 'Sled Drag', lines: [2, 4] }]);
    expect(lines.map(({ line }) => line)).toEqual([3]);
  });

  it('takes the facts of an exercise from its own columns, for all its lines and over the list', () => {
    const text = `${HEADER},muscles,can_pin,stoppable,partials\nMon,sled drag,3,10,75,,3,alone,Quadriceps; calves,no,YES,no\nTue,sled drag,3,10,75,,3,alone,,,,\nWed,split squat,3,10,75,,3,alone,,yes,no,\n`;
    const { lines, asked, problems } = read(text);
    expect(problems).toEqual([]);
    expect(asked).toEqual([]);
    expect(lines[0].exercise).toMatchObject({ muscles: ['quadriceps', 'calves'], canPin: false, stoppable: true });
    expect(lines[1].exercise).toBe(lines[0].exercise);
    expect(lines[2].exercise).toMatchObject({ canPin: true, stoppable: false, partials: false });
  });

  it('warns where repetitions and reserve do not fit the load', () => {
    const { warnings, problems } = read(`${HEADER}\nMon,bench press,3,20,80,,5,spotter\n`);
    expect(problems).toEqual([]);
    expect(warnings.map(formatProblem)).toEqual([
      'line 2, `reserve`: expected about 9 possible at 80 % of 1RM, give or take 5 (published for the bench press), received “20 done and 5 left”. Are load, repetitions and reserve right? Fewer than 1 person in 1,000 could do so many at this load.',
    ]);
  });
});

describe('the numbers of a line', () => {
  const warningsOf = (line: string) => read(`${HEADER}\n${line}\n`).warnings.map(formatProblem);

  it('are held against the repetitions possible that it gives', () => {
    expect(warningsOf('Mon,bench press,3,10,,14,8,spotter')).toEqual([
      'line 2, `reserve`: expected about the 14 possible together, as the line gives them, received “10 done and 8 left”. Are load, repetitions and reserve right? Look at repetitions, reserve and those possible.',
    ]);
    // Counted in whole repetitions, 14 and a half possible are 10 done and 4 left.
    expect(warningsOf('Mon,bench press,3,10,,14.5,4,spotter')).toEqual([]);
  });

  it('may have all repetitions for which a load is published, and no others', () => {
    const { from, to } = PUBLISHED_REPETITIONS;
    const isKnown = (possible: number) => loadForPossible(possible, null) !== null;
    expect([from - 1, from, to, to + 1].map(isKnown)).toEqual([false, true, true, false]);
  });

  it('have a load at which so many are possible, or the nearest that is known of the exercise, which is said', () => {
    const all = Array.from({ length: PUBLISHED_REPETITIONS.to - 2 }, (_, i) => i + PUBLISHED_REPETITIONS.from);
    for (const relation of ['leg press', 'bench press', null] as const) {
      const found = all.map((possible) => ({ possible, ...loadForPossible(possible, relation) }));
      const bounded = found.filter(({ bound }) => bound !== null);
      // Of the leg press 13.1 repetitions are published at 80 %, its heaviest load; of the bench press 8.8 (data/repetitions.json).
      expect(bounded.map(({ possible, load }) => [possible, load])).toEqual(
        relation === 'leg press' ? [9, 10, 11, 12, 13].map((possible) => [possible, 80]) : [],
      );
      for (const { possible, load = Number.NaN, bound } of found) {
        if (bound === null) expect(possibleAt(load, relation)?.mean).toBeCloseTo(possible, 9);
      }
      const loads = found.map(({ load }) => load ?? Number.NaN);
      expect(loads).toEqual([...loads].sort((a, b) => b - a));
    }
    const [line] = readProgramme(
      'day,exercise,sets,repetitions,possible\nMon,leg press,3,10,12\n',
      'week',
      exercises,
    ).lines;
    expect(line).toMatchObject({ load: 80, reserve: 2, possible: 12 });
    expect(line.how).toMatch(/^no fewer than about 13 possible .* leg press, .* 80\u00a0%, stands for 12; reserve/u);
  });
});

describe('a programme with twenty kinds of mistakes', () => {
  const bad: readonly (readonly [line: string, column: string | null, expected: RegExp])[] = [
    ['someday,leg press,3,10,75,,3,alone', 'day', /a weekday/u],
    ['0,leg press,3,10,75,,3,alone', 'day', /from 1 to 84/u],
    ['85,leg press,3,10,75,,3,alone', 'day', /from 1 to 84/u],
    [',leg press,3,10,75,,3,alone', 'day', /a value/u],
    ['Mon,,3,10,75,,3,alone', 'exercise', /a value/u],
    ['Mon,<b>leg press,3,10,75,,3,alone', 'exercise', /without markup/u],
    ['Mon,=1+1,3,10,75,,3,alone', 'exercise', /not starting with/u],
    ['Mon,leg press,0,10,75,,3,alone', 'sets', /from 1 to 50/u],
    ['Mon,leg press,2.5,10,75,,3,alone', 'sets', /a whole number/u],
    ['Mon,leg press,,10,75,,3,alone', 'sets', /a value/u],
    ['Mon,leg press,3,many,75,,3,alone', 'repetitions', /a whole number/u],
    ['Mon,leg press,3,8-10,75,,3,alone', 'repetitions', /a whole number/u],
    ['Mon,leg press,3,10,75 %,,3,alone', 'load', /above 0 and up to 100/u],
    ['Mon,leg press,3,10,120,,3,alone', 'load', /above 0 and up to 100/u],
    ['Mon,leg press,3,10,,,3,alone', 'load', /or the repetitions possible/u],
    ['Mon,leg press,3,10,,9,,alone', 'repetitions', /no more repetitions than the 9 possible/u],
    ['Mon,leg press,1,1,,2,1,alone', 'possible', /a load is published/u],
    ['Mon,leg press,3,10,75,,-1,alone', 'reserve', /from 0 to 30/u],
    ['Mon,leg press,1,1,99,,,alone', 'reserve', /no repetitions are published for 99/u],
    ['Mon,leg press,3,10,75,,3,a friend', 'company', /alone, spotter, safety arms/u],
    ['Mon,leg press,3,10,75,,3', null, /8 cells/u],
    ['Mon,leg press,3,10,75,,3,alone,extra', null, /8 cells/u],
  ];

  it('is told all of them, each on its line', () => {
    const { problems } = read(`${HEADER}\n${bad.map(([line]) => line).join('\n')}\n`);
    expect(bad.length).toBeGreaterThanOrEqual(20);
    for (const [i, [text, column, expected]] of bad.entries()) {
      const found = problems.find((problem) => problem.line === i + 2 && problem.column === column);
      expect(found?.expected, text).toMatch(expected);
    }
    expect(problems.length).toBe(bad.length);
  });

  it('in its header is told what is missing, misspelt or doubled', () => {
    const { problems, warnings } = read('day,day,exercize,sets,load,colour\nMon,Mon,leg press,3,75,red\n');
    const said = problems.map(formatProblem).join('\n');
    expect(said).toMatch(/every column once/u);
    expect(said).toMatch(/Rename the column to exercise/u);
    expect(said).toMatch(/a column named repetitions/u);
    expect(warnings.map(formatProblem).join()).toMatch(/`colour`/u);
  });

  it('and two opinions on one exercise is told of the contradiction', () => {
    const text = `${HEADER},muscles,can_pin,stoppable,partials\nMon,sled,3,10,75,,3,alone,calves,no,yes,no\nTue,sled,3,10,75,,3,alone,calves,yes,yes,no\n`;
    expect(read(text).problems.map(formatProblem).join()).toMatch(
      /line 3.*same facts of this exercise as where it stands first, on \w+/u,
    );
  });

  it.each(['', '\n\n', 'nothing of the kind', HEADER])(
    'that is no programme (%j) is a problem and no crash',
    (text) => {
      expect(read(text).problems.length).toBeGreaterThan(0);
    },
  );
});

describe('a day', () => {
  it.each([
    ['Monday', 1],
    ['su', 7],
    ['28', 28],
    ['84', 84],
    ['1', 1],
  ])('written %s is day %d', (written, day) => expect(readDay(written)).toBe(day));

  it.each(['m', '0', '85', 'Montag', '1.5', ''])('written “%s” is none', (written) =>
    expect(readDay(written)).toBeNull(),
  );

  it('of a later week says so', () => {
    expect([1, 7, 8, 84].map(writeDay)).toEqual(['Monday', 'Sunday', 'Monday of week 2', 'Sunday of week 12']);
  });
});
