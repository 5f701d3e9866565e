/**
 * The mixed model against printed results of others.
 *
 * Konstantopoulos 2011 (threeLevels.ts), recomputed from the printed data by independent code: mean 0.18445538 (SE
 * 0.08048168), variance between districts 0.05773836, between schools 0.03286479.
 * van Houwelingen, Arends & Stijnen 2002 (Stat Med 21:589): 13 BCG trials, log odds ratio, ML.
 * Berkey et al. 1995 data, log risk ratio, REML: recomputed by independent code.
 */

import { readFileSync } from 'node:fs';
import { describe, it } from 'vitest';
import { fitModel } from '../../src/model/mixed.ts';
import { arrangeObservations, type Observation } from '../../src/model/observations.ts';
import { estimateVarianceComponents } from '../../src/model/varianceComponents.ts';
import { applyWhitening, whiten } from '../../src/model/whitening.ts';
import { forwardSubstitute, leastSquares } from '../../src/numerics/leastSquares.ts';
import { expectWithin } from '../support/closeness.ts';
import { PRINTED, SCHOOLS } from './threeLevels.ts';

/** Coefficients and model-based standard errors of the ML fit. */
function fitByMaximumLikelihood(observations: readonly Observation[], columns: readonly (readonly number[])[]) {
  const data = arrangeObservations(observations);
  const design = columns.map((column) => Float64Array.from(data.source, (index) => column[index]));
  const components = estimateVarianceComponents(data, design, 0, ['ml']).ml;
  const whitening = whiten(data, { ...components, rho: 0 });
  const solution = leastSquares(
    design.map((column) => applyWhitening(data, whitening, column)),
    applyWhitening(data, whitening, data.y),
  );
  const standardErrors = columns.map((_, j) => {
    const unit = columns.map((_column, i) => (i === j ? 1 : 0));
    return Math.hypot(...forwardSubstitute(solution.r, columns.length, unit));
  });
  return { components, coefficients: solution.coefficients, standardErrors };
}

describe('three levels: Konstantopoulos 2011', () => {
  const fit = fitByMaximumLikelihood(SCHOOLS, [SCHOOLS.map(() => 1)]);

  it('gives the printed mean, standard error and both variances, all digits', () => {
    const half = 0.5 * 10 ** -PRINTED.decimals;
    expectWithin(fit.coefficients[0], PRINTED.mean, half, 'mean');
    expectWithin(fit.standardErrors[0], PRINTED.standardError, half, 'SE');
    expectWithin(fit.components.tau2, PRINTED.betweenDistricts, half, 'between districts');
    expectWithin(fit.components.omega2, PRINTED.betweenSchools, half, 'between schools');
  });

  it('gives the eight digits of the recomputation', () => {
    const half = 0.5e-8;
    expectWithin(fit.coefficients[0], 0.18445538, half, 'mean');
    expectWithin(fit.standardErrors[0], 0.08048168, half, 'SE');
    expectWithin(fit.components.tau2, 0.05773836, half, 'between districts');
    expectWithin(fit.components.omega2, 0.03286479, half, 'between schools');
  });
});

describe('13 BCG trials', () => {
  const rows = readFileSync(new URL('./bcg.csv', import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(','));
  const latitude = rows.map((row) => Number(row[6]));
  const ones = rows.map(() => 1);
  const cells = rows.map((row) => row.slice(2, 6).map(Number) as [number, number, number, number]);
  const study = (i: number) => ({ study: rows[i][0], cohort: null });
  const logOddsRatios = cells.map(([a, b, c, d], i) => ({
    ...study(i),
    y: Math.log((a * d) / (b * c)),
    v: 1 / a + 1 / b + 1 / c + 1 / d,
  }));
  const logRiskRatios = rows.map((row, i) => ({ ...study(i), y: Number(row[7]), v: Number(row[8]) }));

  it('log odds ratio by ML with latitude, as van Houwelingen et al. 2002 print (pp. 608–609)', () => {
    const { coefficients, standardErrors, components } = fitByMaximumLikelihood(logOddsRatios, [ones, latitude]);
    const half = 0.00005;
    // l is flat in a τ² this small and their iteration stopped short: the maximum has 0.37107 (0.10597).
    expectWithin(coefficients[0], 0.371, 4 * half, 'intercept');
    expectWithin(standardErrors[0], 0.1061, 4 * half, 'SE of the intercept');
    expectWithin(coefficients[1], -0.0327, half, 'slope');
    expectWithin(standardErrors[1], 0.0034, half, 'SE of the slope');
    expectWithin(components.tau2, 0.004, half, 'between trials');
  });

  it('log odds ratio by ML without a covariate: τ² 0.3025 (p. 597)', () => {
    expectWithin(fitByMaximumLikelihood(logOddsRatios, [ones]).components.tau2, 0.3025, 0.00005, 'between trials');
  });

  it.each([
    ['no covariate', [ones], [-0.714532342], [0.179781517], 0.313243261],
    ['latitude', [ones, latitude], [0.25146821, -0.029101725], [0.2490953972, 0.0071953272], 0.0763479644],
  ] as const)('log risk ratio by REML, %s (recomputed)', (_name, columns, means, errors, tau2) => {
    const { fit } = fitModel(logRiskRatios, columns, { rho: 0, weighting: 'mixed' });
    // The expected values were iterated to about eight digits.
    expectWithin(fit?.components?.tau2 ?? Number.NaN, tau2, 1e-8, 'between trials');
    means.forEach((mean, j) => {
      expectWithin(fit?.inference.coefficients[j] ?? Number.NaN, mean, 1e-8, `beta ${j}`);
      expectWithin(fit?.modelStandardErrors[j] ?? Number.NaN, errors[j], 1e-8, `SE ${j}`);
    });
  });
});
