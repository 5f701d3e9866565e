/**
 * A lifter's judgement from test sets of their own: the shrunk mean by hand and by the posterior on a grid (a slow,
 * plain way; tolerance 1e-6, the grid's), its limits, and by simulation under the prior its squared error against
 * that of the raw mean and of the published one.
 */
import { describe, expect, it } from 'vitest';
import { makeRandom } from '../../src/numerics/random.ts';
import { advise } from '../../src/practice/advice.ts';
import {
  PUBLISHED_JUDGEMENT,
  sayTarget,
  stateDifference,
  stateShift,
  TAKEN_AS_SAID,
} from '../../src/practice/judgement.ts';
import { judgeOwn, stateOwn, type TestSet } from '../../src/practice/ownJudgement.ts';
import { analysis as shipped } from './programme/shipped.ts';
import { at } from './setAt.ts';

const { bias: MU, spread: TAU } = PUBLISHED_JUDGEMENT;
const erring = (...errors: number[]): TestSet[] => errors.map((error) => ({ said: 5, done: 5 + error }));

/** Mean and SD of θ given the errors, σ known, by summing the posterior over a grid. */
function posteriorOnGrid(errors: readonly number[], sigma: number) {
  const grid = Array.from({ length: 40_001 }, (_, i) => -20 + i / 1000);
  const logs = grid.map(
    (theta) =>
      -((theta - MU) ** 2) / (2 * TAU ** 2) -
      errors.reduce((sum, error) => sum + (error - theta) ** 2 / (2 * sigma ** 2), 0),
  );
  const top = logs.reduce((a, b) => Math.max(a, b));
  const weights = logs.map((log) => Math.exp(log - top));
  const total = weights.reduce((a, b) => a + b);
  const mean = grid.reduce((sum, theta, i) => sum + theta * weights[i], 0) / total;
  const variance = grid.reduce((sum, theta, i) => sum + (theta - mean) ** 2 * weights[i], 0) / total;
  return { mean, sd: Math.sqrt(variance) };
}

describe('judgement from own test sets', () => {
  it('without a set is the published one, and says so', () => {
    expect(judgeOwn([])).toMatchObject({ ...PUBLISHED_JUDGEMENT, ownMean: null, standardError: TAU, weight: 0 });
    expect(stateOwn(judgeOwn([]))).toMatch(/^No test set yet: 0\.95 more done than said/u);
  });

  it('of one set, whose σ is the published 1.45 as τ is, lies halfway', () => {
    // w = τ²/(τ² + σ²/1) = 1/2: (3 + 0.95)/2 = 1.975, SE = √(1.45²/2) = 1.0253.
    const judged = judgeOwn(erring(3));
    expect(judged.weight).toBeCloseTo(0.5, 12);
    expect(judged.bias).toBeCloseTo(1.975, 12);
    expect(judged.standardError).toBeCloseTo(1.45 / Math.SQRT2, 12);
    expect(judged.spread).toBe(TAU);
  });

  it('of four sets follows their own SD, pooled with the published one', () => {
    // Errors 0, 1, 2, 3: mean 1.5, squares 5. σ² = (2·2.1025 + 5)/5 = 1.841; of the mean 0.46025.
    // w = 2.1025/(2.1025 + 0.46025) = 0.820408; bias = 0.820408·1.5 + 0.179592·0.95 = 1.401224.
    const judged = judgeOwn(erring(0, 1, 2, 3));
    expect(judged.betweenSets ** 2).toBeCloseTo(1.841, 12);
    expect(judged.weight).toBeCloseTo(2.1025 / 2.56275, 12);
    expect(judged.bias).toBeCloseTo(1.401224, 6);
    expect(judged.spread ** 2).toBeCloseTo(judged.standardError ** 2 + 1.841, 12);
  });

  it.each([[[2]], [[-3, 1]], [[0, 0, 0]], [[4, -2, 1, 1, 0]]])('of errors %j is the posterior on a grid', (errors) => {
    const judged = judgeOwn(erring(...errors));
    const { mean, sd } = posteriorOnGrid(errors, judged.betweenSets);
    expect(Math.abs(judged.bias - mean)).toBeLessThan(1e-6);
    expect(Math.abs(judged.standardError - sd)).toBeLessThan(1e-6);
  });

  it('of many sets is the lifter’s own mean and spread, and of the same error in few is not sure of it', () => {
    const errors = Array.from({ length: 4000 }, (_, i) => (i % 2 === 0 ? -2 : -4));
    const many = judgeOwn(erring(...errors));
    expect(Math.abs(many.bias + 3)).toBeLessThan(0.002);
    expect(Math.abs(many.spread - 1)).toBeLessThan(0.002);
    expect(stateOwn(many)).toMatch(/3\.0 fewer done than said on average.*fewer left than they say is fairly sure/u);
    const few = judgeOwn(erring(2, 2, 2));
    expect(few.standardError).toBeGreaterThan(0.5);
    expect(few.bias).toBeLessThan(2);
  });

  it('does not depend on the order of the sets, and moves with them', () => {
    const sets = erring(3, 0, 1, 4);
    expect(judgeOwn([...sets].reverse()).bias).toBeCloseTo(judgeOwn(sets).bias, 12);
    expect(judgeOwn(erring(3, 0, 1, 5)).bias).toBeGreaterThan(judgeOwn(sets).bias);
  });

  it('has under the prior a smaller squared error than the raw mean and than the published one', () => {
    const random = makeRandom(1975);
    for (const [n, sigma] of [
      [1, 1],
      [2, 1.45],
      [3, 1],
      [6, 1.45],
    ]) {
      const sums = { shrunk: 0, raw: 0, published: 0, claimed: 0 };
      const runs = 6000;
      for (let run = 0; run < runs; run++) {
        const theta = MU + TAU * random.normal();
        // Counts are whole and none is below 0: 15 said leaves room for every error, and rounding is part of the test.
        const errors = Array.from({ length: n }, () => Math.max(-15, Math.round(theta + sigma * random.normal())));
        const judged = judgeOwn(errors.map((error) => ({ said: 15, done: Math.min(30, 15 + error) })));
        sums.shrunk += (judged.bias - theta) ** 2;
        sums.raw += ((judged.ownMean ?? 0) - theta) ** 2;
        sums.published += (MU - theta) ** 2;
        sums.claimed += judged.standardError ** 2;
      }
      const place = `${n} sets, σ ${sigma}`;
      expect(sums.shrunk, place).toBeLessThan(sums.raw);
      expect(sums.shrunk, place).toBeLessThan(sums.published);
      // The standard error claims no more than is so: 10 % for the draws and the rounding of repetitions.
      expect(sums.claimed / sums.shrunk, place).toBeGreaterThan(0.9);
    }
  });

  it.each([
    [{ said: 2.5, done: 3 }, '2.5'],
    [{ said: -1, done: 3 }, '-1'],
    [{ said: 2, done: 31 }, '31'],
    [{ said: Number.NaN, done: 3 }, 'NaN'],
  ])('refuses %j with what it saw', (set, seen) => {
    expect(() => judgeOwn([set])).toThrow(
      `invalid test set; expected whole repetitions from 0 to 30, received ${seen}`,
    );
  });
});

describe('what follows a lifter’s judgement', () => {
  it('is the number, the range and the targets to say alike, and the share kept is that of what is left', () => {
    const judgement = judgeOwn(erring(2, 3, 2, 1, 2, 3));
    const [exact, own] = [advise(shipped, at(80)), advise(shipped, { ...at(80), judgement })];
    expect(own.target).toEqual(exact.target);
    const said = sayTarget(own.target, judgement);
    expect(said?.shown.point).toBeCloseTo((exact.target.point ?? 0) - judgement.bias, 1);
    expect(own.reserve).toEqual(said?.whole);
    const kept = (from: typeof own, reserve: number) => from.choices.find((one) => one.reserve === reserve)?.kept.share;
    expect(kept(own, 1)?.estimate).toBeLessThan(kept(exact, 1)?.estimate ?? 0);
    // By hand: mean 13/6, σ² = (2·2.1025 + 2.8333)/7 = 1.00548, w = 0.92619, bias 2.0769.
    expect(judgement.bias).toBeCloseTo(2.0769, 4);
    expect(stateShift(judgement)).toMatch(/About 2\.1 repetitions more are really left/u);
  });

  it('is told as it is rounded by hand: the published 0.95 as 1.0, and to either side alike', () => {
    const told = (bias: number) => stateDifference({ bias, spread: 1 });
    expect(told(PUBLISHED_JUDGEMENT.bias)).toBe('About 1.0 repetitions more are really left than are said.');
    expect(told(-0.35)).toBe('About 0.4 repetitions fewer are really left than are said.');
    expect(told(-0.04)).toBe('As many repetitions are left as are said.');
    expect(stateShift({ bias: -0.04, spread: 1 })).toBeNull();
    // 7 of 20 sets one more than said: 0.35 on average.
    const mean = judgeOwn(erring(...Array.from({ length: 20 }, (_, i) => (i < 7 ? 1 : 0))));
    expect(stateOwn(mean)).toMatch(/^20 test sets: 0\.4 more done than said on average/u);
  });

  it('moves nothing where nothing is misjudged', () => {
    const { target } = advise(shipped, at(80));
    expect(sayTarget(target, TAKEN_AS_SAID)).toEqual({ shown: target.shown, whole: target.whole });
    expect(stateShift(TAKEN_AS_SAID)).toBeNull();
    expect(sayTarget({ ...target, point: null }, TAKEN_AS_SAID)).toBeNull();
  });

  it('raises the least safe number by what the sets showed, unshrunk', () => {
    const exercise = { ...at(80).exercise, canPin: true };
    // One set of 2 fewer than said is shrunk to (0.95 − 2)/2 = −0.525; safety reckons with 2: 1 + 2 = 3.
    const judgement = judgeOwn(erring(-2));
    expect(judgement.bias).toBeCloseTo(-0.525, 12);
    expect(advise(shipped, { ...at(80), exercise, judgement }).reserve?.least).toBeGreaterThanOrEqual(3);
  });
});
