/**
 * The score interval of a share: against printed intervals, the equation that it solves, and its limits.
 * Printed: Newcombe 1998, Stat Med 17:857, Table I, method 3, 95 %, four decimals, from memory; base R 4 gives the same
 * (`prop.test(81, 263, correct = FALSE)`).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../src/numerics/distributions.ts';
import { inferShare } from '../../src/numerics/wilson.ts';
import { expectWithin } from '../support/closeness.ts';

describe('the interval of a share', () => {
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('of %d in %d is as it was printed', (count, of, low, high) => {
    const found = inferShare(count, of, 0.95);
    expect(found.share).toBe(count / of);
    expect(found.low.toFixed(4)).toBe(low.toFixed(4));
    expect(found.high.toFixed(4)).toBe(high.toFixed(4));
  });

  it('ends where the share would be z of its own errors away, and mirrors the interval of the others', () => {
    const counts = fc
      .integer({ min: 1, max: 500 })
      .chain((of) => fc.tuple(fc.integer({ min: 0, max: of }), fc.constant(of)));
    fc.assert(
      fc.property(counts, fc.double({ min: 0.5, max: 0.999, noNaN: true }), ([count, of], confidence) => {
        const { share, low, high } = inferShare(count, of, confidence);
        const z = normalQuantile((1 + confidence) / 2);
        for (const end of [low, high])
          expectWithin((share - end) ** 2, (z ** 2 * end * (1 - end)) / of, 1e-12, `${count} of ${of}`);
        const others = inferShare(of - count, of, confidence);
        expectWithin(others.low, 1 - high, 1e-12, 'mirrored');
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
        expect(low <= share && share <= high).toBe(true);
      }),
      { seed: 1 },
    );
  });

  it('is refused where there is nothing to count, or more than all', () => {
    expect(() => inferShare(0, 0, 0.95)).toThrow('invalid count; not from 0 to 0: 0');
    expect(() => inferShare(3, 2, 0.95)).toThrow('invalid count; not from 0 to 2: 3');
  });
});
