/** Where nothing can be said of a planned study, it is said why, and whether the study would change that. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { drawTable, toArms } from '../../../scripts/measure/planTables.ts';
import { readArms } from '../../../src/evidence/table.ts';
import { chanceOfMove, expectKept, expectTarget, shareWholes } from '../../../src/model/plan/expectedTarget.ts';
import { expectPlan } from '../../../src/model/plan/expectPlan.ts';
import { mapGains } from '../../../src/model/plan/mapGains.ts';
import { findNextStudy } from '../../../src/model/plan/nextStudy.ts';
import { findPeople } from '../../../src/model/plan/peopleNeeded.ts';
import { checkPlan, countPlanned, type PlannedStudy, planStudy } from '../../../src/model/plan/plannedStudy.ts';
import { openPlanning } from '../../../src/model/plan/planningBase.ts';
import { simulatePlan } from '../../../src/model/plan/simulatePlan.ts';
import { listUsualMeasures } from '../../../src/model/plan/usualMeasure.ts';
import { defaultSettings } from '../../../src/model/settings.ts';
import { makeRandom } from '../../../src/numerics/random.ts';
import { expectWithin } from '../../support/closeness.ts';
import { makeArms } from '../../support/tables.ts';

const shipped = readArms(readFileSync(new URL('../../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv').arms;
const settings = { ...defaultSettings, split: null };
const planAt = (reserves: readonly number[], people = 20): PlannedStudy => ({
  ...planStudy(
    'parallel',
    reserves.map((reserve) => ({ reserve, load: 50, people })),
  ),
  coefficientOfVariation: 0.14,
  correlation: 0.95,
});
const bandOf = (arms: Parameters<typeof openPlanning>[0], plan: PlannedStudy, of = settings) =>
  expectPlan(openPlanning(arms, of), plan).bands[0];

describe('a band without a fit', () => {
  it('of no rows says so, and that a study does not make one', () => {
    expect(expectPlan(openPlanning([], settings), planAt([0, 4])).problems).toEqual([
      'no row of growth is in the table',
    ]);
  });

  it('of one study is not made with one more; of two a fit may be made, but no target; no interval is invented', () => {
    const one = bandOf(drawTable('line', 'spread', 1, 4), planAt([0, 4]));
    expect(one).toMatchObject({ after: null, chanceOfMove: null, narrowing: null });
    expect(one.reason).toMatch(
      /no curve is fitted today: .*With this study no fit is made either: 2 studies are left/u,
    );
    const two = bandOf(drawTable('line', 'spread', 2, 4), planAt([0, 2, 4, 8]), { ...settings, curve: 'line' });
    expect(two.after).toBeNull();
    expect(two.reason).toMatch(
      /With this study a fit may be made; a target needs 4 studies and there would be 3 studies$/u,
    );
    // Four coefficients need four studies whose errors differ.
    const flexible = bandOf(drawTable('line', 'spread', 2, 4), planAt([0, 2, 4, 8]));
    expect(flexible.reason).toMatch(/With this study no fit is made either: .* leave a part of the fit without error/u);
  });

  it('in which one study decides may get a fit by a second study at the same reserve', () => {
    const { observations, reserves } = farStudy();
    const { after, today, reason } = bandOf(toArms({ observations, reserves }), planAt([0, 20]));
    expect(today.reason).toMatch(/study S0 alone decides/u);
    expect(after).toBeNull();
    expect(reason).toMatch(/With this study a fit may be made$/u);
  });
});

describe('a band in which nobody trained to reserve 0', () => {
  const short = shipped.filter(({ reserve_reps }) => reserve_reps !== null && reserve_reps >= 2);
  const planning = openPlanning(short, defaultSettings);

  it('does not foresee what an arm nearer to failure would find: the curve ends before', () => {
    for (const reserve of [0, 1, 1.9]) {
      const [light] = expectPlan(planning, planAt([reserve, 4])).bands;
      expect(light).toMatchObject({ after: null, narrowing: null, chanceOfMove: null, kept: [] });
      expect(light.reason).toBe(
        `what an arm with ${reserve} in reserve would find cannot be foreseen: nobody here trained to reserve 0, and the curve says nothing below 2, the least reserve studied`,
      );
      expect(simulatePlan(planning, planAt([reserve, 4]), 2, 1)).toEqual([]);
    }
    expect(findPeople(planning, planAt([0, 4]), 'light', 1)).toMatchObject({
      perArm: null,
      reason: expect.stringMatching(/cannot be foreseen: nobody here trained to reserve 0/u),
    });
    for (const { after, reason } of mapGains(planning, 'heavy', 50).cells) {
      expect(after).toBeNull();
      expect(reason).toMatch(/cannot be foreseen: nobody here trained to reserve 0/u);
    }
    expect(findNextStudy(planning).bands).toEqual([]);
  });

  it('stays without a target by arms where others trained, and has no share of growth to tell', () => {
    const [light] = expectPlan(planning, planAt([2, 4])).bands;
    expect(light.after).toMatchObject({ point: null, refused: 1 });
    expect(light.kept).toEqual([]);
    expect(simulatePlan(planning, planAt([2, 4]), 3, 1)).toMatchObject([{ band: 'light', after: { refused: 1 } }]);
  });
});

/** Six studies at 0, 2 and 4, of which the first alone also has an arm at 20. */
function farStudy() {
  const { normal } = makeRandom(5);
  const observations: { study: string; cohort: string; y: number; v: number }[] = [];
  const reserves: number[] = [];
  for (let k = 0; k < 6; k++) {
    const shift = 0.02 * normal();
    for (const reserve of k === 0 ? [0, 2, 4, 20] : [0, 2, 4]) {
      reserves.push(reserve);
      observations.push({
        study: `S${k}`,
        cohort: `a${reserve}`,
        y: 0.08 - 0.003 * reserve + shift + 0.008 * normal(),
        v: 1e-4,
      });
    }
  }
  return { observations, reserves };
}

describe('a target that is refused today', () => {
  it('with three studies may be there with a fourth, as often as in simulated studies', () => {
    // Only the number of studies stands in the way: growth at 0 is plain and so is the loss.
    const arms = drawTable('log', 'near', 3, 21);
    const planning = openPlanning(arms, { ...settings, curve: 'line' });
    const plan = planAt([0, 6], 40);
    const { before, after, reason, chanceOfMove: chance } = expectPlan(planning, plan).bands[0];
    expect(before).toMatchObject({ width: null, widthMissing: 'no-target', refused: 1 });
    expect(after?.refused).toBeLessThan(1);
    expect(reason).toMatch(/no target today; with this study there is one in \d+ of 100 outcomes/u);
    expect(chance).toBeCloseTo(1 - (after?.refused ?? 0), 12);
    expectWithin(after?.refused ?? Number.NaN, simulatePlan(planning, plan, 400, 3)[0].after.refused, 0.12, 'refused');
  });

  it('where no loss is seen is refused in some outcomes still, and the width is told only where most have one', () => {
    const flat = drawTable('line', 'spread', 6, 8).map((row) => ({
      ...row,
      effect: 0.07 + 0.2 * ((row.effect ?? 0) - 0.06) + 0.001 * (row.reserve_reps ?? 0),
    }));
    const planning = openPlanning(flat, settings);
    const { before, after } = expectPlan(planning, planAt([0, 5], 10)).bands[0];
    expect(before.widthMissing).toBe('no-target');
    expectWithin(
      after?.refused ?? Number.NaN,
      simulatePlan(planning, planAt([0, 5], 10), 400, 3)[0].after.refused,
      0.1,
      'refused',
    );
  });

  it('by a study that alone would decide a part of the curve, is said to be', () => {
    const { after, reason } = bandOf(drawTable('line', 'near', 8, 5), planAt([28], 100_000));
    expect(after).toBeNull();
    expect(reason).toMatch(/with this study no fit would be made: study planned study alone decides/u);
  });
});

describe('a plan', () => {
  it.each<[Partial<PlannedStudy>, string]>([
    [{ arms: [{ reserve: -1, load: 50, people: 10 }] }, 'arm 1: expected a reserve from 0 to 30, received -1'],
    [
      { arms: [{ reserve: 0, load: 0.75, people: 10 }] },
      'arm 1: expected a load above 1 and up to 100 % of 1RM, received 0.75',
    ],
    [
      { arms: [{ reserve: 0, load: 50, people: 2 }] },
      'arm 1: expected a whole number of people from 3 to 100000, or 0, received 2',
    ],
    [
      { arms: [{ reserve: 0, load: 'all', people: 10 }] },
      'arm 1: expected one of the bands that loads are told apart by (light, heavy), received all',
    ],
    [{ weeks: 0 }, 'expected weeks above 0 and up to 520, received 0'],
    [{ correlation: 1 }, 'expected a correlation between −1 and 1, received 1'],
    [{ coefficientOfVariation: 0 }, 'expected a coefficient of variation above 0 and below 10, received 0'],
    [{ measure: 'girth' }, 'no row of growth is by girth; measures are muscle thickness, cross-sectional area'],
    [
      { arms: Array.from({ length: 9 }, () => ({ reserve: 0, load: 50, people: 5 })) },
      'expected at most 8 arms, received 9',
    ],
  ])('with %o has its problem in words and nothing else', (change, problem) => {
    const result = expectPlan(openPlanning(shipped, defaultSettings), {
      ...planStudy('parallel', [{ reserve: 0, load: 50, people: 10 }]),
      ...change,
    });
    expect(result.problems).toEqual([problem]);
    expect(result.bands).toEqual([]);
  });

  it('within persons has as many people in every arm, and finds them once', () => {
    const arms = [10, 12].map((people) => ({ reserve: 0, load: 50, people }));
    expect(checkPlan(planStudy('within-person', arms), [])).toHaveLength(1);
    expect(checkPlan(planStudy('parallel', arms), [])).toEqual([]);
    expect([
      countPlanned(planStudy('parallel', arms)),
      countPlanned(planStudy('within-person', [arms[1], arms[1]])),
    ]).toEqual([22, 12]);
  });
});

describe('the usual spread of a measure', () => {
  it('is the median of the rows that print it, and says how many', () => {
    const [first] = listUsualMeasures(shipped, defaultSettings);
    expect(first).toMatchObject({ measure: 'muscle thickness', rows: 108, reason: null });
    expect(first.coefficientOfVariation).toMatchObject({ from: 'measure', rows: 84, studies: 22 });
    expect(first.correlation).toMatchObject({ from: 'measure', rows: 74, studies: 19 });
  });

  it('by hand: CVs 0.1 and 0.2 of two studies, no correlation but the setting', () => {
    const arms = makeArms([
      { study: 'A', baseline_mean: '40', baseline_sd: '4', correlation: '' },
      { study: 'B', baseline_mean: '40', baseline_sd: '8', correlation: '' },
      { study: 'C', measure: 'girth', baseline_mean: '40', baseline_sd: '12', correlation: '' },
    ]);
    const [thickness, girth] = listUsualMeasures(arms, defaultSettings);
    expect(thickness.coefficientOfVariation?.value).toBeCloseTo(0.15, 12);
    expect(thickness.correlation).toMatchObject({ value: 0.87, from: 'setting', rows: 0 });
    // One study of girth is too few: the median of all three.
    expect(girth.coefficientOfVariation).toMatchObject({ value: 0.2, from: 'all measures', rows: 3 });
  });

  it('is refused where fewer than two studies print an SD, and the plan may give one', () => {
    const arms = drawTable('line', 'spread', 8, 2);
    const plan = planStudy('parallel', [{ reserve: 0, load: 50, people: 10 }]);
    expect(expectPlan(openPlanning(arms, settings), plan).problems[0]).toMatch(
      /fewer than 2 studies of growth print a standard deviation/u,
    );
    expect(expectPlan(openPlanning(arms, settings), planAt([0])).problems).toEqual([]);
  });
});

describe('expected ends of intervals', () => {
  const whole = (least: number) => ({ least, most: least });
  it('are medians, an interval without an end wider than any other', () => {
    const outcomes = [
      { point: 1, low: 0, high: 2, whole: whole(1) },
      { point: 2, low: 1, high: 4, whole: whole(2) },
      { point: 3, low: 1, high: null, whole: whole(2) },
    ];
    expect(expectTarget(outcomes)).toEqual({
      point: 2,
      low: 1,
      high: 4,
      width: 3,
      widthMissing: null,
      refused: 0,
      unbounded: 1 / 3,
    });
    expect(expectTarget(outcomes.slice(1))).toMatchObject({
      high: null,
      width: null,
      widthMissing: 'no-upper-end',
      unbounded: 0.5,
    });
    const none = { point: null, low: null, high: null, whole: null };
    expect(expectTarget([...outcomes, none])).toMatchObject({ width: 3, refused: 0.25 });
    expect(expectTarget([outcomes[0], none, none])).toMatchObject({
      point: null,
      width: null,
      widthMissing: 'no-target',
    });
    const wholes = shareWholes([...outcomes, none]);
    expect(wholes).toEqual([
      { whole: whole(2), share: 0.5 },
      { whole: null, share: 0.25 },
      { whole: whole(1), share: 0.25 },
    ]);
    expect([chanceOfMove(whole(2), wholes), chanceOfMove(null, wholes), chanceOfMove(whole(9), wholes)]).toEqual([
      0.5, 0.75, 1,
    ]);
  });

  it('of growth kept too, on either side', () => {
    const kept = [
      { estimate: 0.9, low: null, high: 1 },
      { estimate: 0.8, low: 0.7, high: 0.9 },
      { estimate: 0.7, low: 0.5, high: 0.8 },
    ];
    expect(expectKept(2, kept)).toMatchObject({ reserve: 2, estimate: 0.8, low: 0.5, high: 0.9, refused: 0 });
    expect(expectKept(2, kept).width).toBeCloseTo(0.3, 12);
    expect(expectKept(2, [null, null, kept[0]])).toMatchObject({ width: null, widthMissing: 'no-growth' });
    expect(expectKept(2, [kept[0]])).toMatchObject({ low: null, width: null, widthMissing: 'no-end' });
  });
});
