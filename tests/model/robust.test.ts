/** Inference on contrasts of coefficients whose covariance and degrees of freedom are known; quantiles as printed in tables. */
import { describe, expect, it } from 'vitest';
import { applyContrast, inferContrast, makeAcceptance, measureContrast, toScores } from '../../src/model/robust.ts';
import { expectRelative, expectWithin } from '../support/closeness.ts';
import { knownInference } from '../support/knownInference.ts';

/** Quantiles of t, 97.5 %, by degrees of freedom (Fisher & Yates; the normal one is 1.959964). */
const PRINTED: readonly [df: number, t: number][] = [
  [1, 12.7062],
  [2, 4.302653],
  [4, 2.776445],
  [10, 2.228139],
  [30, 2.042272],
  [120, 1.97993],
];
const of = (df: number, coefficients = [3, -2]) =>
  knownInference(
    coefficients,
    [
      [4, -1],
      [-1, 9],
    ],
    df,
  );

describe('a contrast', () => {
  it('has the estimate, error and df of its quadratic forms', () => {
    // 2·3 + 0.5·(−2) = 5; 4·4 + 2·2·0.5·(−1) + 0.25·9 = 16.25.
    const found = inferContrast(of(10), [2, 0.5], 0.95);
    expectWithin(found.estimate, 5, 1e-15, 'estimate');
    expectRelative(found.standardError, Math.sqrt(16.25), 1e-15, 'standard error');
    expectRelative(found.df, 10, 1e-12, 'df');
    expectRelative(found.ciLow, 5 - 2.228139 * Math.sqrt(16.25), 1e-6, 'low');
    expectRelative(found.ciHigh, 5 + 2.228139 * Math.sqrt(16.25), 1e-6, 'high');
    expect(measureContrast(of(10), [2, 0.5])).toEqual({
      estimate: found.estimate,
      standardError: found.standardError,
      df: found.df,
    });
    expect(applyContrast([2, 0.5], Float64Array.of(3, -2))).toBe(5);
  });

  it('has p 0.05 at the printed quantile, on either side of 0', () => {
    for (const [df, t] of PRINTED) {
      expectWithin(inferContrast(of(df, [2 * t, 0]), [1, 0], 0.95).p, 0.05, 2e-7, `df ${df}`);
      expectWithin(inferContrast(of(df, [-2 * t, 0]), [1, 0], 0.95).p, 0.05, 2e-7, `df ${df}, below`);
    }
  });

  it('of exactly nothing is no evidence, without any error too', () => {
    const exact = knownInference([0], [[0]], 5);
    expect(inferContrast(exact, [1], 0.95)).toMatchObject({ estimate: 0, standardError: 0, p: 1 });
    expect(makeAcceptance(exact, 0.95)([1])).toBe(true);
    expect(inferContrast(of(10, [0, 0]), [1, 0], 0.95).p).toBe(1);
  });

  it('with a variance that rounding took below 0 has no error, not none that can be written', () => {
    expect(inferContrast(knownInference([1], [[-1e-20]], 5), [1], 0.95).standardError).toBe(0);
  });

  it('is brought to the coordinates of the whitened design: R transposed times its scores is the contrast', () => {
    const root = Float64Array.of(2, 3, 0, 4);
    const [first, second] = toScores({ root, p: 2 }, [1, -1]);
    expectWithin(2 * first, 1, 1e-15, 'first');
    expectWithin(3 * first + 4 * second, -1, 1e-15, 'second');
  });
});

describe('the acceptance of a contrast', () => {
  it.each(PRINTED)('with %d df ends at the printed quantile %d', (df, t) => {
    for (const side of [1, -1]) {
      const at = (reach: number) => makeAcceptance(of(df, [side * 2 * t * reach, 0]), 0.95)([1, 0]);
      expect([at(1 - 1e-6), at(1 + 1e-6)], `side ${side}`).toEqual([true, false]);
    }
  });

  it('says what the interval says, whatever the level, the df and the estimate', () => {
    for (const confidence of [0.5, 0.8, 0.9, 0.95, 0.99]) {
      for (const df of [1, 1.7, 3, 8, 40, 500]) {
        for (let estimate = -70; estimate <= 70; estimate += 0.7) {
          const inference = of(df, [estimate, 0]);
          const { ciLow, ciHigh } = inferContrast(inference, [1, 0], confidence);
          const label = `${confidence}, ${df} df, ${estimate}`;
          expect(makeAcceptance(inference, confidence)([1, 0]), label).toBe(ciLow <= 0 && ciHigh >= 0);
        }
      }
    }
  });
});
