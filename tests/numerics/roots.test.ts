/** Roots to the last places, against roots that are known and against bisection. */
import { describe, expect, it } from 'vitest';
import { bisect, findRoot, maximiseOnInterval } from '../../src/numerics/roots.ts';
import { expectRelative, expectWithin } from '../support/closeness.ts';

const CASES: readonly (readonly [string, (x: number) => number, number, number, number])[] = [
  ['x² − 2', (x) => x * x - 2, 0, 2, Math.SQRT2],
  ['2 − x², falling', (x) => 2 - x * x, 0, 2, Math.SQRT2],
  ['with low and high exchanged', (x) => x * x - 2, 2, 0, Math.SQRT2],
  ['a cube, flat at its root', (x) => (x - 0.3) ** 3, -1, 1, 0.3],
  ['ln x', (x) => Math.log(x), 1e-6, 1e6, 1],
  ['a step that is infinite on one side', (x) => (x < 5 ? Number.NEGATIVE_INFINITY : x - 4), 0, 9, 5],
];

describe('findRoot', () => {
  it.each(CASES)('finds the root of %s as bisection does, in fewer steps', (_, f, low, high, root) => {
    const left = Math.min(low, high);
    let steps = 0;
    const counted = (x: number) => {
      steps++;
      return f(x);
    };
    expectRelative(findRoot(counted, low, high), root, 1e-15, 'root');
    const fast = steps;
    steps = 0;
    expectRelative(
      bisect((x) => counted(x) > 0 === f(left) > 0, left, Math.max(low, high)),
      root,
      1e-15,
      'bisected',
    );
    expect(fast).toBeLessThanOrEqual(steps + 2);
  });

  it('takes few steps where the function is smooth', () => {
    let steps = 0;
    findRoot(
      (x) => {
        steps++;
        return Math.exp(x) - 3;
      },
      0,
      5,
    );
    expect(steps).toBeLessThan(16);
  });

  it('gives an end where the root is there, and NaN where the signs do not differ', () => {
    expect(findRoot((x) => x, 0, 1)).toBe(0);
    expect(findRoot((x) => x - 1, 0, 1)).toBe(1);
    expect(findRoot((x) => x + 1, 0, 1)).toBeNaN();
  });
});

describe('maximiseOnInterval', () => {
  it.each<[string, (x: number) => number, number]>([
    ['a hill inside', (x) => -((x - 3.7) ** 2), 3.7],
    ['a slope to the upper end', (x) => x, 10],
    ['a slope to the lower end', (x) => -x, 0],
    ['the higher of two hills', (x) => Math.max(1 - (x - 2) ** 2, 2 - (x - 8) ** 2), 8],
    ['a hill beside −∞', (x) => (x < 4 ? Number.NEGATIVE_INFINITY : -((x - 5) ** 2)), 5],
  ])('finds %s', (_what, f, at) => {
    const found = maximiseOnInterval(f, 0, 10);
    // Located to 1e-7 of the interval; near a smooth top rounding hides another 1e-8 or so.
    expectWithin(found.at, at, 2e-6, 'place');
    expect(found.value).toBe(f(found.at));
  });

  it('of an interval of one point is that point', () => {
    expect(maximiseOnInterval((x) => -x, 2, 2)).toEqual({ at: 2, value: -2 });
  });
});
