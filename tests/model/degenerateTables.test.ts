/**
 * Tables at the edge of what a regression can be made of: equal effects, effects on a line, one row a
 * study, reserves that hardly differ, variances over 46 orders, covariates that are reserve again. Each
 * has a whole analysis under each curve and weighting, and none of its numbers is NaN or infinite,
 * which JSON would turn into null without a reason beside it.
 */
import { describe, expect, it } from 'vitest';
import { analyseInFull } from '../../src/model/full.ts';
import { fitModel } from '../../src/model/mixed.ts';
import { inferContrast, makeAcceptance } from '../../src/model/robust.ts';
import { CURVES, settingsSchema, WEIGHTINGS } from '../../src/model/settings.ts';
import { type Cells, makeArms } from '../support/tables.ts';

const READY: Cells = { baseline_mean: '', baseline_sd: '', followup_mean: '', followup_sd: '', correlation: '' };
const effect = (y: number, v: number): Cells => ({
  ...READY,
  effect: String(y),
  effect_variance: String(v),
  effect_metric: 'log-ratio',
});
/** An arm of each study at each reserve. */
const cross = (
  cellsOf: (study: number, reserve: number) => Cells,
  studies = 5,
  reserves: readonly number[] = [0, 2, 4],
) =>
  Array.from({ length: studies }, (_, study) =>
    reserves.map((reserve, i) => ({
      study: `Study ${study}`,
      arm: `arm ${i}`,
      attempted_failure: '',
      reserve_reps: String(reserve),
      ...cellsOf(study, reserve),
    })),
  ).flat();
/** Effects that differ as those of real studies do, the same at every call. */
const uneven = (study: number, reserve: number) =>
  effect(0.1 - 0.01 * reserve + 0.003 * ((7 * study + reserve) % 5), 1e-3);
const fatigue = (followup: (reserve: number) => number) =>
  cross((_, reserve) => ({
    outcome: 'fatigue',
    hours_after: String(12 * reserve),
    followup_mean: String(followup(reserve)),
    followup_sd: '6',
  }));

const TABLES: Readonly<Record<string, readonly Cells[]>> = {
  'one study': cross(uneven, 1),
  'two studies of the same rows': cross(() => ({}), 2),
  'equal effects': cross(() => ({})),
  'effects of exactly 0': cross(() => effect(0, 1e-3)),
  'effects exactly on a line': cross((_, reserve) => effect(0.1 - 0.01 * reserve, 1e-3)),
  'one row a study': cross(uneven, 8, [0, 1, 3]).filter((_, i) => i % 4 === 0),
  'one reserve': cross(uneven, 4, [2, 2, 2]),
  'two reserves': cross(uneven, 5, [0, 3]),
  'reserves a billionth of a repetition apart': cross(uneven, 5, [0, 1e-9, 2e-9]),
  'effects of 100,000 with variances of 1e-20': cross((study, reserve) => effect(1e5 * (1 + study) - reserve, 1e-20)),
  'variances over 46 orders': cross((study, reserve) =>
    effect(0.1 - 0.01 * reserve + 0.001 * study, [1e-23, 1, 1e23][study % 3]),
  ),
  'load that is reserve again': cross((study, reserve) => ({
    ...uneven(study, reserve),
    load_pct_1rm: String(80 - 5 * reserve),
  })),
  'a study of one cohort each': cross((study, reserve) => ({ ...uneven(study, reserve), cohort: 'a' })),
  'no load at all': cross((study, reserve) => ({ ...uneven(study, reserve), load_pct_1rm: '' })),
  'fatigue without a drop': fatigue(() => 40),
  'fatigue that is a gain': fatigue((reserve) => 41 + reserve),
  'strength of equal effects': cross(() => ({ outcome: 'strength' })),
};

/** Every curve, and every weighting with the curve that a few reserves leave least room for. */
const CHOICES = [
  ...CURVES.map((curve) => [curve, 'mixed'] as const),
  ...WEIGHTINGS.filter((weighting) => weighting !== 'mixed').map((weighting) => ['quadratic', weighting] as const),
];

/** Places of a plain object's numbers that are not finite. */
function notFinite(value: unknown, place = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${place} is ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => notFinite(part, `${place}.${key}`));
}

describe.each(Object.entries(TABLES))('a table with %s', (_, rows) => {
  const arms = makeArms(rows);

  it.each(CHOICES)('has a whole analysis in finite numbers with the %s and %s weights', (curve, weighting) => {
    for (const adjust of [[], ['load', 'weekly-sets', 'weeks'] as const]) {
      const full = analyseInFull(arms, settingsSchema.parse({ curve, weighting, split: null, adjust: [...adjust] }));
      expect(full.rows.included + full.rows.excluded.length).toBe(arms.length);
      expect(notFinite(full)).toEqual([]);
    }
  });
});

describe('effects of exactly 0', () => {
  const observations = [0, 1, 2, 3].flatMap((study) =>
    [0, 1].map(() => ({ study: `S${study}`, cohort: null, y: 0, v: 0.01 })),
  );
  const columns = [observations.map(() => 1), observations.map((_, i) => i % 2)];

  it('have slopes of 0 without error, which is no evidence against 0: p is 1 and the contrast is not rejected', () => {
    const { fit } = fitModel(observations, columns, { rho: 0.5, weighting: 'mixed' });
    if (!fit) throw new Error('expected a fit');
    expect(inferContrast(fit.inference, [0, 1], 0.95)).toMatchObject({ estimate: 0, standardError: 0, p: 1 });
    expect(makeAcceptance(fit.inference, 0.95)([0, 1])).toBe(true);
  });

  it('have no likelihood under equal weights, since it rises without end', () => {
    const { fit } = fitModel(observations, columns, { rho: 0.5, weighting: 'equal' });
    expect(fit?.logLikelihood).toEqual({ reml: null, ml: null });
    expect(fit?.aicc).toBeNull();
  });
});
