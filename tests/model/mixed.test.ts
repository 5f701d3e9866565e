/**
 * The regression where it is hard, and identities that hold of any data. Hard cases have no outside
 * value; they are held to the conditions of a maximum (score 0 inside, not above 0 at the bound) and to
 * a dense, slow computation of the same formulas written out here.
 */
import fc from 'fast-check';
import { CholeskyDecomposition, determinant, inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { likelihoodDerivatives } from '../../src/model/likelihoodDerivatives.ts';
import { type Fit, fitModel } from '../../src/model/mixed.ts';
import type { Observation } from '../../src/model/observations.ts';
import { inferContrast } from '../../src/model/robust.ts';
import { simulateTable } from '../../src/model/simulation.ts';
import { makeRandom } from '../../src/numerics/random.ts';
import { expectRelative, expectWithin } from '../support/closeness.ts';

const TRUTH = { intercept: 0.07, slope: -0.004, tau: 0.02, omega: 0.008, rho: 0.5 };
const MIXED = { rho: 0.5, weighting: 'mixed' } as const;

const line = (reserves: readonly number[]) => [reserves.map(() => 1), reserves];

function fitLine(
  observations: readonly Observation[],
  reserves: readonly number[],
  options: Parameters<typeof fitModel>[2] = MIXED,
): Fit {
  const { fit, failure } = fitModel(observations, line(reserves), options);
  if (!fit) throw new Error(failure.reason);
  return fit;
}

const slopeOf = (fit: Fit) => inferContrast(fit.inference, [0, 1], 0.95);

/** l_REML from whole matrices, as the formula stands. */
function denseReml(
  observations: readonly Observation[],
  reserves: readonly number[],
  tau2: number,
  omega2: number,
): number {
  const n = observations.length;
  const same = (i: number, j: number) => observations[i].study === observations[j].study;
  const sigma = Matrix.zeros(n, n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      if (!same(i, j)) continue;
      const shared = i !== j && observations[i].cohort !== null && observations[i].cohort === observations[j].cohort;
      const covariance =
        i === j ? observations[i].v + omega2 : shared ? 0.5 * Math.sqrt(observations[i].v * observations[j].v) : 0;
      sigma.set(i, j, covariance + tau2);
    }
  }
  const x = new Matrix(reserves.map((reserve) => [1, reserve]));
  const y = Matrix.columnVector(observations.map((one) => one.y));
  const w = inverse(sigma);
  const xwx = x.transpose().mmul(w).mmul(x);
  const beta = inverse(xwx).mmul(x.transpose().mmul(w).mmul(y));
  const e = Matrix.sub(y, x.mmul(beta));
  const rss = e.transpose().mmul(w).mmul(e).get(0, 0);
  const root = new CholeskyDecomposition(sigma).lowerTriangularMatrix;
  const logDeterminant = 2 * root.diagonal().reduce((sum, value) => sum + Math.log(value), 0);
  return -0.5 * ((n - 2) * Math.log(2 * Math.PI) + logDeterminant + Math.log(determinant(xwx)) + rss);
}

/** Conditions of a maximum of the restricted likelihood. */
function expectMaximum(fit: Fit, reserves: readonly number[]): void {
  const { components, data } = fit;
  if (!components) throw new Error('expected variance components');
  const design = line(reserves).map((column) => Float64Array.from(data.source, (index) => column[index]));
  const { score, information } = likelihoodDerivatives(data, design, { ...components, rho: 0.5 }, 'reml');
  [components.tau2, components.omega2].forEach((value, i) => {
    const unit = Math.sqrt(information[i === 0 ? 0 : 2]);
    // In units of the score's own SD; a thousandth moves the estimate by a thousandth of its error.
    if (value > 0) expectWithin(score[i] / unit, 0, 1e-3, `score ${i}`);
    else expect(score[i] / unit).toBeLessThanOrEqual(1e-6);
  });
}

describe('a hard case', () => {
  it('with five studies is a maximum, and no point of a fine grid beats it', () => {
    const { observations, reserves } = simulateTable(TRUTH, 5, makeRandom(3));
    const fit = fitLine(observations, reserves);
    expectMaximum(fit, reserves);
    const { tau2, omega2, logLikelihood } = fit.components ?? { tau2: 0, omega2: 0, logLikelihood: 0 };
    expectWithin(logLikelihood, denseReml(observations, reserves, tau2, omega2), 1e-8, 'l');
    for (let i = 0; i <= 20; i++) {
      for (let j = 0; j <= 20; j++) {
        const other = denseReml(observations, reserves, (i / 10) ** 3 * 1e-3, (j / 10) ** 3 * 1e-3);
        expect(other).toBeLessThanOrEqual(logLikelihood + 1e-9);
      }
    }
  });

  it.each([
    ['between studies', { tau: 0, omega: 0.008 }, 'tau2'],
    ['within studies', { tau: 0.02, omega: 0 }, 'omega2'],
  ] as const)(
    'with no true variance %s reaches exactly 0 in about half of all tables, and says so',
    (_where, spread, component) => {
      let atBound = 0;
      for (let seed = 0; seed < 40; seed++) {
        const { observations, reserves } = simulateTable({ ...TRUTH, ...spread }, 15, makeRandom(seed));
        const fit = fitLine(observations, reserves);
        expectMaximum(fit, reserves);
        if (fit.components?.[component] === 0) {
          expect(fit.components.boundary[component]).toBe(true);
          atBound++;
        }
      }
      expect(atBound).toBeGreaterThan(8);
      expect(atBound).toBeLessThan(36);
    },
  );

  it('with sampling variances of 1e-8 beside 1 has the dense likelihood and a maximum', () => {
    const { observations, reserves } = simulateTable(TRUTH, 12, makeRandom(8));
    const uneven = observations.map((one, i) => ({ ...one, v: i % 3 === 0 ? 1e-8 : i % 3 === 1 ? 1 : one.v }));
    const fit = fitLine(uneven, reserves);
    expectMaximum(fit, reserves);
    const { tau2, omega2, logLikelihood } = fit.components ?? { tau2: 0, omega2: 0, logLikelihood: 0 };
    expectWithin(logLikelihood, denseReml(uneven, reserves, tau2, omega2), 1e-6, 'l');
    expect(slopeOf(fit).standardError).toBeGreaterThan(0);
  });

  it('with half of all rows in one study is a maximum', () => {
    const { observations, reserves } = simulateTable(TRUTH, 30, makeRandom(9));
    const lopsided = observations.map((one, i) =>
      i % 2 === 0 ? { ...one, study: 'giant', cohort: `g${i % 14}` } : one,
    );
    const fit = fitLine(lopsided, reserves);
    expectMaximum(fit, reserves);
    expect(fit.data.studies).toContain('giant');
    expect(slopeOf(fit).df).toBeGreaterThan(1);
  });

  it('with one reserve in each study is fitted between studies', () => {
    const { observations } = simulateTable(TRUTH, 12, makeRandom(10));
    const reserves = observations.map(({ study }) => Number(study.slice(1)) % 7);
    expectMaximum(fitLine(observations, reserves), reserves);
  });

  it('with one row a study fixes ω² at 0 and estimates the sum of both as τ²', () => {
    const { observations, reserves } = simulateTable(TRUTH, 40, makeRandom(11));
    const first = observations.map((one, i) => ({ ...one, study: `own ${i}` }));
    const { components } = fitLine(first, reserves);
    expect(components?.free).toEqual([true, false]);
    expect(components?.omega2).toBe(0);
  });

  it('with data exactly on a line gives that line', () => {
    const { observations, reserves } = simulateTable(TRUTH, 8, makeRandom(12));
    const exact = observations.map((one, i) => ({ ...one, y: 0.07 - 0.004 * reserves[i] }));
    const fit = fitLine(exact, reserves);
    expectRelative(fit.inference.coefficients[1], -0.004, 1e-9, 'slope');
    expect(fit.components?.boundary).toEqual({ tau2: true, omega2: true });
  });
});

describe('a fit that cannot be made', () => {
  const { observations, reserves } = simulateTable(TRUTH, 6, makeRandom(1));
  it.each([
    ['no row', [], [], 'no-rows'],
    ['one study', observations.filter(({ study }) => study === 'S0000'), reserves, 'too-few-studies'],
    [
      'as many coefficients as rows',
      observations
        .filter(({ cohort }) => cohort === 'a0')
        .slice(0, 2)
        .map((one, i) => ({ ...one, study: `S${i}` })),
      [0, 1],
      'too-few-rows',
    ],
  ] as const)('with %s is refused with a typed reason', (_what, rows, at, kind) => {
    const { fit, failure } = fitModel(rows, line(at), MIXED);
    expect(fit).toBeNull();
    expect(failure?.kind).toBe(kind);
    expect(failure?.reason).toMatch(/\w/u);
  });

  it('with columns that depend on each other is refused', () => {
    const { failure } = fitModel(observations, [...line(reserves), reserves.map((r) => 2 * r - 1)], MIXED);
    expect(failure?.kind).toBe('rank-deficient');
  });
});

describe('whatever the table', () => {
  const tables = fc.record({ seed: fc.integer({ min: 1, max: 1e6 }), studies: fc.integer({ min: 4, max: 20 }) });
  const check = (property: (table: ReturnType<typeof simulateTable>, seed: number) => void, numRuns = 40) =>
    fc.assert(
      fc.property(tables, ({ seed, studies }) => property(simulateTable(TRUTH, studies, makeRandom(seed)), seed)),
      { seed: 7, numRuns },
    );

  it('the order of rows and studies does not matter', () => {
    check(({ observations, reserves }, seed) => {
      const { uniform } = makeRandom(seed);
      const order = observations.map((_, i) => ({ i, key: uniform() })).sort((a, b) => a.key - b.key);
      const shuffled = fitLine(
        order.map(({ i }) => observations[i]),
        order.map(({ i }) => reserves[i]),
      );
      const fit = fitLine(observations, reserves);
      expectRelative(slopeOf(shuffled).estimate, slopeOf(fit).estimate, 1e-7, 'slope');
      expectRelative(slopeOf(shuffled).standardError, slopeOf(fit).standardError, 1e-7, 'SE');
      expectRelative(slopeOf(shuffled).df, slopeOf(fit).df, 1e-6, 'df');
    });
  });

  it('scaling the outcome scales the slope and its error, and leaves df and p', () => {
    check(({ observations, reserves }) => {
      const scaled = observations.map((one) => ({ ...one, y: 100 * one.y, v: 1e4 * one.v }));
      const [fit, times] = [slopeOf(fitLine(observations, reserves)), slopeOf(fitLine(scaled, reserves))];
      expectRelative(times.estimate, 100 * fit.estimate, 1e-7, 'slope');
      expectRelative(times.standardError, 100 * fit.standardError, 1e-7, 'SE');
      expectRelative(times.df, fit.df, 1e-6, 'df');
      expectWithin(times.p, fit.p, 1e-7, 'p');
    });
  });

  it('adding a constant to the outcome moves the intercept alone', () => {
    check(({ observations, reserves }) => {
      const moved = observations.map((one) => ({ ...one, y: one.y + 1 }));
      const [fit, other] = [fitLine(observations, reserves), fitLine(moved, reserves)];
      expectWithin(other.inference.coefficients[0], fit.inference.coefficients[0] + 1, 1e-7, 'intercept');
      expectWithin(other.inference.coefficients[1], fit.inference.coefficients[1], 1e-8, 'slope');
    });
  });

  it.each(['precision', 'equal'] as const)(
    'a copy of every study leaves β under %s weights and narrows the model-based error by √2',
    (weighting) => {
      check(({ observations, reserves }) => {
        const copied = [...observations, ...observations.map((one) => ({ ...one, study: `copy of ${one.study}` }))];
        const once = fitLine(observations, reserves, { rho: 0.5, weighting });
        const twice = fitLine(copied, [...reserves, ...reserves], { rho: 0.5, weighting });
        expectRelative(twice.inference.coefficients[1], once.inference.coefficients[1], 1e-10, 'slope');
        expectRelative(twice.modelStandardErrors[1] * Math.SQRT2, once.modelStandardErrors[1], 1e-10, 'SE');
      });
    },
  );

  it('equal weights are ordinary least squares', () => {
    check(({ observations, reserves }) => {
      const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
      const [x, y] = [mean(reserves), mean(observations.map((one) => one.y))];
      const slope =
        reserves.reduce((sum, r, i) => sum + (r - x) * (observations[i].y - y), 0) /
        reserves.reduce((sum, r) => sum + (r - x) ** 2, 0);
      expectRelative(
        fitLine(observations, reserves, { rho: 0, weighting: 'equal' }).inference.coefficients[1],
        slope,
        1e-9,
        'slope',
      );
    });
  });

  it('equal weights have the likelihoods of their formulas, the residual variance at RSS/n and RSS/(n − p)', () => {
    check(({ observations, reserves }) => {
      const fit = fitLine(observations, reserves, { rho: 0, weighting: 'equal' });
      const [intercept, slope] = fit.inference.coefficients;
      const n = observations.length;
      const rss = observations.reduce((sum, { y }, i) => sum + (y - intercept - slope * reserves[i]) ** 2, 0);
      const x = new Matrix(reserves.map((reserve) => [1, reserve]));
      const ofVariance = (variance: number) => n * Math.log(2 * Math.PI * variance) + rss / variance;
      const restricted = rss / (n - 2);
      const volume = Math.log(
        determinant(
          x
            .transpose()
            .mmul(x)
            .div(2 * Math.PI * restricted),
        ),
      );
      expectRelative(fit.logLikelihood.ml ?? Number.NaN, -0.5 * ofVariance(rss / n), 1e-10, 'ML');
      expectRelative(fit.logLikelihood.reml ?? Number.NaN, -0.5 * (ofVariance(restricted) + volume), 1e-10, 'REML');
    });
  });

  it('leaving out the maximum-likelihood fit changes nothing but AICc', () => {
    check(({ observations, reserves }) => {
      const whole = fitLine(observations, reserves);
      const quick = fitLine(observations, reserves, { ...MIXED, answerOnly: true });
      expect(slopeOf(quick)).toEqual(slopeOf(whole));
      expect([quick.aicc, quick.logLikelihood.ml]).toEqual([null, null]);
    }, 10);
  });
});
