/** What `npm run bench` prints: figures within their bounds, and one above, which is marked and fails the run. */
import { describe, expect, it } from 'vitest';
import { reportBench } from '../../scripts/measure/benchReport.ts';

const fit = { name: 'one fit', median: 2.5, bound: 3 };
const growth = { name: 'time per row', value: 1.1, bound: 1.3 };

describe('the report of a bench', () => {
  it('gives each figure with its unit and bound, and is within where each is', () => {
    const { lines, isWithin } = reportBench([fit, { name: 'larger', median: 1234.567, bound: null }], [growth]);
    expect(lines.map((line) => line.replace(/ +/gu, ' ').trim())).toEqual([
      'one fit 2.50 ms at most 3',
      'larger 1234.57 ms',
      'time per row: × 1.10 at most 1.3',
    ]);
    expect(isWithin).toBe(true);
  });

  it('holds a figure that is at its bound to be within', () => {
    expect(reportBench([{ ...fit, median: 3 }], [{ ...growth, value: 1.3 }]).isWithin).toBe(true);
  });

  it.each([
    ['a time', [{ ...fit, median: 3.01 }], [growth], /ABOVE 3$/u],
    ['a ratio', [fit], [{ ...growth, value: 1.31 }], /ABOVE 1\.3$/u],
  ])('marks %s above its bound and is not within', (_, measurements, ratios, marked) => {
    const { lines, isWithin } = reportBench(measurements, ratios);
    expect(lines.filter((line) => marked.test(line))).toHaveLength(1);
    expect(isWithin).toBe(false);
  });
});
