/** The root of a pseudo-inverse by its identities: R B R is the projection onto what B reaches. */
import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { makeRandom } from '../../src/numerics/random.ts';
import { pseudoInverseRoot } from '../../src/numerics/symmetric.ts';
import { expectWithin } from '../support/closeness.ts';

/** A A' of an n×r matrix of normal draws: positive semi-definite of rank r. */
function makeMatrix(n: number, rank: number, seed: number): Matrix {
  const { normal } = makeRandom(seed);
  const a = new Matrix(Array.from({ length: n }, () => Array.from({ length: rank }, normal)));
  return a.mmul(a.transpose());
}

describe('the root of the pseudo-inverse', () => {
  it.each([
    [1, 1],
    [2, 2],
    [5, 5],
    [6, 2],
    [4, 1],
  ])('of a matrix of order %d and rank %d projects onto its range, and drops the rest', (n, rank) => {
    const b = makeMatrix(n, rank, 10 * n + rank);
    const { root, dropped } = pseudoInverseRoot(Float64Array.from(b.to1DArray()), n, 1e-11);
    expect(dropped).toBe(n - rank);
    const r = Matrix.from1DArray(n, n, root);
    const projection = r.mmul(b).mmul(r);
    expectWithin(projection.trace(), rank, 1e-9, 'trace');
    expectWithin(projection.mmul(b).sub(b).norm(), 0, 1e-9 * b.norm(), 'P B − B');
    expectWithin(r.transpose().sub(r).norm(), 0, 1e-9 * r.norm(), 'symmetry');
  });

  it('of 0 is 0, with every direction dropped', () => {
    expect(pseudoInverseRoot(Float64Array.of(0), 1, 1e-11)).toEqual({ root: Float64Array.of(0), dropped: 1 });
    expect(pseudoInverseRoot(new Float64Array(4), 2, 1e-11)).toEqual({ root: new Float64Array(4), dropped: 2 });
  });

  it('reads the first n² numbers of a larger room only', () => {
    const room = Float64Array.of(4, 0, 0, 9, 77, 77);
    const { root } = pseudoInverseRoot(room, 2, 1e-11);
    [1 / 2, 0, 0, 1 / 3].forEach((value, i) => {
      expectWithin(root[i], value, 1e-15, `entry ${i}`);
    });
  });
});
