/** Where Enter goes in a grid whose rows may have one entry for all places. */
import { describe, expect, it } from 'vitest';
import { findNext } from '../../../src/islands/curate/gridKeys.ts';
import { needsHelp, readBlock } from '../../../src/islands/curate/pasteBlock.ts';

/** Three rows of three places, the second with one entry for all of them. */
const GRID = [
  [0, 0],
  [0, 1],
  [0, 2],
  [1, 0],
  [2, 0],
  [2, 1],
  [2, 2],
] as const;
const from = (row: number, cell: number, step: 1 | -1 = 1) => {
  const next = findNext(GRID, [row, cell], step);
  return next === null ? null : GRID[next];
};

describe('Enter', () => {
  it('goes down, over an entry for all places, and from the last row to the top of the next place', () => {
    expect(from(0, 0)).toEqual([1, 0]);
    expect(from(0, 2)).toEqual([1, 0]);
    expect(from(1, 0)).toEqual([2, 0]);
    expect(from(2, 0)).toEqual([0, 1]);
    expect(from(2, 2)).toBeNull();
  });

  it('with Shift goes up, and from the first row to the bottom of the place before', () => {
    expect(from(2, 1, -1)).toEqual([1, 0]);
    expect(from(0, 1, -1)).toEqual([2, 0]);
    expect(from(0, 0, -1)).toBeNull();
  });
});

describe('a copied block', () => {
  it('has tabs between cells and line breaks of any kind between rows', () => {
    const rows = [
      ['1', '2'],
      ['3', ''],
    ];
    for (const text of ['1\t2\n3\t', '1\t2\r\n3\t\r\n', '1\t2\r3\t\n']) expect(readBlock(text)).toEqual(rows);
    expect(readBlock('\u00a01,5\u00a0')).toEqual([['1,5']]);
  });

  it.each([
    ['one word', 'leg press', 'exercise', false],
    ['one number', '6.3', 'baseline_sd', false],
    ['a decimal comma', '6,3', 'baseline_sd', true],
    ['a range with decimal commas', '7,5-8,5', 'reps_per_set', true],
    ['a comma in a text', 'back, 2 sets', 'exercise', false],
    ['a comma between thousands and a point', '1,234.5', 'baseline_mean', false],
    ['two cells', '1\t2', 'baseline_sd', true],
  ] as const)('of %s is put in with help or left to the browser', (_what, text, column, isHelped) => {
    expect(needsHelp(readBlock(text), column)).toBe(isHelped);
  });
});
