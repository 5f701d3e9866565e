/**
 * One more study in a table against whole matrices in base R (tests/reference/plan.R, which knows none of the formulas
 * of src/model/plan/): expected covariance by the mean of a quadratic form, an outcome, degrees of freedom, and the
 * refit. Tolerance 1e-6 of the standard errors: what variances of two maximisers agree to.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { toArms } from '../../../scripts/measure/planTables.ts';
import { fitEffects, requireFit } from '../../../src/model/bandFit.ts';
import { expectInference, inferOutcome } from '../../../src/model/plan/addedOutcome.ts';
import { addStudy } from '../../../src/model/plan/addedStudy.ts';
import { assume, makePlannedRows } from '../../../src/model/plan/plannedRows.ts';
import { planStudy } from '../../../src/model/plan/plannedStudy.ts';
import { openPlanning } from '../../../src/model/plan/planningBase.ts';
import { measureContrast } from '../../../src/model/robust.ts';
import { defaultSettings } from '../../../src/model/settings.ts';
import { readCase } from '../../reference/cases.ts';
import { expectRelative, expectWithin } from '../../support/closeness.ts';

interface PlanCase {
  readonly name: 'sim4' | 'sim7';
  readonly rho: number;
  readonly reserves: readonly number[];
  readonly people: number;
  readonly within: boolean;
  readonly cv: number;
  readonly correlation: number;
  readonly variance: number;
  readonly expected_effect: readonly number[];
  readonly tau2: number;
  readonly omega2: number;
  readonly expected_cov: readonly (readonly number[])[];
  readonly model_cov: readonly (readonly number[])[];
  readonly df: readonly number[];
  readonly contrasts: readonly (readonly number[])[];
  readonly outcome: {
    readonly deviates: readonly number[];
    readonly beta: readonly number[];
    readonly cov: readonly (readonly number[])[];
  };
  readonly refit: Readonly<Record<'effects' | 'est' | 'se' | 'df', readonly number[]>> & {
    readonly tau2: number;
    readonly omega2: number;
  };
}

const cases: readonly PlanCase[] = JSON.parse(
  readFileSync(new URL('../../reference/plan.json', import.meta.url), 'utf8'),
);
const labelled = cases.map((one) => ({
  label: `${one.name}, ${one.within ? 'within' : 'parallel'} ${one.reserves.join(', ')}`,
  one,
}));

describe.each(labelled)('$label', ({ one }) => {
  const { observations } = readCase(one.name);
  const reserves = readFileSync(new URL(`../../reference/${one.name}.csv`, import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => Number(line.split(',')[5]));
  const settings = { ...defaultSettings, split: null, rho: one.rho };
  const planning = openPlanning(toArms({ observations, reserves }), settings);
  const [band] = planning.bands;
  const plan = {
    ...planStudy(
      one.within ? 'within-person' : 'parallel',
      one.reserves.map((reserve) => ({ reserve, load: 50, people: one.people })),
    ),
    coefficientOfVariation: one.cv,
    correlation: one.correlation,
  };
  const assumptions = assume(planning, plan);
  if (typeof assumptions === 'string') throw new Error(assumptions);
  const rows = makePlannedRows(planning, band, plan, assumptions);
  if (typeof rows === 'string') throw new Error(rows);
  const added = addStudy(band, rows, settings);
  const p = one.model_cov.length;
  const se = (j: number) => Math.sqrt(one.model_cov[j][j]);

  const expectMatrix = (values: Float64Array, expected: readonly (readonly number[])[], label: string) => {
    for (let i = 0; i < p; i++)
      for (let j = 0; j < p; j++)
        expectWithin(values[i * p + j], expected[i][j], 2e-6 * se(i) * se(j), `${label} ${i}${j}`);
  };

  it('has the variances, the expected effects and the sampling variance', () => {
    expect(band.scatter?.omega2 ?? Number.NaN).toBeCloseTo(one.omega2, 8);
    expectRelative(band.scatter?.tau2 ?? Number.NaN, one.tau2, 1e-6, 'τ²');
    rows.forEach(({ effect }, i) => {
      expectRelative(effect.v, one.variance, 1e-12, `variance ${i}`);
      expectWithin(effect.y, one.expected_effect[i], 1e-7 * se(0), `effect ${i}`);
    });
  });

  it('has the expected CR2 covariance, the one of an outcome, and the model’s', () => {
    expectMatrix(expectInference(added).covariance, one.expected_cov, 'expected');
    const outcome = inferOutcome(added, one.outcome.deviates);
    expectMatrix(outcome.covariance, one.outcome.cov, 'outcome');
    one.outcome.beta.forEach((value, j) => {
      expectWithin(outcome.coefficients[j], value, 1e-6 * se(j), `β ${j}`);
    });
    expectMatrix(added.centre.modelCovariance, one.model_cov, 'model');
  });

  it('has the degrees of freedom', () => {
    one.contrasts.forEach((contrast, i) => {
      expectRelative(measureContrast(added.centre, contrast).df, one.df[i], 1e-5, `df ${i}`);
    });
  });

  it('is refitted as the whole table is there', () => {
    const effects = rows.map(({ effect }, i) => ({ ...effect, y: one.refit.effects[i] }));
    const { inference, components } = requireFit(fitEffects([...band.fit.effects, ...effects], settings));
    expectRelative(components?.tau2 ?? Number.NaN, one.refit.tau2, 1e-6, 'τ²');
    one.contrasts.forEach((contrast, i) => {
      const { estimate, standardError, df } = measureContrast(inference, contrast);
      expectWithin(estimate, one.refit.est[i], 1e-6 * standardError, `estimate ${i}`);
      expectRelative(standardError, one.refit.se[i], 1e-6, `standard error ${i}`);
      expectRelative(df, one.refit.df[i], 1e-5, `df ${i}`);
    });
  });
});
