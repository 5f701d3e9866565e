/** People needed, best placement and the map's numbers, against looking at every number and every way. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../../src/evidence/table.ts';
import { findBestPlacement, type PlacementQuestion } from '../../../src/model/plan/bestPlacement.ts';
import { expectPlan } from '../../../src/model/plan/expectPlan.ts';
import { mapGains } from '../../../src/model/plan/mapGains.ts';
import { findPeople } from '../../../src/model/plan/peopleNeeded.ts';
import { planStudy } from '../../../src/model/plan/plannedStudy.ts';
import { openPlanning } from '../../../src/model/plan/planningBase.ts';
import type { BandName } from '../../../src/model/result.ts';
import { defaultSettings } from '../../../src/model/settings.ts';

const shipped = readArms(readFileSync(new URL('../../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv').arms;
const planning = openPlanning(shipped, defaultSettings);
const armsOf = (reserves: readonly number[], people: number, load: BandName = 'light') =>
  planStudy(
    'parallel',
    reserves.map((reserve) => ({ reserve, load, people })),
  );
const widthOf = (plan: ReturnType<typeof armsOf>, name: BandName = 'light') =>
  expectPlan(planning, plan).bands.find(({ band }) => band === name)?.after?.width ?? Number.NaN;

describe('people needed', () => {
  it('are the fewest: one less is not enough', () => {
    const { perArm, people, after, reason, limit } = findPeople(planning, armsOf([0, 2], 0), 'light', 0.75);
    expect(reason).toBeNull();
    expect(people).toBe(2 * (perArm ?? 0));
    expect(widthOf(armsOf([0, 2], perArm ?? 0))).toBe(after?.width);
    expect(after?.width).toBeLessThanOrEqual(0.75);
    expect(widthOf(armsOf([0, 2], (perArm ?? 0) - 1))).toBeGreaterThan(0.75);
    expect(limit?.width).toBeLessThan(0.75);
  });

  it('are none where the interval is as narrow already', () => {
    expect(findPeople(planning, armsOf([0, 2], 0), 'light', 1)).toMatchObject({ perArm: 0, people: 0, reason: null });
  });

  it('are no number where τ² leaves more, and the limit is told', () => {
    const needed = findPeople(planning, armsOf([0, 2], 0), 'light', 0.3);
    expect(needed).toMatchObject({ perArm: null, people: null, after: null });
    expect(needed.limit?.width).toBe(widthOf(armsOf([0, 2], 100_000)));
    expect(needed.reason).toContain(`even without end it leaves it about ${needed.limit?.width?.toFixed(2)} wide`);
  });

  it('say where every larger number that was tried is enough too', () => {
    expect(findPeople(planning, armsOf([0, 2], 0), 'light', 0.75).isEnoughFromThere).toBe(true);
    expect(findPeople(planning, armsOf([0, 2], 0), 'light', 1).isEnoughFromThere).toBeNull();
  });

  it.each([
    // Of rows that all weigh the same, the width goes 1.825, 1.799, 1.809, 1.822 at 3, 5, 10 and 20 people.
    ['equal', [2, 4], 5, 1.8],
    // By precision it goes up and down: 1.77 at 80 people, 1.99 at 320, 1.62 at 640, 2.20 without end.
    ['precision', [3, 3], 640, 1.63],
    // By the site's own choices it is 0.902 at 3 people, 0.905 at 10, 0.945 without end.
    ['mixed', [5, 10], 20, 0.905],
  ] as const)('weights %s, arms at %j: are found where more people widen it again', (weighting, at, own, width) => {
    const weighed = openPlanning(shipped, { ...defaultSettings, weighting });
    const { perArm, after, before, limit, isEnoughFromThere } = findPeople(weighed, armsOf(at, own), 'light', width);
    expect(perArm).not.toBeNull();
    expect(perArm).toBeLessThanOrEqual(own);
    expect(before.width).toBeGreaterThan(width);
    expect(after?.width).toBeLessThanOrEqual(width);
    expect(limit?.width).toBeGreaterThan(width);
    expect(isEnoughFromThere).toBe(false);
  });

  it('are sought among the plan’s own people, beside those that are tried of every plan', () => {
    // By precision the width is 1.602 at 600 people, 1.624 at 640, which is tried of every plan, and more on both sides.
    const weighed = openPlanning(shipped, { ...defaultSettings, weighting: 'precision' });
    expect(findPeople(weighed, armsOf([3, 3], 20), 'light', 1.605).perArm).toBeNull();
    expect(findPeople(weighed, armsOf([3, 3], 600), 'light', 1.605).perArm).toBeLessThanOrEqual(600);
  });

  it('are said to be none of those tried where widths do not fall steadily, with the narrowest', () => {
    const { reason, perArm } = findPeople(planning, armsOf([5, 10], 20), 'light', 0.9);
    expect(perArm).toBeNull();
    expect(reason).toBe(
      'none of the numbers tried (3 to 100,000 in each arm) is enough for 0.9 in one such study: the narrowest, about 0.902 wide, is expected with 4 in each arm, and about 0.94 with people without end',
    );
  });

  it('are sought as far as a fit would be made', () => {
    // With people enough the study alone decides a covariate's slope, which no other study can check.
    const adjusting = openPlanning(shipped, {
      ...defaultSettings,
      weighting: 'precision',
      adjust: ['training-status', 'weekly-sets'],
    });
    const needed = findPeople(adjusting, armsOf([0, 10], 20, 'heavy'), 'heavy', 1.1);
    expect(needed).toMatchObject({ perArm: null, limit: null });
    expect(needed.reason).toMatch(
      /^none of the numbers tried \(3 to 57,926 in each arm\).*; with ever more people none can be foreseen \(with this study no fit would be made: /u,
    );
  });

  it('say what is wrong with a plan, and where no arm is in the band', () => {
    expect(findPeople(planning, armsOf([0, 99], 0), 'light', 0.5).reason).toBe(
      'arm 2: expected a reserve from 0 to 30, received 99',
    );
    expect(findPeople(planning, armsOf([0, 2], 0, 'heavy'), 'light', 0.5).reason).toBe(
      'the plan has no arm in this band',
    );
    expect(() => findPeople(planning, armsOf([0], 0), 'all', 0.5)).toThrow(
      'invalid band; not one of light, heavy: all',
    );
  });
});

const question: PlacementQuestion = {
  design: 'parallel',
  arms: 2,
  people: 40,
  band: 'light',
  furthest: 3,
  study: planStudy('parallel', []),
};

describe('the best placement', () => {
  const search = findBestPlacement(planning, question);

  it('is the narrowest of all ways, looked at one by one', () => {
    const ways = [0, 1, 2, 3].flatMap((a) => [0, 1, 2, 3].filter((b) => b >= a).map((b) => [a, b]));
    expect(search.tried).toBe(ways.length);
    const widths = ways.map((way) => widthOf(armsOf(way, 20)));
    expect(search.best[0].bands[0].after.width).toBe(Math.min(...widths));
    expect(search.best.map(({ left }) => left)).toEqual(search.best.map(({ left }) => left).sort((a, b) => a - b));
  });

  it('is no wider than with both arms on the best place of one, and that no wider than on any other', () => {
    const one = findBestPlacement(planning, { ...question, arms: 1 });
    const [{ reserve }] = one.best[0].plan.arms;
    const widths = [0, 1, 2, 3].map((other) => widthOf(armsOf([other], 40)));
    expect(widths[reserve]).toBe(Math.min(...widths));
    expect(search.best[0].bands[0].after.width).toBeLessThanOrEqual(widthOf(armsOf([reserve, reserve], 20)));
  });

  it('says what it costs', () => {
    const [{ plan, people, narrowing, narrowingPerPerson, bands }] = search.best;
    expect(people).toBe(40);
    expect(plan.arms.map((arm) => arm.people)).toEqual([20, 20]);
    expect(narrowing).toBe((bands[0].before.width ?? 0) - (bands[0].after.width ?? 0));
    expect(narrowingPerPerson).toBe(narrowing / 40);
  });

  it('over both bands is the best way of their parts', () => {
    const both = findBestPlacement(planning, { ...question, band: null });
    // Two bands of four reserves: eight places, 36 ways.
    expect(both.tried).toBe(36);
    const [first] = both.best;
    expect(first.left).toBeCloseTo(
      first.bands.reduce((product, { before, after }) => (product * (after.width ?? 0)) / (before.width ?? 1), 1),
      12,
    );
    expect(first.left).toBeLessThanOrEqual(search.best[0].left);
  });

  it('needs people enough, and a fit', () => {
    expect(findBestPlacement(planning, { ...question, people: 5 }).reason).toBe(
      '5 people are too few for 2 arms of 3 at least',
    );
    expect(findBestPlacement(openPlanning([], defaultSettings), question).reason).toMatch(/no curve is fitted today/u);
  });
});

describe('the map’s numbers', () => {
  const gains = mapGains(planning, 'light', 40);

  it('stand in every cell of the band, the same at every load', () => {
    // Lines at every 5 % from 20 to 60, ten cells of reserve.
    expect(gains.cells).toHaveLength(8 * 10);
    expect(gains.cells.filter(({ reserve }) => reserve[0] === 2).map(({ narrowing }) => narrowing)).toEqual(
      Array.from({ length: 8 }, () => gains.cells[2].narrowing),
    );
    expect(mapGains(planning, 'heavy', 40).cells.every(({ load }) => load[0] >= 60)).toBe(true);
  });

  it('are those of the plan: half of the people at failure, half in the cell', () => {
    const cell = gains.cells[3];
    expect(cell.after?.width).toBe(widthOf(armsOf([0, 3], 20)));
    expect(cell.narrowing).toBe((gains.before.width ?? 0) - (cell.after?.width ?? 0));
    expect(cell.share).toBe((cell.narrowing ?? 0) / (gains.before.width ?? 1));
  });

  it('differ with the load where load is adjusted for', () => {
    const adjusted = mapGains(
      openPlanning(shipped, { ...defaultSettings, adjust: ['load'] }),
      'heavy',
      40,
    ).cells.filter(({ reserve }) => reserve[0] === 2);
    expect(new Set(adjusted.map(({ narrowing }) => narrowing)).size).toBeGreaterThan(1);
  });

  it('are none where people are too few or no curve is fitted, with the reason', () => {
    expect(mapGains(planning, 'light', 4)).toMatchObject({
      cells: [],
      reason: '4 people are too few for two arms of 3 at least',
    });
    expect(mapGains(openPlanning(shipped.slice(0, 9), defaultSettings), 'light', 40).reason).toMatch(
      /no curve is fitted/u,
    );
  });
});
