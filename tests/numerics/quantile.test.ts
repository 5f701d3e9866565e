/** Quantiles of type 7 against R 4.2.2, quantile(c(1, 2, 4, 11), p). Rounding only. */
import { expect, it } from 'vitest';
import { quantileOfSorted } from '../../src/numerics/quantile.ts';
import { expectWithin } from '../support/closeness.ts';

it.each([
  [0, 1],
  [0.1, 1.3],
  [0.5, 3],
  [0.75, 5.75],
  [0.9, 8.9],
  [1, 11],
])('the quantile at %d of 1, 2, 4 and 11 is %d', (share, expected) => {
  expectWithin(quantileOfSorted([1, 2, 4, 11], share), expected, 1e-14, 'quantile');
});

it('of one value is that value, whatever the share', () => {
  expect([0, 0.3, 1].map((share) => quantileOfSorted([5], share))).toEqual([5, 5, 5]);
});
