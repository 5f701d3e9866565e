/**
 * A large study's part in time proportional to its rows, against the definition with whole matrices:
 * A = D'B^{+½}D, B = D S D', S = Φ − XMX' with D the symmetric root of Φ. The two ways round differently:
 * agreement is asked to 1e-9 of each block's largest entry. The eigenvalues of B spread as the square of Φ's, so
 * that whole matrices carry no further than a study effect some hundred times the sampling error.
 */
import { EigenvalueDecomposition, Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { robustInference } from '../../src/model/cr2.ts';
import { largeStudyPart, makeFitRows } from '../../src/model/largeStudyPart.ts';
import { arrangeColumn, arrangeObservations, type Observation } from '../../src/model/observations.ts';
import { LARGE_STUDY } from '../../src/model/studyParts.ts';
import { applyWhitening, rowVariances, type WorkingCovariance, whiten } from '../../src/model/whitening.ts';
import { leastSquares } from '../../src/numerics/leastSquares.ts';
import { makeRandom } from '../../src/numerics/random.ts';
import { expectRelative } from '../support/closeness.ts';

const ROWS = LARGE_STUDY + 20;

interface Case {
  readonly at: WorkingCovariance;
  readonly cohortOf: (i: number) => string | null;
  /** Columns beside the ones, of row i of the large study or of one of the others. */
  readonly columns: readonly ((large: boolean, draw: number, i: number) => number)[];
  /** Ratio of the largest sampling variance to the smallest. */
  readonly spread?: number;
  readonly others?: number;
  readonly lost?: number;
}

const both = (_: boolean, draw: number) => draw;
const onlyLarge = (large: boolean, draw: number) => (large ? draw : 0.25);
const cohorts = (i: number) => (i % 7 === 0 ? null : `c${i % 11}`);
const usual = { tau2: 0.0004, omega2: 0.0001, rho: 0.5 };

const CASES: Readonly<Record<string, Case>> = {
  'cohorts and rows alone': { at: usual, cohortOf: cohorts, columns: [both] },
  'one cohort of all rows': { at: usual, cohortOf: () => 'a', columns: [both, both] },
  'no shared error and no study effect': { at: { tau2: 0, omega2: 0, rho: 0 }, cohortOf: cohorts, columns: [both] },
  'a study effect far above the rest': {
    at: { tau2: 0.004, omega2: 1e-4, rho: 0.5 },
    cohortOf: cohorts,
    columns: [both],
  },
  'variances over three orders': { at: usual, cohortOf: cohorts, columns: [both, both], spread: 1e3 },
  'a column that only it varies in': { at: usual, cohortOf: cohorts, columns: [onlyLarge], lost: 1 },
  'two columns that only it varies in': { at: usual, cohortOf: cohorts, columns: [onlyLarge, onlyLarge], lost: 2 },
  'a column that is its own mark': { at: usual, cohortOf: cohorts, columns: [both, (large) => Number(large)], lost: 1 },
  'one other row': { at: usual, cohortOf: cohorts, columns: [both], others: 1, lost: 1 },
};

describe.each(Object.entries(CASES))(
  'a study of many rows with %s',
  (_, { at, cohortOf, columns, spread = 10, others = 9, lost = 0 }) => {
    const { uniform, normal } = makeRandom(12);
    const variance = () => 1e-4 * spread ** uniform();
    const observations: Observation[] = [];
    const values: number[][] = [[], ...columns.map(() => [])];
    const add = (study: string, cohort: string | null, large: boolean, i: number) => {
      observations.push({ study, cohort, y: 0.05 + 0.02 * normal(), v: variance() });
      values[0].push(1);
      for (const [c, of] of columns.entries()) values[c + 1].push(of(large, 8 * uniform(), i));
    };
    for (let i = 0; i < ROWS; i++) add('large', cohortOf(i), true, i);
    for (let i = 0; i < others; i++) add(`other ${i % 5}`, null, false, i);
    const data = arrangeObservations(observations);
    const x = values.map((column) => arrangeColumn(data, column));
    const whitening = whiten(data, at);
    const fit = leastSquares(
      x.map((column) => applyWhitening(data, whitening, column)),
      applyWhitening(data, whitening, data.y),
    );
    const inference = robustInference(data, whitening, fit);
    const k = data.studies.indexOf('large');

    it('adds what the definition gives', () => {
      const [from, to] = [data.studyStart[k], data.studyStart[k + 1]];
      const phi = covarianceOf(observations.slice(0, ROWS), at, data.source.slice(from, to));
      const block = new Matrix(Array.from({ length: to - from }, (_, i) => x.map((column) => column[from + i])));
      const root = Matrix.from1DArray(x.length, x.length, fit.r);
      const y = block.mmul(inverseOfUpper(root));
      const s = Matrix.sub(phi, y.mmul(y.transpose()));
      const d = powerOf(phi, 0.5, 0);
      const adjustment = d.mmul(powerOf(d.mmul(s).mmul(d), -0.5, 1e-11)).mmul(d);
      const g = adjustment.mmul(powerOf(phi, -1, 0)).mmul(y);
      const residual = Matrix.columnVector(
        Array.from({ length: to - from }, (_, i) =>
          x.reduce((left, column, c) => left - column[from + i] * fit.coefficients[c], data.y[from + i]),
        ),
      );
      const { score, spread: n, overlap } = inference.parts[k];
      for (const [name, ours, theirs] of [
        ['score', score, g.transpose().mmul(residual)],
        ['spread', n, g.transpose().mmul(phi).mmul(g)],
        ['overlap', overlap, y.transpose().mmul(g)],
      ] as const) {
        const expected = theirs.to1DArray();
        const scale = Math.max(...expected.map(Math.abs));
        expected.forEach((value, i) => {
          expectRelative(ours[i], value, 1e-9, `${name} ${i}`, scale);
        });
      }
    });

    it('loses the directions that it fits perfectly, and no other', () => {
      expect(largeStudyPart(data, whitening, makeFitRows(data, whitening, fit), x.length, k).lost).toBe(lost);
    });

    if (lost === 0) {
      it('has N − T’T = Q’Q, which is A S A = Φ seen from the columns', () => {
        const p = x.length;
        const { spread: n, overlap } = inference.parts[k];
        const q = new Matrix(fit.q.map((column) => [...column.subarray(data.studyStart[k], data.studyStart[k + 1])]));
        const t = Matrix.from1DArray(p, p, [...overlap]);
        const difference = Matrix.sub(Matrix.from1DArray(p, p, [...n]), t.transpose().mmul(t)).to1DArray();
        const expected = q.mmul(q.transpose()).to1DArray();
        const scale = Math.max(...expected.map(Math.abs));
        expected.forEach((value, i) => {
          expectRelative(difference[i], value, 1e-11, `entry ${i}`, scale);
        });
      });
    }

    it('has the variances of its rows on the diagonal', () => {
      rowVariances(data, whitening).forEach((value, i) => {
        expectRelative(value, data.v[i] + at.tau2 + at.omega2, 1e-12, `row ${i}`);
      });
    });
  },
);

/** V + τ² 11' + ω² I of a study's rows, in the order of `source`. */
function covarianceOf(
  list: readonly Observation[],
  { tau2, omega2, rho }: WorkingCovariance,
  source: ArrayLike<number>,
) {
  const rows = Array.from(source, (index) => list[index]);
  return new Matrix(
    rows.map((a, i) =>
      rows.map((b, j) => {
        if (i === j) return a.v + tau2 + omega2;
        return tau2 + (a.cohort !== null && a.cohort === b.cohort ? rho * Math.sqrt(a.v * b.v) : 0);
      }),
    ),
  );
}

/** Power of a symmetric matrix; eigenvalues at or below `tolerance` of the largest count as 0. */
function powerOf(matrix: Matrix, power: number, tolerance: number): Matrix {
  const { realEigenvalues: values, eigenvectorMatrix: vectors } = new EigenvalueDecomposition(matrix, {
    assumeSymmetric: true,
  });
  const largest = Math.max(...values);
  const scaled = Matrix.diag(values.map((value) => (value > tolerance * largest ? value ** power : 0)));
  return vectors.mmul(scaled).mmul(vectors.transpose());
}

function inverseOfUpper(root: Matrix): Matrix {
  return solve(root, Matrix.eye(root.rows));
}
