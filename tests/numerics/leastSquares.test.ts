/**
 * The least-squares core against certified values (NIST StRD) to the digits each set asks for, and
 * against identities of a QR factorisation.
 */
import { describe, expect, it } from 'vitest';
import { forwardSubstitute, leastSquares } from '../../src/numerics/leastSquares.ts';
import { CERTIFIED } from '../reference/nist.ts';
import { expectRelative, expectWithin } from '../support/closeness.ts';

const toColumns = (columns: readonly (readonly number[])[]) => columns.map((column) => Float64Array.from(column));

describe.each(CERTIFIED)('NIST $name', ({ columns, y, coefficients, standardDeviations, residualSd, digits }) => {
  const fit = leastSquares(toColumns(columns), Float64Array.from(y));
  const p = columns.length;
  // d significant digits: relative difference of at most half a unit of the d-th.
  const tolerance = 0.5 * 10 ** -digits;

  it(`gives the certified coefficients to ${digits} digits`, () => {
    expect(fit.fullRank).toBe(true);
    coefficients.forEach((expected, j) => {
      expectRelative(fit.coefficients[j], expected, tolerance, `b${j}`);
    });
  });

  it('gives the certified standard deviations', () => {
    const sd = Math.sqrt(fit.residualSumOfSquares / (y.length - p));
    if (standardDeviations === null) {
      // An exact polynomial: what remains is rounding beside values of some 3 million.
      expectWithin(sd, 0, 1e-8, 'residual SD');
      return;
    }
    expectRelative(sd, residualSd, tolerance, 'residual SD');
    standardDeviations.forEach((expected, j) => {
      const unit = new Float64Array(p);
      unit[j] = 1;
      const h = forwardSubstitute(fit.r, p, unit);
      expectRelative(sd * Math.hypot(...h), expected, tolerance, `SD of b${j}`);
    });
  });
});

describe('leastSquares', () => {
  const columns = toColumns([
    [1, 1, 1, 1],
    [0, 1, 2, 4],
  ]);
  const y = Float64Array.of(1, 3, 2, 5);

  it('leaves its arguments as they were', () => {
    leastSquares(columns, y);
    expect([...columns[1], ...y]).toEqual([0, 1, 2, 4, 1, 3, 2, 5]);
  });

  it('solves a case derived by hand: slope Σxy/Σx² of centred data, 7.75 / 8.75', () => {
    // x̄ = 1.75, ȳ = 2.75; Σ(x−x̄)² = 21 − 12.25 = 8.75; Σ(x−x̄)(y−ȳ) = 27 − 19.25 = 7.75.
    const { coefficients } = leastSquares(columns, y);
    expectRelative(coefficients[1], 7.75 / 8.75, 1e-14, 'slope');
    expectRelative(coefficients[0], 2.75 - (1.75 * 7.75) / 8.75, 1e-14, 'intercept');
  });

  it('returns Q with orthonormal columns and residuals orthogonal to it', () => {
    const { q, residuals } = leastSquares(columns, y);
    const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, value, i) => sum + value * b[i], 0);
    expectWithin(dot(q[0], q[0]), 1, 1e-15, '|q0|²');
    expectWithin(dot(q[0], q[1]), 0, 1e-15, 'q0·q1');
    expectWithin(dot(q[1], residuals), 0, 1e-14, 'q1·e');
  });

  it('says so where columns are dependent, and gives no coefficients', () => {
    const { fullRank, coefficients } = leastSquares([...columns, Float64Array.of(1, 2, 3, 5)], y);
    expect(fullRank).toBe(false);
    expect(coefficients.every(Number.isNaN)).toBe(true);
  });

  it('says so where rows are fewer than columns', () => {
    expect(leastSquares(toColumns([[1], [2]]), Float64Array.of(3)).fullRank).toBe(false);
  });
});
