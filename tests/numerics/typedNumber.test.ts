/** Typed numbers: a decimal comma is read, and nothing else is changed or guessed. */
import { describe, expect, it } from 'vitest';
import { plainNumber } from '../../src/numerics/typedNumber.ts';

describe('a number as it is typed', () => {
  it.each([
    ['72,5', '72.5'],
    ['0,5', '0.5'],
    [',5', '.5'],
    [' 2,25 ', '2.25'],
    ['72.5', '72.5'],
    ['8', '8'],
    ['-3', '-3'],
    ['−3', '-3'],
    ['', ''],
  ])('“%s” is %s', (typed, plain) => {
    expect(plainNumber(typed)).toBe(plain);
  });

  // Thousands or decimals, more than one mark, a range, words: not a number that could be meant in one way only.
  it.each(['1,000', '12,345', '1,2,3', '1.000,5', '6-8', '7 or 8', 'x', '5,'])('“%s” is nobody’s to guess', (typed) => {
    expect(plainNumber(typed)).toBe(typed);
    expect(Number(plainNumber(typed))).toBeNaN();
  });
});
