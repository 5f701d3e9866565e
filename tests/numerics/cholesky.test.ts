/** The root of a covariance: by hand, against its own square, and of one without full rank. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { choleskyFactor } from '../../src/numerics/cholesky.ts';

const square = (lower: Float64Array, n: number) =>
  Float64Array.from({ length: n * n }, (_, at) => {
    const [i, j] = [Math.floor(at / n), at % n];
    let sum = 0;
    for (let k = 0; k < n; k++) sum += lower[i * n + k] * lower[j * n + k];
    return sum;
  });

it('of [[4, 2], [2, 10]] is [[2, 0], [1, 3]], whatever stands above the diagonal', () => {
  expect([...choleskyFactor([4, 2, 2, 10], 2)]).toEqual([2, 0, 1, 3]);
  expect([...choleskyFactor([4, Number.NaN, 2, 10], 2)]).toEqual([2, 0, 1, 3]);
});

it('squared is the covariance, of any B B’ + I, to rounding', () => {
  const entry = fc.double({ min: -10, max: 10, noNaN: true });
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 6 }), fc.array(entry, { minLength: 36, maxLength: 36 }), (n, b) => {
      const a = square(Float64Array.from(b.slice(0, n * n)), n);
      for (let i = 0; i < n; i++) a[i * n + i] += 1;
      const found = square(choleskyFactor(a, n), n);
      const size = Math.max(...a.map(Math.abs));
      found.forEach((value, at) => {
        expect(Math.abs(value - a[at])).toBeLessThanOrEqual(1e-13 * size);
      });
    }),
    { seed: 1 },
  );
});

it('of two rows that are one has a column of 0, and no number that is none', () => {
  expect([...choleskyFactor([4, 4, 4, 4], 2)]).toEqual([2, 0, 2, 0]);
  expect([...choleskyFactor([0, 0, 0, 0], 2)]).toEqual([0, 0, 0, 0]);
});
