/** Kept shares on lines whose interval Fieller's quadratic gives: the ratio of two normal variables. */
import { describe, expect, it } from 'vitest';
import { inferKeptShare } from '../../src/model/keptShare.ts';
import { expectRelative, expectWithin } from '../support/closeness.ts';
import { fieller, knownInference } from '../support/knownInference.ts';

/** t of 95 % with 10 degrees of freedom, as printed. */
const T = 2.228139;

/** Growth done and growth at failure as two coefficients of their own. */
const shareOf = (done: number, atFailure: number, errors: readonly [number, number], together = 0) =>
  inferKeptShare(
    knownInference(
      [done, atFailure],
      [
        [errors[0] ** 2, together],
        [together, errors[1] ** 2],
      ],
      10,
    ),
    [1, 0],
    [0, 1],
    0.95,
  );

describe('the share of growth that is kept', () => {
  it.each([
    [0.07, 0.08, [0.005, 0.006], 2e-5],
    [0.09, 0.08, [0.005, 0.006], -1e-5],
    [-0.01, 0.05, [0.004, 0.01], 0],
    [0.2, 0.05, [0.004, 0.015], 0],
  ] as const)('of %d against %d has Fieller’s interval', (done, atFailure, errors, together) => {
    const found = shareOf(done, atFailure, errors, together);
    const { low, high } = fieller([done, -atFailure], [errors[0] ** 2, -together, errors[1] ** 2], T);
    expectRelative(found?.estimate ?? Number.NaN, done / atFailure, 1e-14, 'estimate');
    expectWithin(found?.low ?? Number.NaN, low, 1e-5, 'low');
    expectWithin(found?.high ?? Number.NaN, high, 1e-5, 'high');
  });

  it('is all of it where the same is done, without uncertainty', () => {
    const inference = knownInference(
      [0.08, -0.004],
      [
        [3.6e-5, 0],
        [0, 1e-6],
      ],
      10,
    );
    expect(inferKeptShare(inference, [1, 0], [1, 0], 0.95)).toEqual({ estimate: 1, low: 1, high: 1 });
    // One number alike of two is another thing.
    expect(inferKeptShare(inference, [1, 2], [1, 0], 0.95)?.low).toBeLessThan(0.95);
    expect(inferKeptShare(inference, [1, 2], [1, 0], 0.95)?.estimate).toBeCloseTo(0.9, 12);
  });

  it('has no end beyond twenty times the growth at failure, and one that is less far', () => {
    // Growth at failure of T + 1 % of its errors: shares of any size are hardly rejected.
    const error = 0.05 / (T * 1.001);
    const { high } = fieller([0.05, -0.05], [1e-6, 0, error ** 2], T);
    expect(high).toBeGreaterThan(100);
    expect(shareOf(0.05, 0.05, [0.001, error])).toMatchObject({ high: null });
    const nearer = 0.05 / (T * 1.12);
    const end = fieller([0.05, -0.05], [1e-6, 0, nearer ** 2], T).high;
    expect(end).toBeGreaterThan(8);
    expect(end).toBeLessThan(12);
    expectRelative(shareOf(0.05, 0.05, [0.001, nearer])?.high ?? Number.NaN, end, 1e-4, 'high');
    expect(shareOf(-0.05, 0.05, [0.001, error])).toMatchObject({ low: null });
  });

  it('does not exist where growth at failure may be none', () => {
    expect(shareOf(0.05, 0.05, [0.001, (0.05 / T) * 1.0001])).toBeNull();
    expect(shareOf(0.05, 0.05, [0.001, (0.05 / T) * 0.9999])).not.toBeNull();
    expect(shareOf(0.05, -0.05, [0.001, 0.001])).toBeNull();
  });
});
