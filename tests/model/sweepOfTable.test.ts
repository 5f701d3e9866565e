/** The sweep over what only some tables leave open: rows that rest on assumptions, and rows without a spread. */
import { describe, expect, it } from 'vitest';
import { type BandSweep, sweepChoices } from '../../src/model/checks/sweep.ts';
import { listSweepLevels } from '../../src/model/checks/sweepLevels.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { type Cells, makeArms } from '../support/tables.ts';

/** Five studies of two reserves with light loads, of which one row a study is changed. */
const tableOf = (changes: Cells) =>
  makeArms(
    Array.from({ length: 5 }, (_, k) =>
      [0, 2, 4].map(
        (reserve): Cells => ({
          study: `Study ${k}`,
          arm: `reserve ${reserve}`,
          load_pct_1rm: '40',
          attempted_failure: '',
          reserve_reps: String(reserve),
          followup_mean: String(43 - reserve / 4 + k / 20),
          ...(reserve === 2 ? changes : {}),
        }),
      ),
    ).flat(),
  );

function sweepOf(changes: Cells): BandSweep {
  const steps = sweepChoices(tableOf(changes), settingsSchema.parse({}));
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value.light;
  }
}

describe('a sweep', () => {
  const levelsOf = (sweep: BandSweep, choice: string) =>
    listSweepLevels(sweep)
      .filter((level) => level.choice === choice)
      .map(({ level, combinations }) => [level, combinations]);

  it('of a table whose papers print everything has 1,440 combinations', () => {
    const sweep = sweepOf({});
    expect(sweep.outcomes).toHaveLength(1440);
    expect(levelsOf(sweep, 'restingOn')).toEqual([]);
    expect(levelsOf(sweep, 'missingSds')).toEqual([]);
  });

  it('of one with assumed rows has each combination with and without them', () => {
    const sweep = sweepOf({ n: '', n_total: '24', n_total_arms: '2' });
    expect(levelsOf(sweep, 'restingOn')).toEqual([
      ['all rows', 1440],
      ['only what is printed or recovered', 1440],
    ]);
    expect(levelsOf(sweep, 'missingSds')).toEqual([]);
  });

  it('of one with rows without a spread has them left out and filled in, which are pooled rows too', () => {
    const sweep = sweepOf({ baseline_sd: '', followup_sd: '', correlation: '' });
    expect(sweep.outcomes).toHaveLength(5760);
    expect(levelsOf(sweep, 'missingSds')).toEqual([
      ['off', 2880],
      ['missing', 2880],
    ]);
  });
});
