/** Products of small matrices against ml-matrix. */
import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { makeRandom } from '../../src/numerics/random.ts';
import {
  bilinear,
  blockDiagonal,
  gram,
  identity,
  multiply,
  packRows,
  solveInPlace,
  unitVector,
} from '../../src/numerics/smallMatrices.ts';
import { expectWithin } from '../support/closeness.ts';

const { normal } = makeRandom(4);
const draw = (n: number, m: number) => Float64Array.from({ length: n * m }, normal);
const toMatrix = (a: Float64Array, n: number, m: number) => Matrix.from1DArray(n, m, a.subarray(0, n * m));

function expectSame(found: Float64Array, expected: Matrix): void {
  expected.to1DArray().forEach((value, i) => {
    expectWithin(found[i], value, 1e-14, `entry ${i}`);
  });
}

describe('products in room that is larger than they are, with numbers of an earlier use', () => {
  it('a’a', () => {
    const a = draw(3, 3);
    const out = new Float64Array(12).fill(7);
    gram(a, 3, out);
    expectSame(
      out,
      toMatrix(a, 3, 3)
        .transpose()
        .mmul(toMatrix(a, 3, 3)),
    );
    expect(out[9]).toBe(7);
  });

  it('a b of matrices that are not square', () => {
    const [a, b] = [draw(2, 3), draw(3, 4)];
    const out = new Float64Array(12).fill(7);
    multiply(a, b, 2, 3, 4, out);
    expectSame(out, toMatrix(a, 2, 3).mmul(toMatrix(b, 3, 4)));
    expect(out[8]).toBe(7);
  });
});

it('a bilinear form is u’M v, its sides not exchanged', () => {
  const [u, m, v] = [draw(3, 1), draw(3, 3), draw(3, 1)];
  const expected = toMatrix(u, 1, 3)
    .mmul(toMatrix(m, 3, 3))
    .mmul(toMatrix(v, 3, 1))
    .get(0, 0);
  expectWithin(bilinear(u, m, v), expected, 1e-14, "u'Mv");
});

it('blocks stand along the diagonal; one that is missing is 0', () => {
  const [a, b] = [Float64Array.of(5), Float64Array.of(1, 2, 3, 4)];
  expect([...blockDiagonal(a, 1, b, 2)]).toEqual([5, 0, 0, 0, 1, 2, 0, 3, 4]);
  expect([...blockDiagonal(null, 1, b, 2)]).toEqual([0, 0, 0, 0, 1, 2, 0, 3, 4]);
  expect([...blockDiagonal(a, 1, null, 1)]).toEqual([5, 0, 0, 0]);
});

it('a unit vector is a column of the identity', () => {
  expect([...identity(3).subarray(3, 6)]).toEqual([...unitVector(3, 1)]);
});

it('columns side by side are rows', () => {
  expect([...packRows([Float64Array.of(1, 2, 3), Float64Array.of(4, 5, 6)], 3)]).toEqual([1, 4, 2, 5, 3, 6]);
});

describe('a system solved in place', () => {
  it('gives what multiplies back, whatever stands first on the diagonal', () => {
    for (const n of [1, 2, 5]) {
      const [a, x] = [draw(n, n), draw(n, 3)];
      // No pivot at the first place: rows have to be exchanged.
      if (n > 1) a[0] = 0;
      const b = Float64Array.from(
        toMatrix(a, n, n)
          .mmul(toMatrix(x, n, 3))
          .to1DArray(),
      );
      solveInPlace(a.slice(), b, n, 3);
      x.forEach((value, i) => {
        expectWithin(b[i], value, 1e-12, `order ${n}, entry ${i}`);
      });
    }
  });

  it('leaves numbers that are not finite where it is singular', () => {
    const b = Float64Array.of(1, 1);
    solveInPlace(Float64Array.of(1, 2, 2, 4), b, 2, 1);
    expect(b.some(Number.isFinite)).toBe(false);
  });
});
