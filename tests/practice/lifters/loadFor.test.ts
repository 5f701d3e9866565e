/** The load of a line for a lifter: from per cent of 1RM or from a weight, rounded down, and never made up. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BODY_WEIGHT_EXERCISES, isWithBodyWeight } from '../../../src/practice/lifters/bodyWeight.ts';
import { changeUnit } from '../../../src/practice/lifters/editLifters.ts';
import { checkedPercent, loadFor } from '../../../src/practice/lifters/loadFor.ts';
import { askUnit, findOneRm } from '../../../src/practice/lifters/oneRm.ts';
import { explainLoad, tellLoad } from '../../../src/practice/lifters/tellLine.ts';
import type { Cells } from '../../../src/practice/programme/editorColumns.ts';
import { exercises, readData } from '../programme/shipped.ts';
import { lifterWith, listOf, teamOf } from './people.ts';

const lineOf = (cells: Partial<Cells>) => listOf([cells]).lines[0];
const load = (cells: Partial<Cells>, lifter = lifterWith({ squat: '140' })) =>
  loadFor(lifter, lineOf(cells), exercises);

describe('per cent of 1RM', () => {
  it('become a weight of the plates, at most what is meant, with the per cent that it then is', () => {
    // 78 % of 140 kg are 109.2 kg; 107.5 of 140 are 76.79 %.
    const found = load({ load: '78' });
    expect(found).toMatchObject({ kind: 'weight', weight: { value: 107.5, unit: 'kg' }, planned: 78 });
    expect(checkedPercent(found)).toBeCloseTo(76.7857, 4);
    expect(tellLoad(found)).toBe('107.5\u00a0kg');
  });

  it.each([
    ['80 %', '110\u00a0kg', 80],
    ['75', '105\u00a0kg', 75],
    ['70-75%', '97.5 to 105\u00a0kg', 75],
    ['72,5 %', '100\u00a0kg', 72.5],
    ['7e1', '97.5\u00a0kg', 70],
  ])('written as “%s” are %s', (written, told, planned) => {
    const found = load({ load: written });
    expect(tellLoad(found)).toBe(told);
    expect(found).toMatchObject({ planned });
  });

  it('that the plates make exactly stand as they are, to the last digit', () => {
    for (const percent of [10, 30, 57.5, 70, 80, 90, 100]) {
      expect(checkedPercent(load({ load: String(percent) }, lifterWith({ squat: '100' })))).toBe(percent);
    }
  });

  it('follow the exercise by its usual names, not by another that is like it', () => {
    const lifter = lifterWith({ squats: '140', 'back squat': '120', rdl: '110' });
    expect(tellLoad(load({ exercise: 'Squat', load: '50' }, lifter))).toBe('70\u00a0kg');
    expect(tellLoad(load({ exercise: 'barbell back squat', load: '50' }, lifter))).toBe('60\u00a0kg');
    expect(tellLoad(load({ exercise: 'Romanian deadlift', load: '50' }, lifter))).toBe('55\u00a0kg');
    expect(load({ exercise: 'front squat', load: '50' }, lifter).kind).toBe('no 1RM');
  });

  it('of an exercise of one’s own follow the name as it is written there', () => {
    const lifter = lifterWith({ 'Sled drag': '200' });
    expect(tellLoad(load({ exercise: 'sled-drags', load: '50' }, lifter))).toBe('100\u00a0kg');
  });

  it('stay per cent where no 1RM is given or it cannot be read, and say so', () => {
    const none = load({ exercise: 'leg press', load: '75-80%' });
    expect([tellLoad(none), explainLoad(none), checkedPercent(none)]).toEqual([
      '75 to 80\u00a0% of 1RM',
      'No 1RM of leg press given.',
      80,
    ]);
    const wrong = load({ load: '75' }, lifterWith({ squat: 'heavy' }));
    expect([tellLoad(wrong), explainLoad(wrong)]).toEqual(['75\u00a0% of 1RM', 'The 1RM of squat cannot be read.']);
  });

  it('are per cent where even one step is too much', () => {
    const found = load({ exercise: 'lateral raise', load: '60' }, lifterWith({ 'lateral raise': '4' }));
    expect([tellLoad(found), explainLoad(found)]).toEqual([
      '60\u00a0% of 1RM',
      'That is 2.4\u00a0kg, less than the smallest step of 2.5\u00a0kg.',
    ]);
  });

  it('are rounded by the exercise’s own step before the lifter’s, and by neither that cannot be read', () => {
    const of = (step: string, own: string) =>
      tellLoad(
        load({ load: '78' }, teamOf([{ name: 'A', step, maxima: { squat: '140' }, steps: { squat: own } }]).all[0]),
      );
    expect([of('', ''), of('5', ''), of('5', '0,5'), of('wide', '0'), of('5', 'wide')]).toEqual(
      ['107.5', '105', '109', '107.5', '105'].map((one) => `${one}\u00a0kg`),
    );
  });

  it('of pounds are pounds in steps of 5, of a 1RM in the other unit too', () => {
    expect(tellLoad(load({ load: '75' }, lifterWith({ squat: '315' }, { unit: 'lb' })))).toBe('235\u00a0lb');
    // 100 kg are 220.46 lb, of which 75 % are 165.3 lb.
    expect(tellLoad(load({ load: '75' }, lifterWith({ squat: '100 kg' }, { unit: 'lb' })))).toBe('165\u00a0lb');
    // 225 lb are 102.06 kg.
    expect(tellLoad(load({ load: '100' }, lifterWith({ squat: '225 lb' })))).toBe('100\u00a0kg');
  });

  it('are never more than what is meant, nor than 1RM, for any lifter', () => {
    const percent = fc.integer({ min: 1, max: 1000 }).map((tenths) => tenths / 10);
    const weight = fc.integer({ min: 100, max: 50_000 }).map((hundredths) => hundredths / 100);
    fc.assert(
      fc.property(percent, weight, fc.constantFrom('kg' as const, 'lb' as const), (meant, oneRm, unit) => {
        const found = load({ load: String(meant) }, lifterWith({ squat: `${oneRm} kg` }, { unit }));
        expect(['weight', 'below step']).toContain(found.kind);
        expect(checkedPercent(found)).toBeLessThanOrEqual(meant * (1 + 1e-9));
        if (found.kind === 'weight') expect(found.weight.value % (unit === 'kg' ? 2.5 : 5)).toBe(0);
      }),
      { seed: 17, numRuns: 500 },
    );
  });
});

describe('a load that is a weight', () => {
  it('is another per cent of each lifter’s 1RM', () => {
    const found = load({ load: '100 kg' });
    expect(found).toMatchObject({ kind: 'weight', weight: { value: 100, unit: 'kg' } });
    expect(checkedPercent(found)).toBeCloseTo(71.4286, 4);
    expect(tellLoad(load({ load: '100kg' }, lifterWith({ squat: '315' }, { unit: 'lb' })))).toBe('220\u00a0lb');
    expect(tellLoad(load({ load: '95-101 kg' }))).toBe('95 to 100\u00a0kg');
  });

  it('above 1RM is none, and never a per cent', () => {
    const found = load({ load: '142.5 kg' });
    expect([found.kind, checkedPercent(found), tellLoad(found)]).toEqual(['above 1RM', null, 'none']);
    expect(explainLoad(found)).toBe(
      '142.5\u00a0kg is more than your 1RM, 140\u00a0kg. Do not lift it: ask your coach.',
    );
    expect(checkedPercent(load({ load: '140 kg' }))).toBe(100);
    // The very weight in the other unit is no more than it.
    expect(load({ load: '225 lb' }, lifterWith({ squat: '225 lb' })).kind).toBe('weight');
  });

  it('without a 1RM stays what it is, and is no per cent', () => {
    const found = load({ exercise: 'leg press', load: '200 lb' });
    expect([tellLoad(found), checkedPercent(found)]).toEqual(['200\u00a0lb', null]);
  });
});

describe('other loads', () => {
  it('by repetitions are each lifter’s own to find; no weight is made of them', () => {
    const found = load({ load: '', possible: '12' });
    expect([found.kind, tellLoad(found), checkedPercent(found)]).toEqual([
      'by repetitions',
      'one you could lift 12 times',
      null,
    ]);
  });

  it.each(['', 'heavy', '8RM', '100 kg 80 %', '80 %%'])(
    'such as “%s” are not read, and stand as they were',
    (written) => {
      const found = load({ load: written });
      expect(found).toEqual({ kind: 'not read', written });
      expect(tellLoad(found)).toBe(written || 'not given');
    },
  );
});

describe('an exercise with body weight', () => {
  it('is one whose note in the list says so and names nothing else', () => {
    const noted = readData('exercises.csv')
      .split('\n')
      .filter((line) => /,(?:general|bench press|leg press),body weight[,;]/u.test(line))
      .map((line) => line.split(',')[0]);
    expect([...BODY_WEIGHT_EXERCISES].sort()).toEqual(noted.sort());
  });

  it('has no step of plates, and says what is a part of the load', () => {
    const found = load({ exercise: 'chin-ups', load: '75' }, lifterWith({ 'chin-up': '101' }));
    expect([tellLoad(found), explainLoad(found), checkedPercent(found)]).toEqual([
      '75.75\u00a0kg',
      'Your body weight is part of it.',
      75,
    ]);
    expect(isWithBodyWeight('pulldown')).toBe(false);
  });
});

describe('a 1RM', () => {
  it('is asked about where kilograms are more than most lift, and never refused for it', () => {
    expect(askUnit({ value: 315, unit: 'kg' })).toBe('Is 315\u00a0kg right, or are they pounds? Then write “315 lb”.');
    expect([askUnit({ value: 299, unit: 'kg' }), askUnit({ value: 900, unit: 'lb' })]).toEqual([null, null]);
    expect(findOneRm(lifterWith({ squat: '1000' }), exercises, 'squat').kind).toBe('read');
  });

  it('stays the weight that it was where the lifter’s unit is changed, and there and back', () => {
    const team = teamOf([{ name: 'A', step: '1', maxima: { squat: '140', 'leg press': '500 lb', bench: 'abc' } }]);
    const [pounds] = changeUnit(team, 1, 'lb').all;
    expect(pounds).toMatchObject({ unit: 'lb', step: '' });
    expect(pounds.maxima.map(({ weight }) => weight)).toEqual(['140 kg', '500 lb', 'abc']);
    const [back] = changeUnit(changeUnit(team, 1, 'lb'), 1, 'kg').all;
    for (const exercise of ['squat', 'leg press']) {
      expect(findOneRm(back, exercises, exercise)).toMatchObject({ weight: expect.anything() });
      const [before, after] = [team.all[0], back].map((one) => findOneRm(one, exercises, exercise));
      expect({ ...after, isBare: null }).toEqual({ ...before, isBare: null });
    }
  });
});
