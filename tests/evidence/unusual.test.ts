/** Warnings about what is possible but unusual, and the table of studies. */
import { describe, expect, it } from 'vitest';
import { readArms, readStudies } from '../../src/evidence/table.ts';
import { type Cells, makeTable } from '../support/tables.ts';

const warningsOf = (changes: readonly Cells[]) => {
  const { problems, warnings } = readArms(makeTable(changes), 'odd.csv');
  expect(problems).toEqual([]);
  return warnings;
};

describe('a warning, and no problem', () => {
  it.each<[string, Cells, string, RegExp]>([
    [
      'an SD of the change that implies a negative correlation',
      { change_sd: '9', correlation: '' },
      'change_sd',
      /not -0\.09/,
    ],
    [
      'an SD of the change that implies a correlation above 1',
      { followup_sd: '9', change_sd: '1', correlation: '' },
      'change_sd',
      /not 1\.07/,
    ],
    [
      'a standard error that implies a negative correlation',
      { change_se: '3', correlation: '' },
      'change_se',
      /correlation from 0 to 1/,
    ],
    [
      'a mean change that is not the difference of the means',
      { change_mean: '30' },
      'change_mean',
      /^a change of 3, the mean after/,
    ],
    [
      'reserve and repetitions far above what the load allows',
      { reps_per_set: '25', attempted_failure: 'no', reserve_reps: '10' },
      'reserve_reps',
      /12 usually possible at 75 % of 1RM, not 35/,
    ],
    [
      'reserve above what a load beyond the published ones allows',
      { load_pct_1rm: '98', attempted_failure: 'no', reserve_reps: '30' },
      'reserve_reps',
      /^a reserve near the 3 usually possible at 95 % of 1RM, not 30/,
    ],
    [
      'repetitions above what the load allows, the reserve unknown',
      { load_pct_1rm: '95', reps_per_set: '20', attempted_failure: '', reserve_reps: '' },
      'reps_per_set',
      /^repetitions near the 3 usually possible/,
    ],
  ])('is given for %s', (_what, changes, column, expected) => {
    const warnings = warningsOf([changes]);
    expect(warnings.map(({ line, kind }) => [line, kind])).toEqual([[2, 'unusual']]);
    expect(warnings[0].column).toBe(column);
    expect(warnings[0].expected).toMatch(expected);
  });

  it('is not given for repetitions that people some three published SDs above the mean can do', () => {
    // Bench press, mean + 3 SD, whole below: 85 % 6.23 + 3 × 2.05, 60 % 19.34 + 3 × 4.36 (data/repetitions.json).
    for (const [load, most] of [
      ['85', 11],
      ['60', 32],
    ] as const) {
      for (let reserve = 0; reserve < most; reserve++) {
        const row = {
          load_pct_1rm: load,
          attempted_failure: 'no',
          reserve_reps: '0',
          reps_per_set: `${most - reserve}`,
        };
        expect(warningsOf([{ ...row, reserve_reps: `${Math.min(reserve, 30)}` }])).toEqual([]);
      }
    }
  });

  it('is given for an effect more than 4 SD from the rest', () => {
    const rest = Array.from({ length: 12 }, (_, i) => ({ arm: `arm ${i}`, followup_mean: `${43 + i / 10}` }));
    const warnings = warningsOf([...rest, { arm: 'far', followup_mean: '80' }]);
    expect(warnings.map(({ line, value }) => [line, value])).toEqual([[14, 'a change of 100.0 %']]);
    expect(warnings[0].expected).toMatch(/within 4 SDs of the other growth rows/);
  });

  it('is given for the one effect that is not that of all others, which have no SD at all', () => {
    // The squares of the others come out below 0 by rounding for the last three.
    for (const mean of ['41', '43', '41.2', '43.3', '45']) {
      const rest = Array.from({ length: 12 }, (_, i) => ({ arm: `arm ${i}`, followup_mean: mean }));
      const warnings = warningsOf([...rest, { arm: 'far', followup_mean: '80' }]);
      expect(warnings.map(({ line }) => line)).toEqual([14]);
    }
  });

  it('is not given for numbers that differ by their rounding only', () => {
    expect(warningsOf([{ followup_mean: '43.1', change_mean: '3' }])).toEqual([]);
    expect(warningsOf([{ change_sd: '2.7', correlation: '' }])).toEqual([]);
  });
});

describe('the table of studies', () => {
  const header = 'study,authors,year,title,journal,volume,pages,doi,note';

  it('is read with empty cells as null', () => {
    const { studies, problems } = readStudies(`${header}\nPlover 2012,"Plover A, Wren B",2012,Invented,,,,,`, 's.csv');
    expect(problems).toEqual([]);
    expect(studies).toEqual([
      {
        line: 2,
        study: 'Plover 2012',
        authors: 'Plover A, Wren B',
        year: 2012,
        title: 'Invented',
        journal: null,
        volume: null,
        pages: null,
        doi: null,
        note: null,
      },
    ]);
  });

  it('names a study once, and both lines where it does not', () => {
    const row = 'Plover 2012,Plover A,2012,Invented,,,,,';
    const { problems } = readStudies([header, row, row].join('\n'), 's.csv');
    expect(problems.map(({ line, column }) => [line, column])).toEqual([[3, 'study']]);
    expect(problems[0].expected).toMatch(/line 2/);
  });
});
