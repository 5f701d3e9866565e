/** The best next study and the people it is asked with, against every way of placing two arms and people counted by hand. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../../src/evidence/table.ts';
import { expectPlan } from '../../../src/model/plan/expectPlan.ts';
import { findNextStudy } from '../../../src/model/plan/nextStudy.ts';
import { planStudy } from '../../../src/model/plan/plannedStudy.ts';
import { openPlanning } from '../../../src/model/plan/planningBase.ts';
import { findUsualPeople } from '../../../src/model/plan/usualPeople.ts';
import { settingsSchema } from '../../../src/model/settings.ts';
import { makeArms } from '../../support/tables.ts';

const { arms } = readArms(readFileSync(new URL('../../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const between = (from: string, to: string) => arms.filter(({ study }) => study[0] >= from && study[0] <= to);
const openWith = (rows: readonly (typeof arms)[number][], settings: object = {}) =>
  openPlanning(rows, settingsSchema.parse(settings));

describe('people of a usual study', () => {
  const people = (counts: readonly number[]) =>
    findUsualPeople(
      openWith(makeArms(counts.map((n, i) => ({ study: `Plover 20${10 + i}`, year: `20${10 + i}`, n: String(n) })))),
    );

  it('are those of the middle one, to the nearest ten', () => {
    expect(people([12, 34, 90])).toEqual({ people: 30, median: 34, studies: 3 });
    expect(people([20, 31])).toEqual({ people: 30, median: 25.5, studies: 2 });
  });

  it('are as few or many as can be asked for where the middle one has fewer or more', () => {
    expect(people([3, 4, 5]).people).toBe(10);
    expect(people([900]).people).toBe(200);
  });

  it('count the people of a study once, whatever rows they stand in, and none that are not fitted', () => {
    const row = { study: 'Wren 2010', year: '2010', cohort: 'all', n: '44' };
    const more = { ...row, measure: 'cross-sectional area', unit: 'cm2' };
    const strength = { study: 'Wren 2011', year: '2011', n: '400', outcome: 'strength', measure: '1RM', unit: 'kg' };
    expect(findUsualPeople(openWith(makeArms([row, more, strength])))).toEqual({ people: 40, median: 44, studies: 1 });
  });

  it('without a study are the fewest', () => {
    expect(findUsualPeople({ bands: [] })).toEqual({ people: 10, median: null, studies: 0 });
  });
});

describe('the next study', () => {
  it('of the shipped table is no wider than any other two arms in its band, and what a plan of it gives', () => {
    const planning = openWith(arms);
    const { usual, bands } = findNextStudy(planning);
    expect(bands.map(({ band }) => band)).toEqual(['light', 'heavy']);
    for (const { band, today, reserves, after, narrowing, left } of bands) {
      const planOf = (both: readonly number[]) =>
        planStudy(
          'parallel',
          both.map((reserve) => ({ load: band, reserve, people: usual.people / 2 })),
        );
      const found = expectPlan(planning, planOf(reserves)).bands.find((one) => one.band === band);
      expect(after).toEqual(found?.after);
      expect(today).toEqual(found?.today.shown);
      expect(narrowing).toBeCloseTo((found?.before.width ?? 0) - (after.width ?? 0), 12);
      expect(left).toBeCloseTo((after.width ?? 0) / (found?.before.width ?? 0), 12);
      for (const other of [
        [0, 2],
        [0, 4],
        [1, 8],
        [3, 5],
        [10, 10],
      ]) {
        const width = expectPlan(planning, planOf(other)).bands.find((one) => one.band === band)?.after?.width;
        expect(after.width, other.join()).toBeLessThanOrEqual(width ?? Number.POSITIVE_INFINITY);
      }
    }
  });

  it('gives an interval without an upper end the narrowest one where it can, and is not said where none would', () => {
    const opened = findNextStudy(openWith(between('P', 'S'))).bands;
    const heavy = opened.find(({ band }) => band === 'heavy');
    expect(heavy).toMatchObject({ narrowing: null, left: null, today: { high: null } });
    expect(heavy?.reserves[0]).toBe(0);
    expect(heavy?.after.width).toBeGreaterThan(0);
    expect(opened.find(({ band }) => band === 'light')?.left).toBeLessThan(1);
    expect(findNextStudy(openWith(between('A', 'F'))).bands.map(({ band }) => band)).toEqual(['heavy']);
  });

  it('is not said where no curve is fitted', () => {
    expect(findNextStudy(openWith(between('A', 'D'))).bands).toEqual([]);
  });
});
