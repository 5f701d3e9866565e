/** The size of letters at which a week is one page: larger for less, and each has its rule in the style sheet. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { fitSheet, SIZES } from '../../../../src/islands/programme/lifters/fitSheet.ts';
import { judgeLifters } from '../../../../src/practice/lifters/judge.ts';
import { weeksOf } from '../../../../src/practice/lifters/sheet.ts';
import { lifterWith, listOf } from '../../../practice/lifters/people.ts';
import { analysis, exercises } from '../../../practice/programme/shipped.ts';

const sizeOf = (lines: number, name = 'Lifter A') => {
  const list = listOf(Array.from({ length: lines }, (_, i) => ({ day: String(1 + (i % 5)) })));
  const [judged] = judgeLifters(analysis, {
    list,
    lifters: [lifterWith({ squat: '100' })],
    exercises,
    status: 'trained',
  });
  const [{ days }] = weeksOf(judged.lines);
  return fitSheet(name, days, false);
};

it('is the largest for one line and the least for very many, and never grows with more of them', () => {
  const sizes = Array.from({ length: 40 }, (_, i) => sizeOf(i + 1));
  expect([sizes[0], sizes[39]]).toEqual([SIZES[0], SIZES[SIZES.length - 1]]);
  expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
  expect(new Set(sizes).size).toBeGreaterThan(3);
});

it('leaves room for a long name', () => {
  expect(sizeOf(8, 'x'.repeat(450))).toBeLessThan(sizeOf(8));
});

it('has a rule in the style sheet for each size, and none for others', () => {
  const rules = [
    ...readFileSync('src/styles/lifters.css', 'utf8').matchAll(/data-size="([\d.]+)"\] \{\s+--gym: ([\d.]+)pt;/gu),
  ];
  expect(rules.map(([, size, points]) => [Number(size), Number(points)])).toEqual(SIZES.map((size) => [size, size]));
});
