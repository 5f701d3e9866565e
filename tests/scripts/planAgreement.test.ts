/**
 * What is foretold of planned studies beside simulated ones that were fitted in full, as the methods tell it: measured
 * with the script's present plans, inside the tenth that is promised, and repeatable.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Agreement, comparePlan, listTables, PLANS, SEED, TABLES } from '../../scripts/measure/planAgreement.ts';
import { readArms } from '../../src/evidence/table.ts';

const stored: { readonly tables: number; readonly seed: number; readonly results: readonly Agreement[] } = JSON.parse(
  readFileSync(new URL('../../data/plan-agreement.json', import.meta.url), 'utf8'),
);
const tables = listTables(
  readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv').arms,
);
const bands = tables.flatMap((table) => table.bands.map((band) => ({ table, band, label: `${table.name}, ${band}` })));

describe('data/plan-agreement.json', () => {
  it('was measured with the present plans, tables, seed and counts (else: npm run agreement)', () => {
    expect([stored.tables, stored.seed]).toEqual([TABLES, SEED]);
    expect(stored.results.map(({ table, band }) => `${table}, ${band}`)).toEqual(
      bands.flatMap(({ label }) => PLANS.map(() => label)),
    );
    expect(PLANS.length).toBeGreaterThanOrEqual(20);
  });

  it('has every expected width within a tenth of the simulated one', () => {
    const misses = stored.results.flatMap(({ miss }) => (miss === null ? [] : [Math.abs(miss)]));
    expect(misses.length).toBeGreaterThan(120);
    expect(Math.max(...misses)).toBeLessThan(0.1);
  });

  it.each(stored.results.filter(({ expected, simulated }) => (expected === null) !== (simulated === null)))(
    '$table, $plan: only one of the two has a width, where about half of the outcomes have none',
    ({ refused, unbounded }) => {
      const without = (of: 'expected' | 'simulated') => refused[of] + unbounded[of];
      expect(Math.abs(without('expected') - without('simulated'))).toBeLessThan(0.1);
    },
  );

  it('has shares without a target, without an upper end and with other whole repetitions within 12 points of the simulated ones', () => {
    for (const { refused, unbounded, chance } of stored.results) {
      for (const { expected, simulated } of [refused, unbounded, chance])
        if (expected !== null) expect(Math.abs(expected - simulated)).toBeLessThan(0.12);
    }
  });

  it.each([
    ['shipped', 'light', 4],
    ['30 studies, saturating', 'all', 12],
  ] as const)('is what comes out now: %s, %s, plan %i, within four errors of 60 new studies', (name, band, index) => {
    const found = bands.find(({ table, band: one }) => table.name === name && one === band);
    const before = stored.results.filter((one) => one.table === name && one.band === band)[index];
    if (!found) throw new Error(`no table ${name}`);
    const now = comparePlan(found.table, band, index, 60);
    expect(now.plan).toBe(before.plan);
    expect(now.expected).toBeCloseTo(before.expected ?? Number.NaN, 4);
    const error = (before.simulatedError ?? 0) * Math.sqrt(stored.tables / 60);
    expect(Math.abs((now.simulated ?? 0) - (before.simulated ?? 0))).toBeLessThan(4 * error);
  });
});
