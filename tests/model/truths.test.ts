/** Invented truths: targets as worked out by hand, growth that never rises, and tables that are drawn around them. */
import { describe, expect, it } from 'vitest';
import { LAYOUTS, type Layout, simulateGrowth, simulateTable } from '../../src/model/simulation.ts';
import { ALL_TRUTHS, FURTHER_TRUTHS, TRUTHS, trueTargetOf } from '../../src/model/truths.ts';
import { makeRandom } from '../../src/numerics/random.ts';

const STEP_SHARE = 0.2 + 1 / (1 + Math.exp(6));
const NO_SCATTER = { tau: 0, omega: 0, rho: 0.5 };

describe('true targets at a kept share of 0.9', () => {
  // A tenth of 0.0725 is 0.00725: each truth solved for the reserve at which so much is lost.
  it.each([
    [TRUTHS.line, 1.45],
    [TRUTHS.log, Math.expm1(0.00725 / 0.0225)],
    [TRUTHS.plateau, 2.5 + 0.00725 / 0.0075],
    [TRUTHS.saturating, 3 * Math.log(0.65 / 0.55)],
    [TRUTHS.parabola, Math.sqrt(14.5)],
    [TRUTHS['shallow line'], 0.00725 / 0.0021],
    [FURTHER_TRUTHS['square root'], (0.00725 / 0.016) ** 2],
    [FURTHER_TRUTHS['early corner'], 1.5 + 0.00725 / 0.0075],
    [FURTHER_TRUTHS['steep, then flat'], 0.00725 / 0.012],
    // A fifth of the step beyond where it stands at 0: its logit, 1.5 to a repetition, about 4.
    [FURTHER_TRUTHS.step, 4 + Math.log(STEP_SHARE / (1 - STEP_SHARE)) / 1.5],
    [FURTHER_TRUTHS['no loss'], Number.POSITIVE_INFINITY],
  ])('of truth %# are those worked out by hand', (growth, target) => {
    if (Number.isFinite(target)) expect(trueTargetOf(growth, 0.9)).toBeCloseTo(target, 9);
    else expect(trueTargetOf(growth, 0.9)).toBe(target);
  });
});

it.each(Object.entries(ALL_TRUTHS))('%s begins at the same growth and never rises', (_, growth) => {
  expect(growth(0)).toBe(0.0725);
  for (let r = 0.1; r <= 10; r += 0.1) expect(growth(r)).toBeLessThanOrEqual(growth(r - 0.1));
});

describe('simulated tables', () => {
  it('lie on the truth but for sampling errors, with an arm at 0 in every study', () => {
    const { observations, reserves } = simulateGrowth(TRUTHS.parabola, NO_SCATTER, 'near', 200, makeRandom(1));
    const z = observations.map(({ y, v }, i) => (y - TRUTHS.parabola(reserves[i])) / Math.sqrt(v));
    const meanSquare = z.reduce((sum, value) => sum + value * value, 0) / z.length;
    // Rows of an arm correlate, so that some 900 rows count as 600 at least: four errors of a variance of 1.
    expect(Math.abs(meanSquare - 1)).toBeLessThan(4 * Math.sqrt(2 / 600));
    const atFailure = new Set(observations.filter((_, i) => reserves[i] === 0).map(({ study }) => study));
    expect(atFailure.size).toBe(200);
  });

  it.each(Object.keys(LAYOUTS) as Layout[])('of the layout %s leave 1 to 10 repetitions', (layout) => {
    const draws = Array.from({ length: 1000 }, (_, i) => LAYOUTS[layout](i / 1000));
    expect(new Set(draws)).toEqual(new Set([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]));
    const near = draws.filter((reserve) => reserve <= 4).length;
    expect(near).toBe(layout === 'near' ? 900 : 400);
  });

  it('around a line are those around a truth that is this line', () => {
    const truth = { intercept: 0.0725, slope: -0.005, ...NO_SCATTER };
    expect(simulateTable(truth, 5, makeRandom(2))).toEqual(
      simulateGrowth((r) => 0.0725 - 0.005 * r, NO_SCATTER, 'spread', 5, makeRandom(2)),
    );
  });
});
