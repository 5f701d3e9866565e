/** Lifters as a file and back, as a browser keeps them, and what of a file is told by its line. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../../src/evidence/problem.ts';
import { mergeLifters } from '../../../src/practice/lifters/editLifters.ts';
import { readKept, writeKept } from '../../../src/practice/lifters/keptForm.ts';
import { type Lifters, NO_LIFTERS, refuseName } from '../../../src/practice/lifters/lifter.ts';
import { readLifters, writeLifters } from '../../../src/practice/lifters/liftersFile.ts';
import { WEIGHT_UNITS } from '../../../src/practice/lifters/weight.ts';
import { exercises } from '../programme/shipped.ts';
import { teamOf } from './people.ts';

const open = (text: string) => readLifters(text, 'lifters.csv', exercises);
const told = (text: string) => open(text).problems.map(formatProblem);

/** Names as people give them, and as somebody tries them. */
const NAMES = [
  'Lifter A',
  'O’Brien "Bo" <3 & Co',
  "d'Ull; the second, Jr.",
  'رافع',
  'מרים א׳',
  '举重者',
  'x'.repeat(450),
  'Lifter -2',
  '1',
  'a\u200db',
];
const cents = (most: number) => fc.integer({ min: 1, max: most * 100 }).map((one) => String(one / 100));
const maximum = fc.record({
  exercise: fc.constantFrom(
    'squat',
    'barbell back squat',
    'leg press',
    'sled drag',
    'pull-up',
    'RDL',
    'a; b',
    'lift "x"',
  ),
  weight: fc.oneof(
    cents(900),
    cents(900).map((one) => `${one} kg`),
    cents(900).map((one) => `${one} lb`),
    fc.constant(''),
  ),
  step: fc.oneof(cents(40), fc.constant('')),
});
const lifters = fc
  .uniqueArray(
    fc.record({
      name: fc.constantFrom(...NAMES),
      unit: fc.constantFrom(...WEIGHT_UNITS),
      step: fc.oneof(cents(40), fc.constant('')),
      maxima: fc.uniqueArray(maximum, { selector: ({ exercise }) => exercise, maxLength: 6 }),
    }),
    { selector: ({ name }) => name, maxLength: 10 },
  )
  .map((all): Lifters => ({ all: all.map((one, i) => ({ id: i + 1, ...one })), nextId: all.length + 1 }));

/** Numbers in the lifter's unit stand without it, as the page writes them. */
const plain = (one: Lifters): Lifters => ({
  ...one,
  all: one.all.map((lifter) => ({
    ...lifter,
    maxima: lifter.maxima.map((each) => ({ ...each, weight: each.weight.replace(` ${lifter.unit}`, '') })),
  })),
});

describe('a file of lifters', () => {
  it('opens to the same lifters, whatever their names and numbers, and is written again byte for byte', () => {
    fc.assert(
      fc.property(lifters, (one) => {
        if (one.all.length === 0) return;
        const text = writeLifters(one);
        const found = open(text);
        expect(found.problems).toEqual([]);
        expect(found.lifters).toEqual(plain(one));
        expect(writeLifters(found.lifters)).toBe(text);
      }),
      { seed: 17, numRuns: 300 },
    );
  });

  it('holds decimals with a point, and each unit', () => {
    const text = writeLifters(
      teamOf([{ name: 'Lifter A', step: '1,25', maxima: { squat: '142,5', 'leg press': '500lbs' } }]),
    );
    expect(text).toBe(
      'lifter,exercise,one_rm,unit,step\nLifter A,,,kg,1.25\nLifter A,squat,142.5,kg,\nLifter A,leg press,500 lb,kg,\n',
    );
  });

  it('keeps a cell that cannot be read as it was typed, tells it when it is opened, and calculates nothing', () => {
    const text = writeLifters(teamOf([{ name: 'Lifter A', maxima: { squat: '=2*70', 'leg press': 'about 200' } }]));
    expect(text).toContain(`squat,"'=2*70",kg`);
    expect(told(text)).toEqual([
      expect.stringMatching(/^line 3, `one_rm`: expected a weight above 0 .*, of squat, received “'=2\*70”/u),
      expect.stringMatching(/^line 4, `one_rm`: expected .*, of leg press, received “about 200”/u),
    ]);
  });

  it('may come from elsewhere: other heads, semicolons, decimal commas, capitals, columns that are not read', () => {
    const found = open('Athlete;Lift;1RM;Unit;Age\nLifter B;Back squat;142,5;KG;30\nLifter B;bench;225 lb;;\n');
    expect(found.problems).toEqual([]);
    expect(found.warnings.map(({ column }) => column)).toEqual(['Age']);
    expect(found.lifters).toEqual(teamOf([{ name: 'Lifter B', maxima: { 'Back squat': '142.5', bench: '225 lb' } }]));
  });

  it('without a unit is in kilograms, and says so', () => {
    expect(open('lifter,exercise,one_rm\nLifter A,squat,100\n').said).toEqual([
      'Lifter A: no unit is given; kg is taken.',
    ]);
  });

  it.each([
    ['Lifter A,squat,-5,kg,', /line 2, `one_rm`: expected a weight above 0 and up to 1000/u],
    ['Lifter A,squat,0,kg,', /line 2, `one_rm`/u],
    ['Lifter A,squat,1001,kg,', /line 2, `one_rm`/u],
    ['Lifter A,squat,100,stone,', /line 2, `unit`: expected one of kg, lb, received “stone”/u],
    ['Lifter A,squat,100,kg,0', /line 2, `step`: expected the smallest step of the load in kg/u],
    ['Lifter A,,100,kg,', /line 2, `exercise`: expected the exercise of the 1RM/u],
    [
      'Lifter A,squat,100,kg,\nlifter  a,squats,90,kg,',
      /line 3, `exercise`: expected an exercise that line 2 does not give Lifter A already/u,
    ],
    ['Lifter A,,,kg,2.5\nLifter A,,,kg,5', /line 3, `step`: expected one step for all exercises, 2.5 above/u],
    ['=cmd,squat,100,kg,', /line 2, `lifter`: .*A spreadsheet would calculate it/u],
    ['<b>A</b>,squat,100,kg,', /line 2, `lifter`: .*It looks like markup/u],
    [',squat,100,kg,', /line 2, `lifter`: expected a value/u],
    ['Lifter A,***,100,kg,', /line 2, `exercise`: expected a name with letters or digits/u],
    ['Lifter A,squat,100', /line 2: expected 5 cells/u],
  ])('of which a line is wrong, “%s”, tells it by its number', (lines, expected) => {
    expect(told(`lifter,exercise,one_rm,unit,step\n${lines}\n`)).toEqual([expect.stringMatching(expected)]);
  });

  it.each(['', 'nothing of the kind', '\ufeff', '{"kind":"lifters"}', '"'])(
    'that is none, “%s”, gives no lifter and a reason',
    (text) => {
      const found = open(text);
      expect(found.lifters.all).toEqual([]);
      expect(found.problems.length).toBeGreaterThan(0);
    },
  );

  it('leaves out the marks of direction that a copied name brings along', () => {
    const [{ name }] = open('lifter,exercise,one_rm\n\u202bרופא\u202c,squat,100\n').lifters.all;
    expect(name).toBe('רופא');
  });
});

describe('a table with a column for each exercise', () => {
  it('is read line by line, with units in the heads', () => {
    const found = open('Name\tSquat 1RM (kg)\tBench press [lb]\tdips\nLifter A\t140\t225\t\nLifter B\t97,5\t\t110\n');
    expect(found.problems).toEqual([]);
    expect(found.lifters).toEqual(
      teamOf([
        { name: 'Lifter A', maxima: { Squat: '140', 'Bench press': '225 lb' } },
        { name: 'Lifter B', maxima: { Squat: '97.5', dips: '110' } },
      ]),
    );
  });

  it('tells what it cannot read by its line, and refuses a name that stands twice', () => {
    const text =
      'lifter,unit,squat,squats,bench\nLifter A,kg,140,,abc\n,kg,100,,\nLIFTER A,kg,90,,\nLifter C,st,90,,\nLifter D,kg,90,95,\n';
    expect(told(text)).toEqual([
      expect.stringMatching(/^line 2, `one_rm`: .*, of bench, received “abc”/u),
      expect.stringMatching(/^line 3, `lifter`: expected the name of a lifter/u),
      expect.stringMatching(/^line 4, `lifter`: expected a name that line 2 does not have already/u),
      expect.stringMatching(/^line 5, `unit`: expected one of kg, lb, received “st”/u),
      expect.stringMatching(/^line 6, `exercise`: expected an exercise that line 6 does not give Lifter D already/u),
    ]);
    expect(open(text).lifters.all.map(({ name }) => name)).toEqual(['Lifter A', 'Lifter D']);
  });
});

describe('what a browser keeps', () => {
  it('is read back exactly, mistakes too', () => {
    fc.assert(
      fc.property(lifters, (one) => {
        expect(readKept(writeKept(one))).toEqual({ lifters: one, problem: null });
      }),
      { seed: 17, numRuns: 100 },
    );
    const wrong = teamOf([{ name: 'Lifter A', step: 'wide', maxima: { squat: 'abc' } }]);
    expect(readKept(writeKept(wrong)).lifters).toEqual(wrong);
  });

  it.each([
    ['{"kind":"lifters","version":1,"nex', /received text that is no JSON/u],
    ['{"kind":"programme"}', /at kind/u],
    ['{"kind":"lifters","version":2,"nextId":1,"all":[]}', /at version/u],
    ['null', /expected lifters kept by this page/u],
    [writeKept({ nextId: 1, all: teamOf([{ name: 'A' }]).all }), /an id of their own/u],
    [
      writeKept({ nextId: 9, all: [...teamOf([{ name: 'A' }]).all, { ...teamOf([{ name: ' a' }]).all[0], id: 2 }] }),
      /a name of their own/u,
    ],
  ])('and cannot be read, “%s”, is told and not taken', (text, expected) => {
    const { lifters: found, problem } = readKept(text);
    expect(found).toBeNull();
    expect(problem).toMatch(expected);
  });
});

describe('names', () => {
  const team = teamOf([{ name: 'Lifter A' }, { name: 'Lifter B' }]);

  it.each([
    ['Lifter A', /Lifter 1 of the list has it; two sheets with one name would be mixed up/u],
    [' lifter\u00a0 a ', /Lifter 1 of the list/u],
    ['Ｌifter A', /Lifter 1 of the list/u],
    ['\u202eLifter A\u202c', /Lifter 1 of the list/u],
    ['', /Any word will do/u],
    ['   ', /Any word will do/u],
    ['<script>', /It looks like markup/u],
    ['=A1', /A spreadsheet would calculate it/u],
    ['x'.repeat(501), /It has 501 characters/u],
  ])('such as “%s” are refused with the reason', (name, reason) => {
    expect(refuseName(team, name)?.remedy).toMatch(reason);
  });

  it.each(NAMES.slice(1))('such as “%s” are taken', (name) => {
    expect(refuseName(team, name)).toBeNull();
  });

  it('may stay a lifter’s own when it is entered again', () => {
    expect(refuseName(team, 'LIFTER A', 1)).toBeNull();
    expect(refuseName(team, 'LIFTER A', 2)).not.toBeNull();
  });
});

describe('lifters of a file beside those that are there', () => {
  it('come after them; of one who is there already the file’s 1RMs go over theirs, in their unit', () => {
    const before = teamOf([{ name: 'Lifter A', maxima: { squat: '100', 'leg press': '200' } }]);
    const opened = teamOf([
      { name: 'lifter a', unit: 'lb', step: '5', maxima: { squats: '225', pulldown: '' } },
      { name: 'Lifter B', maxima: { squat: '90' } },
    ]);
    const merged = mergeLifters(before, opened, exercises);
    expect(merged.all.map(({ id, name }) => [id, name])).toEqual([
      [1, 'Lifter A'],
      [2, 'Lifter B'],
    ]);
    expect(merged.all[0]).toMatchObject({
      unit: 'kg',
      step: '',
      maxima: [
        { exercise: 'squat', weight: '225 lb' },
        { exercise: 'leg press', weight: '200' },
        { exercise: 'pulldown', weight: '' },
      ],
    });
    expect(mergeLifters(NO_LIFTERS, opened, exercises).all).toHaveLength(2);
  });
});
