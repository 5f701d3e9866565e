/** Intervals before and after: drawn as before, words with their numbers, and bands without a target. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../../src/evidence/table.ts';
import { plannedIntervals } from '../../../src/figures/plan/plannedIntervals.ts';
import {
  formatChance,
  formatExpected,
  listWholes,
  stateArms,
  stateNarrowing,
  statePerPeople,
  stateWidth,
} from '../../../src/figures/plan/planWords.ts';
import { answerPlan } from '../../../src/model/plan/planAnswer.ts';
import { planStudy } from '../../../src/model/plan/plannedStudy.ts';
import { openPlanning } from '../../../src/model/plan/planningBase.ts';
import { type SettingsInput, settingsSchema } from '../../../src/model/settings.ts';
import { drawPlot } from '../../../src/site/drawFigure.ts';
import { failOnWarnings } from '../../support/failOnWarnings.ts';
import { settleSvg } from '../../support/settleSvg.ts';

failOnWarnings();

const { arms } = readArms(readFileSync(new URL('../../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');

function figureOf(input: SettingsInput) {
  const settings = settingsSchema.parse(input);
  const planning = openPlanning(arms, settings);
  const plans = (
    [
      [0, 2],
      [0, 4, 4],
    ] as const
  ).map((reserves, i) => {
    const plan = planStudy(
      'parallel',
      reserves.map((reserve) => ({ load: 'light', reserve, people: 20 })),
    );
    const { expectation } = answerPlan(planning, plan);
    const [band] = expectation.bands;
    return { plan: (['A', 'B'] as const)[i], people: expectation.people, expectation: band };
  });
  const { before } = plans[0].expectation;
  return { before, plans, figure: plannedIntervals(before, plans, { band: 'light', settings, furthest: 10 }) };
}

describe('intervals before and after', () => {
  const { before, plans, figure } = figureOf({});

  it('are drawn as before', async () => {
    await expect(settleSvg(drawPlot(figure))).toMatchFileSnapshot('planned-intervals.svg');
  });

  it('have a line for today and one for each plan, told apart without colour, and the numbers in title and table', () => {
    const svg = drawPlot(figure);
    for (const name of ['today', 'with plan A', 'with plan B']) expect(svg).toContain(name);
    expect(figure.title).toMatch(
      /^Light loads: 0\.20 to 1\.11 today, about 0\.2\d to 0\.9\d with plan A \(40 people\), about .* with plan B \(60 people\)$/u,
    );
    const [today, a] = figure.table.rows;
    expect(today).toEqual(['today', '', '0.36', '0.20 to 1.11', stateWidth(before), '']);
    expect(a[4]).toBe(stateWidth(plans[0].expectation.after ?? before));
    for (const row of figure.table.rows) expect(row).toHaveLength(figure.table.columns.length);
    expect(figure.alternative).toContain(figure.title);
  });

  it('without an upper end are drawn to the largest reserve studied, which is said', () => {
    const open = figureOf({ keptShare: 0.6 }).figure;
    expect(open.title).toMatch(/at least [\d.]+ today/u);
    expect(open.caption).toContain('Intervals without an upper end are drawn to the largest reserve studied.');
    expect(open.table.rows[0][4]).toBe('no upper end');
  });

  it('where nothing is fitted say so, and why', () => {
    const names = [...new Set(arms.map(({ study }) => study))];
    const { figure: none } = figureOf({ include: { withoutStudies: names.slice(0, 30) } });
    expect(none.title).toBe(
      'Light loads: no target today, not foreseeable with plan A (40 people), not foreseeable with plan B (60 people)',
    );
    expect(none.caption).toMatch(/Plan A: no interval can be foreseen, since no curve is fitted today/u);
    expect(none.table.rows.map((row) => row[2])).toEqual(['none', 'none', 'none']);
  });
});

describe('the words of a plan', () => {
  const target = { point: 1, low: 0.5, high: 2, width: 1.5, widthMissing: null, refused: 0, unbounded: 0 };

  it('say an interval, a width, and why there is none', () => {
    expect(formatExpected(target)).toBe('1.00 (0.50 to 2.00)');
    const open = { ...target, high: null, width: null, widthMissing: 'no-upper-end' as const };
    expect([formatExpected(open), stateWidth(open)]).toEqual(['1.00 (at least 0.50)', 'no upper end']);
    const none = { ...open, point: null, low: null, widthMissing: 'no-target' as const };
    expect([formatExpected(none), stateWidth(none)]).toEqual(['no target', 'no target']);
  });

  it('say what is gained, nothing gained, and lost', () => {
    expect(stateNarrowing(0.3, target, target)).toBe('narrower by 0.30 (20\u00a0%)');
    expect(stateNarrowing(-0.3, target, target)).toBe('wider by 0.30 (20\u00a0%)');
    expect(stateNarrowing(0.004, target, target)).toBe('as wide as today, to a hundredth');
    expect(stateNarrowing(-0.01, { ...target, width: 2.5 }, target)).toBe('wider by 0.01 (less than 1\u00a0%)');
    const none = { ...target, point: null, low: null, high: null, width: null, widthMissing: 'no-target' as const };
    const open = { ...target, high: null, width: null, widthMissing: 'no-upper-end' as const };
    expect(stateNarrowing(null, none, none)).toBe('cannot be said: no target today, no target expected');
    expect(stateNarrowing(null, open, target)).toBe('cannot be said: no upper end today, 1.50 wide expected');
    expect([0.00432, -0.00043, 1e-9, -1e-9, 0, null].map(statePerPeople)).toEqual([
      '0.043 narrower',
      '0.0043 wider',
      'less than 0.001 narrower',
      'less than 0.001 wider',
      'as wide',
      'cannot be said',
    ]);
  });

  it('say chances in outcomes of a hundred, never 0 where there is one', () => {
    expect([0, 0.004, 0.116].map(formatChance)).toEqual(['none of 100', 'fewer than 1 of 100', 'about 12 of 100']);
    const whole = (least: number, most: number) => ({ least, most });
    expect(
      listWholes([
        { whole: whole(2, 3), share: 0.9 },
        { whole: null, share: 0.08 },
        { whole: whole(1, 1), share: 0.02 },
      ]),
    ).toBe('2 to 3 in 90 of 100, no target in 8 of 100, others more seldom');
  });

  it('name the arms by their loads', () => {
    expect(
      stateArms([
        { load: 'light', reserve: 0 },
        { load: 'light', reserve: 2.5 },
        { load: 75, reserve: 4 },
      ]),
    ).toBe('0 and 2.5 in reserve with light loads, 4 with 75\u00a0% of 1RM');
    expect(stateArms([])).toBe('no arms');
  });
});
