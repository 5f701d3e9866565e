/**
 * The grid of likelihoods against one QR a point. Only starts of an ascent are chosen by it, so 1e-8 of
 * 1 + |l| is far closer than it needs to be.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { logLikelihoods } from '../../src/model/likelihood.ts';
import { gridLikelihoods } from '../../src/model/likelihoodGrid.ts';
import { arrangeColumn, arrangeObservations, type Observation } from '../../src/model/observations.ts';
import { selectRows } from '../../src/model/selection.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { leastSquares } from '../../src/numerics/leastSquares.ts';
import { expectWithin } from '../support/closeness.ts';

const { arms } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const { effects } = selectRows(arms, settingsSchema.parse({}));
const shipped = effects.map(({ arm, y, v }) => ({ study: arm.study, cohort: arm.cohort, y, v }));
const reserves = effects.map(({ arm }) => arm.reserve_reps ?? Number.NaN);

const tables: Record<string, readonly Observation[]> = {
  'the shipped table': shipped,
  'no cohort': shipped.map((one) => ({ ...one, cohort: null })),
  'one row a study': shipped.map((one, i) => ({ ...one, study: String(i) })),
  'variances over eight orders': shipped.map((one, i) => ({ ...one, v: one.v * 10 ** ((i % 9) - 4) })),
  'effects on a line but for rounding': shipped.map((one, i) => ({ ...one, y: 0.1 - 0.01 * reserves[i] })),
  'variances too small for a product of doubles': shipped.map((one) => ({ ...one, v: one.v * 1e-120 })),
};

describe.each(Object.entries(tables))('with %s', (_, observations) => {
  const data = arrangeObservations(observations);
  const columns = [reserves.map(() => 1), reserves, reserves.map((r) => r * r)].map((column) =>
    arrangeColumn(data, column),
  );

  it.each([0, 0.5, 0.9])('and rho %d every point is what a QR there gives', (rho) => {
    const taus = [0, 1e-6, 1e-3, 0.1, 1e4];
    const omegas = [0, 1e-5, 1e-2, 10];
    const grid = gridLikelihoods(data, columns, leastSquares(columns, data.y), rho, taus, omegas);
    expect(grid.flat()).toHaveLength(20);
    grid.forEach((row, i) => {
      row.forEach((both, j) => {
        const exact = logLikelihoods(data, columns, { tau2: taus[i], omega2: omegas[j], rho });
        for (const method of ['reml', 'ml'] as const) {
          const tolerance = 1e-8 * (1 + Math.abs(exact[method]));
          expectWithin(both[method], exact[method], tolerance, `${method} at ${taus[i]}, ${omegas[j]}`);
        }
      });
    });
  });
});

it('is −Infinity everywhere where the columns are dependent', () => {
  const data = arrangeObservations(shipped);
  const column = arrangeColumn(data, reserves);
  const columns = [column, column.map((value) => 2 * value)];
  const grid = gridLikelihoods(data, columns, leastSquares(columns, data.y), 0.5, [0, 0.1], [0, 0.1]);
  expect(grid.flat().map(({ ml }) => ml)).toEqual(Array(4).fill(Number.NEGATIVE_INFINITY));
});
