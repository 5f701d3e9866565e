/**
 * Effects and recovered statistics against worked values: the Cochrane Handbook (chapter 6; text of
 * edition 5.1, §7.7.3 and §16.4.6.4), Hedges 1981 (exact J), Morris 2008 (Organ Res Methods 11:364,
 * table 5), and cases derived by hand.
 */
import { describe, expect, it } from 'vitest';
import type { Effect } from '../../src/evidence/effects.ts';
import { computeEffect, computeEffects } from '../../src/evidence/effects.ts';
import {
  changeSd,
  correlationFromSds,
  followupSdFromChange,
  sdFromStandardError,
  standardErrorFromInterval,
  standardErrorFromP,
  standardErrorFromT,
} from '../../src/evidence/recover.ts';
import { smallSampleFactor } from '../../src/evidence/smallSampleFactor.ts';
import { studentTwoSidedP } from '../../src/numerics/distributions.ts';
import { toPercent } from '../../src/numerics/percent.ts';
import { expectRelative, expectWithin } from '../support/closeness.ts';
import { type Cells, makeArms } from '../support/tables.ts';

function effectOf(changes: Cells, metric: 'log-ratio' | 'standardised' = 'log-ratio'): Effect {
  const effect = computeEffect(makeArms([changes])[0], { metric, assumedCorrelation: 0.8 });
  if (typeof effect === 'string') throw new Error(effect);
  return effect;
}

describe('recovered statistics', () => {
  it('SE from a difference of 3.8 with p = 0.008 on 45 df is 1.37 (Cochrane Handbook)', () => {
    expectWithin(standardErrorFromP(3.8, 0.008, 46), 1.37, 0.005, 'SE');
  });

  it('SE from a p of the largest t comes from its own tail: t undoes it', () => {
    for (const t of [9, 30, 200])
      expectRelative(standardErrorFromP(t, studentTwoSidedP(t, 40), 41), 1, 1e-9, `SE, t ${t}`);
  });

  it('SE of the difference from SDs 2.38 and 2.21, n 10, r 0.68 is 0.583 (Cochrane Handbook)', () => {
    expectWithin(changeSd(2.38, 2.21, 0.68) / Math.sqrt(10), 0.583, 0.0005, 'SE');
  });

  it('SE from an interval in a large sample is its width over 3.92 (Cochrane Handbook)', () => {
    expectRelative(standardErrorFromInterval(0, 3.92, 1e6), 1, 1e-4, 'SE');
  });

  it('SE from a change of 4 with t = −2 is 2, and SD from SE 2 with n 9 is 6', () => {
    expect(standardErrorFromT(4, -2)).toBe(2);
    expect(sdFromStandardError(2, 9)).toBe(6);
  });

  it('correlation from three SDs undoes the SD of the change', () => {
    expectRelative(correlationFromSds(3, 4, changeSd(3, 4, 0.7)), 0.7, 1e-14, 'r');
  });

  it('SD after from that before, of the change, and r undoes the SD of the change', () => {
    expectRelative(followupSdFromChange(3, changeSd(3, 4, 0.7), 0.7), 4, 1e-13, 'SD after');
  });

  it('is NaN where nothing can be recovered: no change, t = 0, p = 1', () => {
    expect(standardErrorFromT(1, 0)).toBeNaN();
    expect(standardErrorFromP(0, 0.5, 10)).toBeNaN();
    expect(standardErrorFromP(1, 1, 10)).toBeNaN();
  });
});

describe('the small-sample factor J', () => {
  it.each([
    [2, 0.564189583548],
    [3, 0.723601254558],
    [4, 0.797884560803],
    [5, 0.84074868246],
    [9, 0.913874891793],
    [10, 0.922745608053],
    [19, 0.959910352924],
    [20, 0.961944533741],
    [29, 0.973874984597],
    [50, 0.984911942296],
  ])('of %d degrees of freedom is %d (Hedges 1981, recomputed)', (m, expected) => {
    expectWithin(smallSampleFactor(m), expected, 1e-12, 'J');
  });
});

describe('the standardised change', () => {
  // Morris 2008, table 5 (p. 382): treatment minus control of d with separate SDs, as printed.
  const treatment = [
    [30.6, 38.5, 15, 20],
    [23.5, 26.8, 3.1, 50],
    [0.5, 0.7, 0.1, 9],
    [53.4, 75.9, 14.5, 10],
    [35.6, 36, 4.7, 14],
  ];
  const control = [
    [23.1, 19.7, 13.8, 20],
    [24.9, 25.3, 4.1, 42],
    [0.6, 0.6, 0.2, 9],
    [55.7, 60.7, 17.3, 11],
    [34.8, 33.4, 3.1, 14],
  ];
  const printed = [0.7421, 0.9524, 1.8054, 1.1514, 0.505];

  it.each(printed.map((value, i) => [i + 1, value] as const))(
    'of study %d of Morris 2008 differs from control by %d',
    (study, value) => {
      const change = ([m1, m2, sd, n]: readonly number[]) =>
        effectOf({ baseline_mean: `${m1}`, followup_mean: `${m2}`, baseline_sd: `${sd}`, n: `${n}` }, 'standardised').y;
      // Morris corrects with the approximation 1 − 3/(4 df − 1), up to 0.0004 from the exact J at df 8.
      expectWithin(change(treatment[study - 1]) - change(control[study - 1]), value, 0.0008, 'difference');
    },
  );

  it('has variance 2 (1 − r)/n + d²/(2n), by hand', () => {
    const { y, v } = effectOf(
      { n: '12', correlation: '0.9', baseline_mean: '40', baseline_sd: '6', followup_mean: '43' },
      'standardised',
    );
    expectRelative(y, smallSampleFactor(11) * 0.5, 1e-14, 'd');
    expectRelative(v, 0.2 / 12 + y ** 2 / 24, 1e-13, 'v');
  });
});

describe('the log ratio', () => {
  it('has the value and variance of Lajeunesse 2011 (eq. 6), by hand', () => {
    // ln(43/40); 0.15²/12 + (6.2/43)²/12 − 2 · 0.9 · 6 · 6.2/(12 · 40 · 43)
    const { y, v } = effectOf({});
    expectRelative(y, Math.log(43 / 40), 1e-15, 'y');
    expectRelative(v, 0.0225 / 12 + (6.2 / 43) ** 2 / 12 - (1.8 * 37.2) / (12 * 40 * 43), 1e-13, 'v');
    expectRelative(toPercent(y), 7.5, 1e-13, 'per cent');
  });

  const sd = changeSd(6, 6.2, 0.9);
  const n = 12;
  // 97.5 % point of t with 11 df, as printed tables have it, here with seven digits.
  const half = (2.200985 * sd) / Math.sqrt(n);
  const bare = { correlation: '', followup_mean: '', change_mean: '3' };
  it.each<[string, Cells, RegExp]>([
    ['the SD of the change', { ...bare, change_sd: `${sd}` }, /three SDs/],
    ['its standard error', { ...bare, change_se: `${sd / Math.sqrt(n)}` }, /standard error/],
    ['its 95 % interval', { ...bare, change_ci_low: `${3 - half}`, change_ci_high: `${3 + half}` }, /95 % interval/],
    ['its p', { ...bare, change_p: `${studentTwoSidedP((3 * Math.sqrt(n)) / sd, n - 1)}` }, /p: /],
    ['its t', { ...bare, change_t: `${(3 * Math.sqrt(n)) / sd}` }, /t: /],
  ])('is the same from %s, with a step that says how', (_name, cells, how) => {
    const { v, correlation, steps } = effectOf(cells);
    // 1e-6: the t quantile of the interval is written with seven digits.
    expectRelative(v, effectOf({}).v, 1e-6, 'v');
    expectRelative(correlation ?? Number.NaN, 0.9, 1e-6, 'r');
    expect(steps.map((step) => step.how).join('; ')).toMatch(how);
  });

  it('takes the assumed correlation where a row gives none, and says so', () => {
    const { correlation, steps } = effectOf({ correlation: '' });
    expect(correlation).toBe(0.8);
    expect(steps.some(({ how }) => how.startsWith('assumed'))).toBe(true);
  });

  it('solves for the SD after from that before, of the change, and r', () => {
    const { v, steps } = effectOf({ followup_sd: '', change_sd: `${sd}` });
    // 6.2 is the larger root of s₂² − 2 · 0.9 · 6 s₂ + 36 = s_c².
    expectRelative(v, effectOf({}).v, 1e-9, 'v');
    expect(steps.map(({ quantity }) => quantity)).toContain('SD after');
  });

  it('takes r = 1 − s_c²/(2 s₁²) with the SD after assumed equal, and says both', () => {
    const { correlation, steps } = effectOf({ correlation: '', followup_sd: '', change_sd: '3' });
    expectRelative(correlation ?? Number.NaN, 1 - 9 / 72, 1e-14, 'r');
    expect(steps.map(({ how }) => how).join('; ')).toMatch(
      /assumed equal: 1 − s_c²[\s\S]*assumed equal to the SD before/,
    );
  });

  it('has variance s_c²/(n m₁ m₂) from the SD of the change alone', () => {
    const { v } = effectOf({ baseline_sd: '', followup_sd: '', correlation: '', change_sd: '3' });
    expectRelative(v, 9 / (12 * 40 * 43), 1e-14, 'v');
  });

  it('is left out where its variance is 0 or cannot be had, with the reason', () => {
    const arms = makeArms([{ baseline_mean: '6', baseline_sd: '6', followup_mean: '6', followup_sd: '6' }]).map(
      (arm) => ({ ...arm, correlation: 1 }),
    );
    expect(computeEffect(arms[0], { metric: 'log-ratio', assumedCorrelation: 0.8 })).toMatch(/no variance above 0/);
    const [pair] = makeArms([{ n: '2' }]);
    expect(computeEffect(pair, { metric: 'standardised', assumedCorrelation: 0.8 })).toMatch(/two people/);
  });

  it('uses means where a ready-made effect is in the other metric', () => {
    const { y } = effectOf({ effect: '0.4', effect_variance: '0.02', effect_metric: 'standardised' });
    expectRelative(y, Math.log(43 / 40), 1e-15, 'y');
  });

  it('looks at the rows of the outcome only, and leaves them as they were', () => {
    const arms = Object.freeze(makeArms([{}, { outcome: 'strength' }]).map((arm) => Object.freeze(arm)));
    const { effects, excluded } = computeEffects(arms, {
      outcome: 'strength',
      metric: 'log-ratio',
      assumedCorrelation: 0.8,
    });
    expect(effects.map(({ arm }) => arm.line)).toEqual([3]);
    expect(excluded).toEqual([]);
  });

  it('takes a ready-made effect as it is', () => {
    const { y, v } = effectOf({ effect: '0.05', effect_variance: '0.001', effect_metric: 'log-ratio' });
    expect([y, v]).toEqual([0.05, 0.001]);
  });

  it.each([
    [
      'effect',
      { effect: '1e300', effect_variance: '0.001', effect_metric: 'log-ratio' },
      /1\.00e\+300 .* up to 1000000/,
    ],
    ['variance', { effect: '0.1', effect_variance: '5e295', effect_metric: 'log-ratio' }, /variance of 5\.00e\+295/],
    [
      'least variance',
      { effect: '0.1', effect_variance: '5e-324', effect_metric: 'log-ratio' },
      /from 1e-24 to 1e\+24/,
    ],
    ['variance from huge SDs', { followup_sd: '1e150' }, /cannot be computed with/],
  ])('leaves out a row whose %s is beyond what a number can weigh, with both', (_what, cells, reason) => {
    const arms = makeArms([{}, { arm: 'b', ...cells }]);
    const { effects, excluded } = computeEffects(arms, {
      outcome: 'growth',
      metric: 'log-ratio',
      assumedCorrelation: 0.8,
    });
    expect(effects.map(({ arm }) => arm.line)).toEqual([2]);
    expect(excluded).toEqual([{ line: 3, reason: expect.stringMatching(reason) }]);
  });

  it('leaves out a row whose ready-made effect is in the other metric, with the reason', () => {
    const only = { baseline_mean: '', baseline_sd: '', followup_mean: '', followup_sd: '', correlation: '' };
    const arms = makeArms([{ ...only, effect: '0.4', effect_variance: '0.02', effect_metric: 'standardised' }]);
    const { effects, excluded } = computeEffects(arms, {
      outcome: 'growth',
      metric: 'log-ratio',
      assumedCorrelation: 0.8,
    });
    expect(effects).toEqual([]);
    expect(excluded).toEqual([{ line: 2, reason: expect.stringMatching(/ready-made effect is standardised/) }]);
  });
});
