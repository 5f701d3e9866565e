/**
 * Distribution functions against R 4.2.2 (qt, pt, qnorm, qchisq: base R, computed independently),
 * at the awkward places: real-valued df near 1, far tails. Tolerance 1e-12 relative: some thousand
 * roundings.
 */
import { describe, expect, it } from 'vitest';
import {
  chiSquareOneQuantile,
  normalQuantile,
  studentQuantile,
  studentTwoSidedP,
} from '../../src/numerics/distributions.ts';
import { normalShareBelow } from '../../src/numerics/normalShare.ts';
import { expectRelative } from '../support/closeness.ts';

const TOLERANCE = 1e-12;

describe('studentQuantile', () => {
  it.each([
    [0.975, 1, 12.70620473617469],
    [0.975, 1.05, 11.36190766869325],
    [0.975, 1.3, 7.500529325562027],
    [0.975, 2.7, 3.39214838317375],
    [0.975, 10.5, 2.213840292918787],
    [0.975, 1e6, 1.959966356814107],
    [0.9995, 1.01, 598.361392193338],
  ])('below which a share of %d lies with %d df is %d', (p, df, expected) => {
    expectRelative(studentQuantile(p, df), expected, TOLERANCE, 'quantile');
  });
});

describe('studentTwoSidedP', () => {
  it.each([
    [-40, 30, 1.372604519440636e-27],
    [1e-3, 1.2, 0.9993419570956783],
    [12, 3.3, 0.0007785921216933888],
    [-300, 200, 2.156280455526258e-267],
  ])('of t = %d with %d df is %d', (t, df, expected) => {
    expectRelative(studentTwoSidedP(t, df), expected, TOLERANCE, 'p');
  });
});

describe('normalQuantile', () => {
  it('below which 97.5 % lie is 1.959963984540054', () => {
    expectRelative(normalQuantile(0.975), 1.959963984540054, TOLERANCE, 'quantile');
  });
});

describe('normalShareBelow', () => {
  // R 4: pnorm
  it.each([
    [0, 0.5],
    [1.959963984540054, 0.975],
    [-2, 0.022750131948179],
    [-5.25, 7.6049605164887e-8],
  ])('of %d is %d', (z, expected) => {
    expectRelative(normalShareBelow(z), expected, 1e-12, 'share');
  });
});

describe('chiSquareOneQuantile', () => {
  it.each([
    [0.5, 0.45493642311957283],
    [0.8, 1.6423744151498156],
    [0.95, 3.841458820694124],
    [0.999, 10.82756617066273],
  ])('below which a share of %d lies is %d', (p, expected) => {
    expectRelative(chiSquareOneQuantile(p), expected, TOLERANCE, 'quantile');
  });
});

it.each([
  ['a share outside 0 to 1', studentQuantile(1.2, 5)],
  ['df of 0', studentQuantile(0.9, 0)],
  ['df of NaN', studentTwoSidedP(1, Number.NaN)],
  ['a share of NaN', chiSquareOneQuantile(Number.NaN)],
])('with %s the answer is NaN', (_what, value) => {
  expect(value).toBeNaN();
});
