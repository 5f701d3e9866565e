/**
 * Cells filled from what a paper prints in their place: by direct arithmetic, and loads by the published points
 * themselves in data/repetitions.json (Nuzzo et al. 2024).
 */
import { describe, expect, it } from 'vitest';
import published from '../../data/repetitions.json' with { type: 'json' };
import { readArms } from '../../src/evidence/table.ts';
import { writeArms } from '../../src/evidence/writeTable.ts';
import { type Cells, makeArms } from '../support/tables.ts';

const only = (cells: Cells) => makeArms([{ attempted_failure: '', reserve_reps: '', ...cells }])[0];

describe('people', () => {
  it('are an equal share of a total over arms, rounded down, and said to be assumed', () => {
    const arm = only({ n: '', n_total: '50', n_total_arms: '4' });
    expect(arm.n).toBe(12);
    expect(arm.derived).toEqual([
      { column: 'n', value: 12, sd: null, how: 'an equal share of 50 over 4 arms', restsOn: 'assumed' },
    ]);
  });

  it('are those printed where they are', () => {
    expect(only({ n: '13', n_total: '50', n_total_arms: '4' })).not.toHaveProperty('derived');
  });

  it('are not known from a total alone', () => {
    expect(only({ n: '', n_total: '50' }).n).toBeNull();
  });
});

describe('a load', () => {
  it('of an RM is that of the published point with as many repetitions', () => {
    for (const [load, repetitions] of published.relations['bench press'].mean_repetitions_at_pct_1rm) {
      const arm = only({ load_pct_1rm: '', load_rm: String(repetitions) });
      expect(arm.load_pct_1rm).toBeCloseTo(load, 9);
    }
  });

  it('as a range of RM has a wider spread than as one', () => {
    const [one, range] = ['10', '8-12'].map((load_rm) => only({ load_pct_1rm: '', load_rm }).derived?.[0]);
    expect(range?.value).toBe(one?.value);
    expect(range?.sd ?? 0).toBeGreaterThan(one?.sd ?? Number.NaN);
    expect(range?.restsOn).toBe('assumed');
  });

  it('as a range of per cent is its middle, as printed', () => {
    const arm = only({ load_pct_1rm: '70-80' });
    expect(arm.load_pct_1rm).toBe(75);
    expect(arm).not.toHaveProperty('derived');
  });

  it('of 1 RM is not published, and stays empty', () => {
    expect(only({ load_pct_1rm: '', load_rm: '1' }).load_pct_1rm).toBeNull();
  });
});

describe('a reserve', () => {
  it('is the repetitions possible minus those done', () => {
    const arm = only({ reps_possible: '12.4', reps_per_set: '6.7' });
    expect(arm.reserve_reps).toBeCloseTo(5.7, 12);
    expect(arm.derived?.[0].restsOn).toBe('recovered');
  });

  it('is what a share of the maximum leaves', () => {
    expect(only({ reps_possible: '20', share_of_maximum_pct: '60' }).reserve_reps).toBeCloseTo(8, 12);
  });

  it('as a range is its middle with an SD of a twelfth of its squared width', () => {
    const arm = only({ reserve_reps: '1-3' });
    expect(arm.reserve_reps).toBe(2);
    expect((arm.reserve_sd ?? 0) ** 2).toBeCloseTo(4 / 12, 12);
  });

  it('keeps the SD that is printed beside a range', () => {
    expect(only({ reserve_reps: '1-3', reserve_sd: '0.9' }).reserve_sd).toBe(0.9);
  });

  it('is not made of a loss of velocity', () => {
    expect(only({ velocity_loss_pct: '20' }).reserve_reps).toBeNull();
  });
});

it('is written as the table had it: ranges and bounds as printed, what was filled left empty', () => {
  const cells = {
    n: '',
    n_total: '50',
    n_total_arms: '4',
    load_pct_1rm: '',
    load_rm: '8-12',
    reserve_reps: '1-3',
    change_p: '<0.001',
    sets: '3-5',
  };
  const text = writeArms([only(cells)]);
  const [header, line] = text
    .trimEnd()
    .split('\n')
    .map((row) => row.split(','));
  for (const [name, cell] of Object.entries(cells)) expect(line[header.indexOf(name)], name).toBe(cell);
  expect(line[header.indexOf('reserve_sd')]).toBe('');
  expect(readArms(text, 'again.csv').arms[0]).toEqual(only(cells));
});

it.each([
  ['<0.001', 0.001, { low: 0, high: 0.001, value: 0.001 }],
  ['≤ .05', 0.05, { low: 0, high: 0.05, value: 0.05 }],
  ['>0.05', null, { low: 0.05, high: 1, value: null }],
])('reads p %s as a bound', (change_p, value, range) => {
  const arm = only({ change_p });
  expect([arm.change_p, arm.ranges?.change_p]).toEqual([value, range]);
});

it('takes “not said” for an empty cell, and keeps it as a text', () => {
  const arm = only({ training_status: 'not said', sex: 'Not reported', age_mean_years: 'not known', note: 'not said' });
  expect([arm.training_status, arm.sex, arm.age_mean_years, arm.note]).toEqual([null, null, null, 'not said']);
});
