/**
 * data/checks.json, from which the Methods page says how the engine was checked, against the same checks made anew: the
 * largest differences from the reference fits (cases.ts; every one has its tolerance in fits.test.ts), rounded up
 * to one digit, and what the published examples are held to. After a change that is meant,
 * `npx vitest run --config tests/vitest.config.ts tests/reference/checks.test.ts --update` writes the file.
 */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { fitModel } from '../../src/model/mixed.ts';
import { inferContrast } from '../../src/model/robust.ts';
import { CASE_NAMES, REFERENCE_DIGITS, type ReferenceCase, type ReferenceFit, readCase } from './cases.ts';
import { CERTIFIED, NIST_SOURCE } from './nist.ts';
import { PRINTED } from './threeLevels.ts';

const fits = CASE_NAMES.map(readCase).flatMap((reference) => reference.fits.map((fit) => ({ reference, fit })));
const differences = fits.map(({ reference, fit }) => compareFit(reference, fit));
const largest = (of: (one: (typeof differences)[number]) => readonly number[]) =>
  roundUp(Math.max(...differences.flatMap(of)));
const checks = {
  referenceFits: {
    fits: fits.length,
    dataSets: CASE_NAMES.length,
    digits: REFERENCE_DIGITS,
    /** In standard errors; of a covariance in the product of two; of df as a share. */
    largestDifference: {
      coefficient: largest(({ coefficients }) => coefficients),
      covariance: largest(({ covariances }) => covariances),
      df: largest(({ dfs }) => dfs),
    },
  },
  leastSquares: { source: NIST_SOURCE, sets: CERTIFIED.map(({ name, digits }) => ({ name, digits })) },
  threeLevels: { source: PRINTED.source, decimals: PRINTED.decimals },
};

/** Differences of each coefficient, CR2 covariance and its degrees of freedom from the reference. */
function compareFit(reference: ReferenceCase, { form, p, reml, cr2 }: ReferenceFit) {
  const { fit } = fitModel(reference.observations, reference.columns(form), { rho: reference.rho, weighting: 'mixed' });
  if (!fit) throw new Error(`${reference.name} ${form} was not fitted`);
  const estimates = reml.beta.map((_, j) =>
    inferContrast(
      fit.inference,
      reml.beta.map((_beta, i) => (i === j ? 1 : 0)),
      0.95,
    ),
  );
  return {
    coefficients: estimates.map(({ estimate }, j) => Math.abs(estimate - reml.beta[j]) / reml.se[j]),
    covariances: cr2.cov.flatMap((row, j) =>
      row.map((covariance, k) => Math.abs(fit.inference.covariance[j * p + k] - covariance) / (cr2.se[j] * cr2.se[k])),
    ),
    dfs: estimates.map(({ df }, j) => Math.abs(df - cr2.df[j]) / cr2.df[j]),
  };
}

/** To one significant digit, never below the value. */
function roundUp(value: number): number {
  const [digit, power] = value.toExponential(15).split('e');
  return Number(`${Math.ceil(Number(digit))}e${power}`);
}

it('looks at every coefficient of every fit', () => {
  expect(differences.every(({ coefficients, dfs }, i) => coefficients.length === fits[i].fit.p && dfs.length > 0)).toBe(
    true,
  );
  expect(differences.flatMap(({ covariances }) => covariances).every((value) => value >= 0)).toBe(true);
  expect([1.01e-14, 3e-12, 9.5].map(roundUp)).toEqual([2e-14, 3e-12, 10]);
});

it('what the Methods page says of them is what they are', async () => {
  await expect(`${JSON.stringify(checks, null, 2)}\n`).toMatchFileSnapshot('../../data/checks.json');
});

it('what the README of the model says of them, too', () => {
  const readme = readFileSync(new URL('../../src/model/README.md', import.meta.url), 'utf8');
  const { fits: count, dataSets, digits, largestDifference } = checks.referenceFits;
  const { coefficient, covariance, df } = largestDifference;
  expect(readme).toContain(`${count} fits of ${dataSets} data sets`);
  expect(readme).toContain(`recomputed with ${digits} digits`);
  expect(readme).toContain(`β ${coefficient} standard errors, CR2 ${covariance}, df ${df} relative`);
  for (const { name } of CERTIFIED) expect(readme).toContain(name);
});
