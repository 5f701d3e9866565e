/**
 * Effects and fits of the published trials against base R, which reads the same file by itself and shares no code with
 * the project (tests/reference/published.R, whose head says what is assumed and how it is run). Rows, effects and
 * variances 1e-9 relative; variances of the fits and errors 1e-6 relative, likelihoods 1e-8, as in the other cases.
 *
 * Most of these fits are refused as answers, since one study alone decides their slope. The numbers beneath are
 * compared all the same; robust errors only of the level, since of such a slope they have none to speak of.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { toObservations } from '../../src/model/bandFit.ts';
import { groupByBand } from '../../src/model/loads.ts';
import { fitModel } from '../../src/model/mixed.ts';
import { inferContrast } from '../../src/model/robust.ts';
import { selectRows } from '../../src/model/selection.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { expectRelative, expectWithin } from '../support/closeness.ts';

interface Reference {
  readonly rho: number;
  readonly assumed_correlation: number;
  readonly split: number;
  readonly cases: readonly {
    readonly outcome: 'growth' | 'strength';
    readonly band: 'light' | 'heavy' | 'all';
    readonly studies: number;
    readonly rows: readonly {
      readonly line: number;
      readonly reserve: number;
      readonly y: number;
      readonly v: number;
    }[];
    readonly fits: readonly {
      readonly form: 'level' | 'line';
      readonly tau2: number;
      readonly omega2: number;
      readonly beta: readonly number[];
      readonly se: readonly number[];
      readonly reml: number;
      readonly ml: number;
      readonly robust_se: readonly number[];
      readonly df: readonly number[];
    }[];
  }[];
}

const reference: Reference = JSON.parse(readFileSync('tests/reference/published-trials.json', 'utf8'));
const { arms } = readArms(readFileSync('data/published/arms.csv', 'utf8'), 'arms.csv');
const CONFIDENCE = 0.95;

it('assumes what the settings begin with', () => {
  const { rho, assumedCorrelation, split } = settingsSchema.parse({});
  expect([rho, assumedCorrelation.growth, assumedCorrelation.strength, split]).toEqual([
    reference.rho,
    reference.assumed_correlation,
    reference.assumed_correlation,
    reference.split,
  ]);
});

describe.each(reference.cases)('$outcome, $band loads', ({ outcome, band, studies, rows, fits }) => {
  const split = band === 'all' ? null : reference.split;
  const { effects: all } = selectRows(arms, settingsSchema.parse({ outcome, split }));
  const effects = groupByBand(all, split)
    .flatMap(([name, found]) => (name === band ? found : []))
    .toSorted((a, b) => a.arm.line - b.arm.line);

  it('reads the same rows of the same studies', () => {
    expect(effects.map(({ arm }) => arm.line)).toEqual(rows.map(({ line }) => line));
    expect(new Set(effects.map(({ arm }) => arm.study)).size).toBe(studies);
  });

  it('has the same reserve, effect and variance for each', () => {
    for (const [i, { line, reserve, y, v }] of rows.entries()) {
      expectWithin(effects[i].arm.reserve_reps ?? Number.NaN, reserve, 1e-9, `reserve of line ${line}`);
      expectRelative(effects[i].y, y, 1e-9, `effect of line ${line}`);
      expectRelative(effects[i].v, v, 1e-9, `variance of line ${line}`);
    }
  });

  it.each(fits)('fits the same $form', ({ form, tau2, omega2, beta, se, reml, ml, robust_se, df }) => {
    const ones = effects.map(() => 1);
    const columns = form === 'level' ? [ones] : [ones, effects.map(({ arm }) => arm.reserve_reps ?? Number.NaN)];
    const { fit } = fitModel(toObservations(effects), columns, { rho: reference.rho, weighting: 'mixed' });
    if (!fit) throw new Error(`${outcome}, ${band} loads: no ${form}`);
    // A variance at its bound is 0 in both; beside the other one it is compared where it is not.
    const scale = tau2 + omega2;
    expectWithin(fit.components?.tau2 ?? Number.NaN, tau2, 1e-6 * scale, 'τ²');
    expectWithin(fit.components?.omega2 ?? Number.NaN, omega2, 1e-6 * scale, 'ω²');
    expectWithin(fit.logLikelihood.reml ?? Number.NaN, reml, 1e-8, 'REML');
    expectWithin(fit.logLikelihood.ml ?? Number.NaN, ml, 1e-8, 'ML');
    for (const [j, value] of beta.entries())
      expectWithin(fit.inference.coefficients[j], value, 1e-6 * se[j], `coefficient ${j}`);
    if (form === 'line') return;
    const level = inferContrast(fit.inference, [1], CONFIDENCE);
    expectRelative(level.standardError, robust_se[0], 1e-6, 'robust standard error');
    expectRelative(level.df, df[0], 1e-6, 'degrees of freedom');
  });
});
