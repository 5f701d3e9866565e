/** The restricted cubic spline: values by hand from Harrell's formula, and what makes it restricted. */
import { describe, expect, it } from 'vitest';
import { type Knots, splineTerm, threeKnots } from '../../src/numerics/spline.ts';
import { expectWithin } from '../support/closeness.ts';

const KNOTS: Knots = [0, 2, 6];

describe('three knots', () => {
  it('stand at the 10th, 50th and 90th percentile, whatever the order of the sample', () => {
    // Of 0 to 10 the percentiles are 1, 5 and 9.
    expect(threeKnots([7, 0, 3, 10, 5, 2, 9, 1, 8, 4, 6])).toEqual([1, 5, 9]);
  });
});

describe('the spline term with knots at 0, 2 and 6', () => {
  it.each([
    // (x − 0)³ − (x − 2)³ · 6/4 + (x − 6)³ · 2/4, over 36.
    [1, 1 / 36],
    [4, (64 - 12) / 36],
    [8, (512 - 324 + 4) / 36],
  ])('at %d is %d', (x, expected) => {
    expectWithin(splineTerm(x, KNOTS), expected, 1e-14, 's');
  });

  it('is 0 before the first knot and straight after the last', () => {
    expect([-5, -1, 0].map((x) => splineTerm(x, KNOTS))).toEqual([0, 0, 0]);
    const [a, b, c] = [6, 10, 14].map((x) => splineTerm(x, KNOTS));
    expectWithin(c - b, b - a, 1e-13, 'rise over four');
  });

  it('has a second derivative that does not jump at a knot', () => {
    const h = 1e-3;
    const bend = (x: number) =>
      (splineTerm(x - h, KNOTS) - 2 * splineTerm(x, KNOTS) + splineTerm(x + h, KNOTS)) / h ** 2;
    // It changes by less than 1 a unit of x: over 4h by some 1e-3; rounding of the differences adds 1e-9.
    for (const knot of KNOTS) expectWithin(bend(knot + 2 * h), bend(knot - 2 * h), 4e-3, `bend at ${knot}`);
  });

  it('is not finite where knots coincide', () => {
    expect(splineTerm(3, [0, 2, 2])).not.toSatisfy(Number.isFinite);
    expect(splineTerm(3, [2, 2, 2])).toBeNaN();
  });
});
