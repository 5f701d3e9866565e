/** Each form in which a paper prints a change, by direct arithmetic where no published example is named. */
import { describe, expect, it } from 'vitest';
import { computeEffect, type Effect } from '../../../src/evidence/effects.ts';
import { meanFromQuartiles, sdFromQuartiles } from '../../../src/evidence/recover.ts';
import { smallSampleFactor } from '../../../src/evidence/smallSampleFactor.ts';
import { expectRelative, expectWithin } from '../../support/closeness.ts';
import { type Cells, makeArms } from '../../support/tables.ts';

const R = 0.8;
const EMPTY: Cells = { baseline_mean: '', baseline_sd: '', followup_mean: '', followup_sd: '', correlation: '' };
const resultOf = (cells: Cells, metric: 'log-ratio' | 'standardised' = 'log-ratio') =>
  computeEffect(makeArms([{ ...EMPTY, ...cells }])[0], { metric, assumedCorrelation: R });
function effectOf(cells: Cells, metric: 'log-ratio' | 'standardised' = 'log-ratio'): Effect {
  const effect = resultOf(cells, metric);
  if (typeof effect === 'string') throw new Error(effect);
  return effect;
}
const wordsOf = ({ steps }: Effect) => steps.map(({ quantity, how }) => `${quantity}: ${how}`).join('\n');

describe('quartiles of a normal sample', () => {
  it('of 100 people at 0.02 and 0.04 have an SD of 0.0150441 (formula of Wan et al. 2014, recomputed)', () => {
    expectWithin(sdFromQuartiles(0.02, 0.04, 100), 0.0150441, 5e-8, 'SD');
  });

  it('weigh 0.7 + 0.39/n against the median (Luo et al. 2018, recomputed): 10, 12, 17 of 13 people give 13.095', () => {
    // w = 0.73: 0.73 · 13.5 + 0.27 · 12
    expectRelative(meanFromQuartiles(10, 12, 17, 13), 13.095, 1e-14, 'mean');
  });

  it('as a row give both means and SDs, which are recovered', () => {
    const effect = effectOf({
      n: '13',
      baseline_median: '12',
      baseline_q1: '10',
      baseline_q3: '17',
      followup_median: '13',
      followup_q1: '11',
      followup_q3: '18',
    });
    expectRelative(effect.y, Math.log(14.095 / 13.095), 1e-12, 'y');
    const [k1, k2] = [sdFromQuartiles(10, 17, 13) / 13.095, sdFromQuartiles(11, 18, 13) / 14.095];
    expectRelative(effect.v, (k1 ** 2 + k2 ** 2 - 2 * R * k1 * k2) / 13, 1e-12, 'v');
    expect(effect.restsOn).toBe('recovered');
  });

  it('of the change give mean and SD beside a mean before', () => {
    const effect = effectOf({ n: '13', baseline_mean: '40', change_median: '3', change_q1: '1', change_q3: '5' });
    expectRelative(effect.y, Math.log(43 / 40), 1e-14, 'y');
    expectRelative(effect.v, sdFromQuartiles(1, 5, 13) ** 2 / (13 * 40 * 43), 1e-13, 'v');
  });

  it('that are missing leave the median to stand for the mean, which is assumed', () => {
    const effect = effectOf({ baseline_median: '40', followup_mean: '43', change_sd: '2.4' });
    expect(wordsOf(effect)).toMatch(/mean before: assumed equal to the median/u);
    expect(effect.restsOn).toBe('assumed');
  });
});

describe('means with standard errors', () => {
  it('have SDs of the error times √n: 2 with 9 people is 6', () => {
    const effect = effectOf({ n: '9', baseline_mean: '40', baseline_se: '2', followup_mean: '43', followup_se: '2.1' });
    expectRelative(effect.v, (0.15 ** 2 + (6.3 / 43) ** 2 - 2 * R * 0.15 * (6.3 / 43)) / 9, 1e-13, 'v');
    expect(wordsOf(effect)).toMatch(/SD before: standard error × √n\nSD after: standard error × √n/u);
    expect(effect.restsOn).toBe('recovered');
  });
});

describe('a change with its spread', () => {
  const change = { n: '12', change_mean: '3', percent_change: '7.5' };
  // s_c²/(n m₁ m₂), the mean before being 100 · 3/7.5 = 40.
  const variance = 2.4 ** 2 / (12 * 40 * 43);

  it.each<[string, Cells]>([
    ['its SD', { change_sd: '2.4' }],
    ['its standard error', { change_se: String(2.4 / Math.sqrt(12)) }],
    // 95 % point of t with 11 df: 1.795885, of tables.
    [
      'its 90 % interval',
      {
        change_ci_low: String(3 - (1.795885 * 2.4) / Math.sqrt(12)),
        change_ci_high: String(3 + (1.795885 * 2.4) / Math.sqrt(12)),
        ci_level: '90',
      },
    ],
    ['its F', { change_f: String(9 / (2.4 ** 2 / 12)) }],
  ])('and a change in per cent have the mean before, by %s', (_what, spread) => {
    const effect = effectOf({ ...change, ...spread });
    expectRelative(effect.y, Math.log(43 / 40), 1e-12, 'y');
    expectRelative(effect.v, variance, 1e-6, 'v');
    expect(wordsOf(effect)).toMatch(/mean before: 100 × mean change \/ change in per cent/u);
  });

  it('takes degrees of freedom other than n − 1 where they are printed', () => {
    // p of t = 2 with 30 df is 0.0546 (tables), so that the error is 1.5 and the SD 1.5 √12.
    const effect = effectOf({ ...change, change_p: '0.05463', change_df: '30' });
    expectRelative(effect.v, (1.5 ** 2 * 12) / (12 * 40 * 43), 2e-3, 'v');
    expect(wordsOf(effect)).toMatch(/t with 30 df/u);
  });

  it('of a bound of p rests on the bound, which gives the largest SD', () => {
    const [bound, exact] = ['<0.001', '0.001'].map((p) => effectOf({ ...change, change_p: p }));
    expect(bound.v).toBe(exact.v);
    expect([bound.restsOn, exact.restsOn]).toEqual(['assumed', 'recovered']);
    expect(wordsOf(bound)).toMatch(/bound of p/u);
    expect(effectOf({ ...change, change_p: '0.0001' }).v).toBeLessThan(bound.v);
  });

  it('has none where p is only said to be above a bound', () => {
    expect(resultOf({ ...change, change_p: '>0.05' })).toMatch(/only that it is above 0\.05, which sets no limit/u);
  });

  it('counts a credible interval as one of confidence, and says so', () => {
    const limits = { change_ci_low: '1.5', change_ci_high: '4.5' };
    const [confidence, credible, at90] = [
      effectOf({ ...change, ...limits }),
      effectOf({ ...change, ...limits, ci_kind: 'credible' }),
      effectOf({ ...change, ...limits, ci_kind: 'credible', ci_level: '90' }),
    ];
    expect(credible.v).toBe(confidence.v);
    expect(at90.v).toBeGreaterThan(credible.v);
    expect([confidence.restsOn, credible.restsOn, at90.restsOn]).toEqual(['recovered', 'assumed', 'assumed']);
    expect(wordsOf(credible)).toMatch(
      /credible interval, assumed of 95 % and to be as wide as a 95 % confidence interval/u,
    );
    expect(wordsOf(at90)).toMatch(/credible interval, assumed as wide as a 90 % confidence interval/u);
  });

  it('alone is no log ratio, and by its own SD no standardised change', () => {
    const alone = { change_mean: '3', change_sd: '2.4' };
    expect(resultOf(alone)).toMatch(/a change but no mean before, and no change in per cent/u);
    expect(resultOf(alone, 'standardised')).toMatch(/by the SD of the change it would be another measure/u);
  });
});

describe('a change in per cent', () => {
  it('with its SD has y = ln(1 + p/100) and v = s²/(n (100 + p)²)', () => {
    const effect = effectOf({ n: '12', percent_change: '7.5', percent_change_sd: '6' });
    expectRelative(effect.y, Math.log(1.075), 1e-14, 'y');
    expectRelative(effect.v, 36 / (12 * 107.5 ** 2), 1e-14, 'v');
    expect(effect.restsOn).toBe('printed');
  });

  it('with t is 7.5/t per cent sure', () => {
    const { v } = effectOf({ n: '12', percent_change: '7.5', change_t: '3' });
    expectRelative(v, 2.5 ** 2 / 107.5 ** 2, 1e-13, 'v');
  });

  it('alone is valid, and left out for want of a spread', () => {
    expect(resultOf({ percent_change: '7.5' })).toBe('it reports no standard deviation, which a variance needs');
  });

  it.each([
    ['baseline-sd', 'recovered', /SD before: mean change \/ standardised effect$/mu],
    ['', 'assumed', /SD before: mean change \/ standardised effect, assumed to be by the SD before/u],
    ['pooled-sd', 'recovered', /SD of before and after pooled: mean change \/ standardised effect$/mu],
  ])('with a standardised effect by %s has its SD', (effect_standardiser, restsOn, words) => {
    const effect = effectOf({
      n: '12',
      percent_change: '7.5',
      effect: '0.5',
      effect_metric: 'standardised',
      effect_standardiser,
    });
    // In per cent of the mean before: 7.5/0.5 = 15 at both times.
    const [k1, k2] = [0.15, 15 / 107.5];
    expectRelative(effect.v, (k1 ** 2 + k2 ** 2 - 2 * R * k1 * k2) / 12, 1e-12, 'v');
    expect(effect.restsOn).toBe(restsOn);
    expect(wordsOf(effect)).toMatch(words);
  });

  it('with one by the SD of the change, corrected for small samples, has that SD', () => {
    const cells = { n: '12', percent_change: '7.5', effect: '1.5', effect_metric: 'standardised' };
    const effect = effectOf({ ...cells, effect_standardiser: 'change-sd', effect_corrected: 'yes' });
    // g = J d, so that d = 1.5/J and s_c = 7.5 J/1.5.
    expectRelative(effect.v, (5 * smallSampleFactor(11)) ** 2 / (12 * 100 * 107.5), 1e-12, 'v');
  });

  it('with one of the other sign has none', () => {
    const cells = { percent_change: '7.5', effect: '-0.5', effect_metric: 'standardised' };
    expect(resultOf(cells)).toMatch(/the two have not one sign/u);
  });
});

describe('a standardised effect without its variance', () => {
  const printed = { n: '12', effect: '0.5', effect_metric: 'standardised' } as const;
  const J = smallSampleFactor(11);

  it('by the SD before has v = 2 (1 − r)/n + d²/(2 n)', () => {
    const { y, v } = effectOf(
      { ...printed, effect_standardiser: 'baseline-sd', effect_corrected: 'yes', correlation: '0.9' },
      'standardised',
    );
    expect(y).toBe(0.5);
    expectRelative(v, 0.2 / 12 + 0.25 / 24, 1e-13, 'v');
  });

  it('by the SD of the change is d √(2 (1 − r)) by that before (Morris & DeShon 2002)', () => {
    const effect = effectOf({ ...printed, effect_standardiser: 'change-sd' }, 'standardised');
    expectRelative(effect.y, 0.5 * Math.sqrt(0.4) * J, 1e-13, 'y');
    expectRelative(effect.v, 0.4 / 12 + effect.y ** 2 / 24, 1e-13, 'v');
    expect(effect.steps.find(({ quantity }) => quantity === 'effect')?.how).toBe('as the step before it');
  });

  it('by the SD before and corrected stands as it is printed', () => {
    const cells = { ...printed, effect_standardiser: 'baseline-sd', effect_corrected: 'yes' };
    const { steps } = effectOf(cells, 'standardised');
    expect(steps.find(({ quantity }) => quantity === 'effect')).toMatchObject({ value: 0.5, how: 'reported' });
  });

  it('by an SD that is not said is taken as by that before, and rests on that', () => {
    const effect = effectOf(printed, 'standardised');
    expectRelative(effect.y, 0.5 * J, 1e-13, 'y');
    expect(effect.restsOn).toBe('assumed');
  });

  it('is left out of log ratios', () => {
    expect(resultOf(printed)).toMatch(/its ready-made effect is standardised, and it reports no means/u);
  });
});

describe('what a row rests on', () => {
  const printed = { baseline_mean: '40', baseline_sd: '6', followup_mean: '43', followup_sd: '6.2' };

  it('is printed with means and SDs, whatever correlation is assumed', () => {
    expect(effectOf(printed).restsOn).toBe('printed');
  });

  it('is assumed where its people are a share of a total, recovered where its reserve comes from repetitions', () => {
    expect(effectOf({ ...printed, n: '', n_total: '30', n_total_arms: '3' }).restsOn).toBe('assumed');
    const reserve = { reserve_reps: '', attempted_failure: '', reps_per_set: '10', reps_possible: '12' };
    expect(effectOf({ ...printed, ...reserve }).restsOn).toBe('recovered');
  });

  it('does not ask how its load is known', () => {
    expect(effectOf({ ...printed, load_pct_1rm: '', load_rm: '8-12' }).restsOn).toBe('printed');
  });
});
