/**
 * Printed contrasts of named trials, from the effects that the table gives: the per cent that a paper prints is the per
 * cent that is shown, to its last digit. Each value stands in the abstract of the paper that is named.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { computeEffect } from '../../src/evidence/effects.ts';
import type { Arm } from '../../src/evidence/schema.ts';
import { readArms } from '../../src/evidence/table.ts';
import { defaultSettings } from '../../src/model/settings.ts';
import { toPercent } from '../../src/numerics/percent.ts';

const { arms } = readArms(readFileSync('data/published/arms.csv', 'utf8'), 'arms.csv');

const find = (study: string, arm: string, measure: string): Arm => {
  const rows = arms.filter((row) => row.study === study && row.arm === arm && row.measure === measure);
  if (rows.length !== 1) throw new Error(`${rows.length} rows of ${study}, ${arm}, ${measure}`);
  return rows[0];
};
const percentOf = (arm: Arm): number => {
  const assumedCorrelation = defaultSettings.assumedCorrelation[arm.outcome];
  const effect = computeEffect(arm, { metric: 'log-ratio', assumedCorrelation });
  if (typeof effect === 'string') throw new Error(`line ${arm.line}: ${effect}`);
  return toPercent(effect.y);
};

/** Lasevicius et al. 2022, J Strength Cond Res 36:346, doi 10.1519/JSC.0000000000003454. */
describe('Lasevicius 2022', () => {
  it.each([
    ['LL-RF', 'quadriceps cross-sectional area', '7.8'],
    ['LL-RNF', 'quadriceps cross-sectional area', '2.8'],
    ['HL-RF', 'quadriceps cross-sectional area', '8.1'],
    ['HL-RNF', 'quadriceps cross-sectional area', '7.7'],
    ['HL-RF', '1RM knee extension', '33.8'],
    ['HL-RNF', '1RM knee extension', '33.4'],
    ['LL-RF', '1RM knee extension', '17.7'],
    ['LL-RNF', '1RM knee extension', '15.8'],
  ])('%s, %s: %s %%', (arm, measure, percent) => {
    expect(percentOf(find('Lasevicius 2022', arm, measure)).toFixed(1)).toBe(percent);
  });

  it('has the reserves that its repetitions leave: 0 and 5.7 with heavy, 0 and 14.8 with light loads', () => {
    const reserves = ['HL-RF', 'HL-RNF', 'LL-RF', 'LL-RNF'].map(
      (arm) => find('Lasevicius 2022', arm, 'quadriceps cross-sectional area').reserve_reps,
    );
    expect(reserves).toEqual([0, 5.7, 0, 14.8]);
  });
});

/** Bergamasco et al. 2022, J Strength Cond Res 36:1209, doi 10.1519/JSC.0000000000003632: means of 1RM in kg and per cents. */
describe('Bergamasco 2022, whose means and per cents stand in one abstract', () => {
  it.each([
    ['FAI (to failure)', 318.3, 393.0, 23.5],
    ['VOL (voluntary interruption)', 342.9, 423.0, 23.3],
    ['FIX (fixed low repetitions)', 328.0, 397.8, 21.3],
  ])(
    '%s: from %f to %f is the %f %% that is printed, as far as means of one decimal can tell',
    (name, m1, m2, printed) => {
      const arm = find('Bergamasco 2022', name, '1RM');
      expect([arm.baseline_mean, arm.followup_mean, arm.percent_change]).toEqual([m1, m2, printed]);
      // Half of the last digit of either mean, and of the per cent.
      const [low, high] = [100 * ((m2 - 0.05) / (m1 + 0.05) - 1), 100 * ((m2 + 0.05) / (m1 - 0.05) - 1)];
      const found = percentOf(arm);
      expect(found > low && found < high).toBe(true);
      expect(low - 0.05 <= printed && printed <= high + 0.05).toBe(true);
    },
  );
});

/** Every row that prints a change in per cent and no mean: the effect is that per cent, whatever its form. */
it('every change in per cent that a fit can read without means is shown as it is printed', () => {
  const rows = arms.filter(({ percent_change: percent, baseline_mean: mean, change_mean: change }) =>
    [percent !== null, mean === null, change === null].every(Boolean),
  );
  const readable = rows.flatMap((arm) => {
    const assumedCorrelation = defaultSettings.assumedCorrelation[arm.outcome];
    const effect = computeEffect(arm, { metric: 'log-ratio', assumedCorrelation });
    return typeof effect === 'string' ? [] : [{ printed: arm.percent_change, shown: toPercent(effect.y) }];
  });
  expect(readable.length).toBeGreaterThan(80);
  for (const { printed, shown } of readable) expect(shown).toBeCloseTo(printed ?? Number.NaN, 9);
});
