/**
 * Plans on hostile tables (scripts/measure/hostileTables.ts), seeded: 2 to 8 studies under all settings. Whatever the
 * table, every number is finite or missing with a reason, and the simulation goes through wherever something is
 * expected.
 */
import { expect, it } from 'vitest';
import { findUnsound } from '../../../scripts/measure/hostileChecks.ts';
import { drawHostileCase } from '../../../scripts/measure/hostileTables.ts';
import { expectPlan } from '../../../src/model/plan/expectPlan.ts';
import { mapGains } from '../../../src/model/plan/mapGains.ts';
import { type PlannedStudy, planStudy } from '../../../src/model/plan/plannedStudy.ts';
import { openPlanning } from '../../../src/model/plan/planningBase.ts';
import { simulatePlan } from '../../../src/model/plan/simulatePlan.ts';
import { makeRandom } from '../../../src/numerics/random.ts';

const FIRST = 600_001;
const TABLES = 150;
/** The map is looked at of one table in so many. */
const MAPPED = 10;

it('plans on hostile tables have answers that are finite or refused in words', () => {
  let told = 0;
  let refused = 0;
  for (let seed = FIRST; seed < FIRST + TABLES; seed++) {
    const { arms, settings } = drawHostileCase(seed);
    const { uniform } = makeRandom(seed);
    const planning = openPlanning(arms, settings);
    const reserves = Array.from({ length: 1 + Math.floor(4 * uniform()) }, () => Math.floor(16 * uniform()) / 2);
    const design = uniform() < 0.5 ? ('parallel' as const) : ('within-person' as const);
    const people = [3, 20, 5000][Math.floor(3 * uniform())];
    const plan: PlannedStudy = {
      ...planStudy(
        design,
        reserves.map((reserve) => ({ reserve, load: 30 + 60 * uniform(), people })),
      ),
      coefficientOfVariation: 0.15,
    };
    const expected = expectPlan(planning, plan);
    expect(findUnsound(expected), `seed ${seed}`).toEqual([]);
    for (const { arms: count, after, before, reason } of expected.bands) {
      if (after) told++;
      else refused++;
      expect(after !== null || reason !== null, `seed ${seed}`).toBe(true);
      if (count === 0 && after) expect(after).toEqual(before);
    }
    expect(findUnsound(simulatePlan(planning, plan, 3, seed)), `seed ${seed}`).toEqual([]);
    if (seed % MAPPED === 0)
      for (const { name } of planning.bands)
        expect(findUnsound(mapGains(planning, name, 20)), `seed ${seed}`).toEqual([]);
  }
  expect(told).toBeGreaterThan(TABLES / 4);
  expect(refused).toBeGreaterThan(TABLES / 4);
}, 300_000);
