/** Numbers of things in words. */
import { expect, it } from 'vitest';
import { countOf, countStudies, listFirst, nameLines } from '../../src/numerics/countOf.ts';

it('of one and of several things have the word that goes with them', () => {
  expect([0, 1, 2, 12_345].map((number) => countOf(number, 'row'))).toEqual([
    '0 rows',
    '1 row',
    '2 rows',
    '12,345 rows',
  ]);
  expect([1, 3].map(countStudies)).toEqual(['1 study', '3 studies']);
});

it('say how many names are not listed', () => {
  expect(listFirst(['a', 'b', 'c'], 2)).toBe('a, b and 1 more');
  expect(listFirst(['a', 'b'], 2)).toBe('a, b');
});

it('name lines by their numbers, all or the first', () => {
  expect([[3], [1, 2]].map((lines) => nameLines(lines))).toEqual(['line 3', 'lines 1, 2']);
  expect(nameLines([1, 2, 5, 6], 2)).toBe('lines 1, 2 and 2 more');
});
