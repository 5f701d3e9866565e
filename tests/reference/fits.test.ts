/**
 * The mixed model, robust inference and target against the reference cases (see cases.ts for their
 * sources). Tolerances: the ones the independent 50-digit recomputation supports. Likelihoods 1e-8
 * absolute; variances, standard errors, covariances and df 1e-6 relative; coefficients 1e-7 standard
 * errors; roots and ends of sets 1e-5 repetitions.
 */
import { describe, expect, it } from 'vitest';
import { logLikelihoods } from '../../src/model/likelihood.ts';
import { likelihoodDerivatives } from '../../src/model/likelihoodDerivatives.ts';
import { type Fit, fitModel } from '../../src/model/mixed.ts';
import { arrangeObservations } from '../../src/model/observations.ts';
import { inferContrast } from '../../src/model/robust.ts';
import type { Weighting } from '../../src/model/settings.ts';
import { findTarget } from '../../src/model/target.ts';
import { expectRelative, expectWithin } from '../support/closeness.ts';
import { CASE_NAMES, type ReferenceCase, type ReferenceFit, readCase } from './cases.ts';

const CASES = CASE_NAMES.flatMap((name) => {
  const reference = readCase(name);
  return reference.fits.map((expected) => ({ label: `${name} ${expected.form}`, reference, expected }));
});

function fitCase(reference: ReferenceCase, form: string, weighting: Weighting): Fit {
  const { fit } = fitModel(reference.observations, reference.columns(form), { rho: reference.rho, weighting });
  if (!fit) throw new Error(`${reference.name} ${form} was not fitted`);
  return fit;
}

/** 0 on the boundary is exact; elsewhere 1e-6 relative. */
function expectVariance(value: number, expected: number, label: string): void {
  if (expected === 0) expectWithin(value, 0, 1e-10, label);
  else expectRelative(value, expected, 1e-6, label);
}

const unit = (p: number, j: number) => Array.from({ length: p }, (_, i) => (i === j ? 1 : 0));

describe.each(CASES)('$label', ({ reference, expected }) => {
  const fit = fitCase(reference, expected.form, 'mixed');

  it('gives the REML variances and both log-likelihoods', () => {
    expectVariance(fit.components?.tau2 ?? Number.NaN, expected.reml.tau2, 'tau2');
    expectVariance(fit.components?.omega2 ?? Number.NaN, expected.reml.omega2, 'omega2');
    expectWithin(fit.logLikelihood.reml ?? Number.NaN, expected.reml.loglik, 1e-8, 'REML');
    expectWithin(fit.logLikelihood.ml ?? Number.NaN, expected.ml.loglik, 1e-8, 'ML');
  });

  it('gives AICc as the ML fit does, or none where rows are too few', () => {
    if (expected.ml.AICc === null) expect(fit.aicc).toBeNull();
    else expectWithin(fit.aicc ?? Number.NaN, expected.ml.AICc, 1e-7, 'AICc');
  });

  it('gives the score, Hessian and information at the given variances', () => {
    const { tau2, omega2, score, observed_hessian, expected_information } = expected.reml;
    const data = arrangeObservations(reference.observations);
    const design = reference
      .columns(expected.form)
      .map((column) => Float64Array.from(data.source, (index) => column[index]));
    const derived = likelihoodDerivatives(data, design, { tau2, omega2, rho: reference.rho }, 'reml');
    const scale = (i: number) => Math.sqrt(expected_information[i][i]);
    [0, 1].forEach((i) => {
      // A score is compared in units of its own standard deviation.
      expectWithin(derived.score[i], score[i], 1e-6 * scale(i), `score ${i}`);
    });
    const entries = [
      [0, 0],
      [0, 1],
      [1, 1],
    ] as const;
    entries.forEach(([i, j], k) => {
      expectRelative(derived.hessian[k], observed_hessian[i][j], 1e-6, `Hessian ${i}${j}`, scale(i) * scale(j));
      expectRelative(
        derived.information[k],
        expected_information[i][j],
        1e-6,
        `information ${i}${j}`,
        scale(i) * scale(j),
      );
    });
    const at = logLikelihoods(data, design, { tau2, omega2, rho: reference.rho });
    expectWithin(at.ml, expected.reml.ml_loglik_at_reml, 1e-8, 'ML at the REML variances');
  });

  it('gives coefficients, model-based and CR2 standard errors, covariances and df', () => {
    const { inference } = fit;
    expect(inference.dropped).toBe(expected.cr2.dropped_eigenvalues);
    expected.reml.beta.forEach((beta, j) => {
      const estimate = inferContrast(inference, unit(expected.p, j), 0.95);
      expectWithin(estimate.estimate, beta, 1e-7 * expected.reml.se[j], `beta ${j}`);
      expectRelative(fit.modelStandardErrors[j], expected.reml.se[j], 1e-6, `model SE ${j}`);
      expectRelative(estimate.standardError, expected.cr2.se[j], 1e-6, `CR2 SE ${j}`);
      expectRelative(estimate.df, expected.cr2.df[j], 1e-6, `df ${j}`);
      expectWithin(estimate.p, expected.cr2.p[j], 1e-6, `p ${j}`);
      expectWithin(estimate.ciLow, expected.cr2.ci_lo[j], 1e-5 * expected.cr2.se[j], `low ${j}`);
      expectWithin(estimate.ciHigh, expected.cr2.ci_hi[j], 1e-5 * expected.cr2.se[j], `high ${j}`);
      expected.cr2.cov[j].forEach((covariance, k) => {
        const scale = expected.cr2.se[j] * expected.cr2.se[k];
        expectRelative(inference.covariance[j * expected.p + k], covariance, 1e-6, `covariance ${j}${k}`, scale);
      });
    });
  });

  it('gives every contrast listed', () => {
    const contrasts = expected.contrasts ?? [];
    expect(contrasts.length > 0 || expected.form === 'intercept').toBe(true);
    for (const contrast of contrasts) {
      const estimate = inferContrast(fit.inference, contrast.c, 0.95);
      expectWithin(estimate.estimate, contrast.est, 1e-6 * contrast.se, `${contrast.name} estimate`);
      expectRelative(estimate.standardError, contrast.se, 1e-6, `${contrast.name} SE`);
      expectRelative(estimate.df, contrast.df, 1e-6, `${contrast.name} df`);
    }
  });

  it('gives the weighted fit by precision with its own robust errors', () => {
    const precise = fitCase(reference, expected.form, 'precision');
    expectWithin(
      precise.logLikelihood.ml ?? Number.NaN,
      expected.wls.loglik_ml_theta0,
      1e-7,
      'ML at no variance between',
    );
    expected.wls.beta.forEach((beta, j) => {
      const estimate = inferContrast(precise.inference, unit(expected.p, j), 0.95);
      expectWithin(estimate.estimate, beta, 1e-7 * expected.wls.se_fixed[j], `beta ${j}`);
      expectRelative(precise.modelStandardErrors[j], expected.wls.se_fixed[j], 1e-6, `fixed SE ${j}`);
      expectRelative(estimate.standardError, expected.wls.cr2_se[j], 1e-6, `CR2 SE ${j}`);
      expectRelative(estimate.df, expected.wls.cr2_df[j], 1e-6, `df ${j}`);
    });
  });
});

/** Forms whose inverse prediction is given. */
const INVERSES = CASES.flatMap(({ label, reference, expected }) =>
  (expected.inverse ?? []).map((inverse) => ({ label: `${label}, share ${inverse.p}`, reference, expected, inverse })),
);

describe.each(INVERSES)('inverse of $label', ({ reference, expected, inverse }) => {
  const fit = fitCase(reference, expected.form, 'mixed');
  const target = findTarget(fit.inference, reference.row(expected.form), {
    keptShare: inverse.p,
    confidence: 0.95,
    furthest: 10,
    nearest: 0,
    studies: fit.data.studies.length,
  });

  it('gives every piece of the interval', () => {
    expect(target.set.length, JSON.stringify(target.set)).toBe(inverse.set.length);
    inverse.set.forEach(([low, high], i) => {
      expectWithin(target.set[i][0], low, 1e-5, `low end of piece ${i}`);
      expectWithin(target.set[i][1], high, 1e-5, `high end of piece ${i}`);
    });
  });

  it('gives the point as the first root, or the edge where there is none', () => {
    // Shares above 1 ask for more than the growth at 0 and have no target to compare.
    if (inverse.p >= 1) {
      expect(target.reachedEdge).toBe(false);
      return;
    }
    if (inverse.r_star === null) expect(target.reachedEdge).toBe(true);
    else expectWithin(target.point ?? Number.NaN, inverse.r_star, 1e-5, 'point');
  });
});

it('covers every case: 4 data sets, 27 fits, and the inverse of each simulated curve', () => {
  const count = (select: (fit: ReferenceFit) => boolean) => CASES.filter(({ expected }) => select(expected)).length;
  expect(count(() => true)).toBe(27);
  expect(INVERSES.length).toBeGreaterThanOrEqual(60);
});
