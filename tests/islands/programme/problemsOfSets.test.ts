/** Problems of a written week stand beside the set that they are about, each once, however many sets share a line. */
import { describe, expect, it } from 'vitest';
import { placeProblems } from '../../../src/islands/programme/problemsOfSets.ts';
import { readWritten } from '../../../src/practice/programme/written/readWritten.ts';
import type { NotRead } from '../../../src/practice/programme/written/understood.ts';
import { exercises } from '../../practice/programme/shipped.ts';

/** Name and day of each line with what is shown beside it, “column: value”. */
function place(text: string) {
  const written = readWritten(text, exercises);
  const { beside, others } = placeProblems(written);
  const say = ({ column, value }: NotRead) => `${column}: ${value}`;
  return {
    written,
    beside: written.lines.map((line) => [
      `${line.exercise?.value ?? ''} ${line.day?.value ?? ''}`.trim(),
      ...(beside.get(line) ?? []).map(say),
    ]),
    others: others.map(say),
  };
}

describe('beside its own set stands', () => {
  it('the question about a name, where another set stands before it on the line', () => {
    expect(
      place(
        'Mon barbell back squat 4x6 80% 2 RIR; paused bench press 3x5 75% 3 RIR\nFri barbell back squat 3x5 75% 3 RIR',
      ).beside,
    ).toEqual([
      ['barbell back squat 1'],
      ['paused bench press 1', 'exercise: paused bench press'],
      ['barbell back squat 5'],
    ]);
  });

  it('what one of two lacks: sets, a load', () => {
    expect(place('Mon squat 4x6; bench press 75% 3x5').beside).toEqual([['squat 1', 'load: '], ['bench press 1']]);
    expect(place('Mon squat 4x6 80%; bench press 3 sets 75%').beside).toEqual([
      ['squat 1'],
      ['bench press 1', 'repetitions: '],
    ]);
  });

  it('what both lack, once beside each', () => {
    expect(place('Mon squat 4x6; bench press 3x5').beside).toEqual([
      ['squat 1', 'load: '],
      ['bench press 1', 'load: '],
    ]);
    expect(place('squat 4x6 80%; bench press 3x5 75%\nTue squat 3x5 75%').beside).toEqual([
      ['squat', 'day: '],
      ['bench press', 'day: '],
      ['squat 2'],
    ]);
  });

  it('a weight with the 1RM of its own exercise, where the other set has the same weight', () => {
    const { written } = place('Mon squat 4x6 100 kg; bench press 3x5 100 kg');
    const { beside } = placeProblems(written);
    expect(written.lines.map((line) => beside.get(line)?.map(({ remedy }) => remedy?.slice(0, 28)))).toEqual([
      ['Say the 1RM of squat in kg, '],
      ['Say the 1RM of bench press i'],
    ]);
  });

  it('what was refused in it, the same value of both sets beside both', () => {
    expect(place('Mon squat 4x6 80%; bench press 3x5 75% RPE 12').beside).toEqual([
      ['squat 1'],
      ['bench press 1', 'reserve: RPE 12'],
    ]);
    expect(place('Mon squat 4x6 80% RPE 12; bench press 3x5 75% RPE 12').beside).toEqual([
      ['squat 1', 'reserve: RPE 12'],
      ['bench press 1', 'reserve: RPE 12'],
    ]);
    expect(place('Mon squat 3x5 80 kg 5; lunge 3x5 70%; squat 3x5 80 kg').beside).toEqual([
      ['squat 1', 'null: 5'],
      ['lunge 1'],
      ['squat 1', 'load: 80 kg'],
    ]);
  });

  it('the question of a cell, where the columns of a table are weeks', () => {
    expect(place('exercise\tWeek 1\tWeek 2\nbech press\t3x5 80%\t3x5 80%\nsquat\t4x6 80%\t4x6').beside).toEqual([
      ['bech press 1', 'exercise: bech press'],
      ['bech press 8', 'exercise: bech press'],
      ['squat 1'],
      ['squat 8', 'load: '],
    ]);
  });
});

/** Sets of which each has other problems, or none. */
const SETS = [
  'squat 4x6 80%',
  'squat 4x6',
  'squat 3x5 100 kg',
  'bench press 3x5 100 kg',
  'bench press 3 sets 75%',
  'lunge 3x8 5 70%',
  'lunge 3x8 5 70 kg',
  'leg press 3x8 75% RPE 12',
  'leg press 3x8 RPE 12',
  'bech press 3x8 120%',
  'bech press 3x8 100 kg',
  'paused bench press 3x5',
] as const;

describe('two sets of one line have the problems that each has on a line of its own', () => {
  it.each(SETS)('%s', (first) => {
    for (const second of SETS) {
      const alone = [place(`Mon ${first}`), place(`Mon ${second}`)];
      const together = place(`Mon ${first}; ${second}`);
      expect(together.written.lines, `${first}; ${second}`).toHaveLength(2);
      const told = alone.flatMap(({ written }) => written.notRead);
      expect(together.written.notRead).toHaveLength(told.length);
      expect(together.beside, `${first}; ${second}`).toEqual(alone.flatMap(({ beside }) => beside));
      // With the day on a line above, on two days at once.
      const twice = place(`Mon/Thu\n${first}; ${second}`);
      const ofMonday = twice.beside.filter(([name]) => name.endsWith('1'));
      expect(ofMonday, `twice ${first}; ${second}`).toEqual(together.beside);
      expect(twice.beside.filter(([name]) => name.endsWith('4')).flatMap(([, ...all]) => all)).toEqual([]);
    }
  });
});

describe('once stands', () => {
  it('the question of a set that stands for several days, beside the first of them', () => {
    expect(place('Mon/Thu paused bench press 3x5 75%; squat 4x6').beside).toEqual([
      ['paused bench press 1', 'exercise: paused bench press'],
      ['paused bench press 4'],
      ['squat 1', 'load: '],
      ['squat 4'],
    ]);
  });

  it('what is of no set, beside none', () => {
    const { beside, others } = place('Week 2: same as week 1\nMon squat 4x6 80%');
    expect([beside, others]).toEqual([[['squat 1']], ['null: Week 2: same as week 1']]);
  });

  it.each([
    'Mon squat 3x5; squat 3x5; squat 3x5 80% @11 @11',
    'Day 99 squat 3x5; bech press 80%',
    'weeks 1-3\nMon squat 3x5; bech press 80%',
    'day;exercise;sets;reps;load;notes\nWenesday;bech press;3;x;80;6\n;bech press;3;8;;\nMon;;three;8;80 kg;',
    'exercise\tMon/Thu\tMon\nbech press\t3x5\t3x5\nsquat\t3x5 80 kg\tsquat @11',
    'Mon squat 3x5 80 kg 5; bech press 5; lunge 3x5 70 kg; squat 3x5 80 kg',
  ])('every problem of “%s”', (text) => {
    const { written } = place(text);
    const { beside, others } = placeProblems(written);
    const shown = written.lines.flatMap((line) => (beside.get(line) ?? []).map((problem) => ({ line, problem })));
    expect(written.notRead.length).toBeGreaterThan(0);
    expect(shown.filter(({ line, problem }) => line.line !== problem.line)).toEqual([]);
    // The very problems, each as often as it was told.
    expect([...shown.map(({ problem }) => problem), ...others].toSorted(byPlace(written.notRead))).toStrictEqual(
      written.notRead,
    );
  });
});

const byPlace = (all: readonly NotRead[]) => (a: NotRead, b: NotRead) => all.indexOf(a) - all.indexOf(b);
