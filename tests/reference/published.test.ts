/**
 * The mixed model against printed results of others.
 *
 * Konstantopoulos 2011 (Res Synth Methods 2:61, table 5 and its three-level ML fit): 56 schools in 11
 * districts. Printed: mean 0.1845 (SE 0.0805), variance between districts 0.0577, between schools
 * 0.0329. Recomputed from the printed data by independent code: 0.18445538 (0.08048168), 0.05773836,
 * 0.03286479.
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

const SCHOOLS: Readonly<Record<string, string>> = {
  '11': '-.18 .118 -.22 .118 .23 .144 -.30 .144',
  '12': '.13 .014 -.26 .014 .19 .015 .32 .024',
  '18': '.45 .023 .38 .043 .29 .012',
  '27': '.16 .020 .65 .004 .36 .004 .60 .007',
  '56': '.08 .019 .04 .007 .19 .005 -.06 .004',
  '58': '-.18 .020 .00 .018 .00 .019 -.28 .022 -.04 .020 -.30 .021 .07 .006 .00 .007 .05 .007 -.08 .007 -.09 .007',
  '71': '.30 .015 .98 .011 1.19 .010',
  '86': '-.07 .001 -.05 .001 -.01 .001 .02 .001 -.03 .001 .00 .001 .01 .001 -.10 .001',
  '91': '.50 .010 .66 .011 .20 .010 .00 .009 .05 .013 .07 .013',
  '108': '-.52 .031 .70 .031 -.03 .030 .27 .030 -.34 .030',
  '644': '.12 .087 .61 .082 .04 .067 -.05 .067',
};

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
  const observations = Object.entries(SCHOOLS).flatMap(([study, text]) => {
    const numbers = text.split(' ').map(Number);
    return Array.from({ length: numbers.length / 2 }, (_, i) => ({
      study,
      cohort: null,
      y: numbers[2 * i],
      v: numbers[2 * i + 1],
    }));
  });
  const fit = fitByMaximumLikelihood(observations, [observations.map(() => 1)]);

  it('gives the printed mean, standard error and both variances, all digits', () => {
    const half = 0.00005;
    expectWithin(fit.coefficients[0], 0.1845, half, 'mean');
    expectWithin(fit.standardErrors[0], 0.0805, half, 'SE');
    expectWithin(fit.components.tau2, 0.0577, half, 'between districts');
    expectWithin(fit.components.omega2, 0.0329, half, 'between schools');
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
