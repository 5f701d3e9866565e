/** Growth kept by reserve: against the drawn curve, the target that it is the dual of, and the difference of the bands. */
import { describe, expect, it } from 'vitest';
import { bandOf } from '../../src/model/bands.ts';
import { analyseInFull } from '../../src/model/full.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { listGrowthKept } from '../../src/practice/growthKept.ts';
import { expectWithin } from '../support/closeness.ts';
import { arms } from './programme/shipped.ts';

describe.each(['line', 'flexible'] as const)('growth kept with the %s', (curve) => {
  const analysis = analyseInFull(arms, settingsSchema.parse({ curve }));
  const rows = listGrowthKept(analysis);

  it('is listed for the whole reserves from 0, where all of it is kept', () => {
    expect(rows.map(({ reserve }) => reserve)).toEqual([0, 1, 2, 3, 4, 5]);
    for (const { kept } of rows[0].bands) expect(kept.share).toEqual({ estimate: 1, low: 1, high: 1 });
  });

  it('is the drawn curve divided by its start', () => {
    for (const { reserve, bands } of rows) {
      for (const { name, kept } of bands) {
        const { curvePoints } = bandOf(analysis, name);
        const here = curvePoints.find((point) => Math.abs(point.reserve - reserve) < 1e-9);
        expectWithin(
          kept.share?.estimate ?? Number.NaN,
          (here?.estimate ?? Number.NaN) / curvePoints[0].estimate,
          1e-12,
          name,
        );
      }
    }
  });

  it('has in its interval the share asked for exactly where the target has the reserve', () => {
    let inside = 0;
    for (const { reserve, bands } of rows.slice(1)) {
      for (const { name, kept } of bands) {
        const isInSet = bandOf(analysis, name).target.set.some(([low, high]) => low <= reserve && reserve <= high);
        const { low, high } = kept.share ?? { low: Number.NaN, high: Number.NaN };
        expect((low ?? -1) <= 0.9 && 0.9 <= (high ?? 2)).toBe(isInSet);
        if (isInSet) inside++;
      }
    }
    expect(inside).toBeGreaterThan(2);
  });

  it('differs between the bands by what stands beside it', () => {
    for (const { reserve, bands, difference } of rows.slice(1)) {
      const [light, heavy] = bands.map(({ kept }) => kept.share?.estimate ?? Number.NaN);
      expect(difference?.reserve).toBe(reserve);
      expectWithin(difference?.estimate ?? Number.NaN, heavy - light, 1e-12, `at ${reserve}`);
    }
  });
});

it('of all loads together has no difference', () => {
  const rows = listGrowthKept(analyseInFull(arms, settingsSchema.parse({ split: null })));
  expect(rows[1].bands.map(({ name }) => name)).toEqual(['all']);
  expect(rows.every(({ difference }) => difference === null)).toBe(true);
});
