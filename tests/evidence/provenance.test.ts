/** What is said of where a row's numbers come from: nothing that the effect does not rest on, nothing left out. */
import { describe, expect, it } from 'vitest';
import { computeEffect } from '../../src/evidence/effects.ts';
import { sourceOf, traceNumbers } from '../../src/evidence/provenance.ts';
import { type Cells, makeArms } from '../support/tables.ts';

function trace(cells: Cells, metric: 'log-ratio' | 'standardised' = 'log-ratio'): string[] {
  const [arm] = makeArms([cells]);
  const effect = computeEffect(arm, { metric, assumedCorrelation: 0.8 });
  return traceNumbers(arm, typeof effect === 'string' ? null : effect).map(
    ({ quantity, value, how }) => `${quantity} = ${Number(value.toPrecision(4))}: ${how}`,
  );
}

const NO_STATISTICS = { baseline_mean: '', baseline_sd: '', followup_mean: '', followup_sd: '', correlation: '' };

describe('the numbers of a row', () => {
  it('of means, SDs and a correlation are reported, effect and variance computed by their formulas', () => {
    expect(trace({})).toEqual([
      'mean before (m₁) = 40: reported',
      'mean after (m₂) = 43: reported',
      'SD before (s₁) = 6: reported',
      'SD after (s₂) = 6.2: reported',
      'correlation of before with after (r) = 0.9: reported',
      'effect = 0.07232: ln(m₂/m₁)',
      expect.stringMatching(/^variance = .*: s₁²\/\(n m₁²\)/u),
    ]);
  });

  it('hold the cells that were filled from others, and bounds of p as bounds', () => {
    const numbers = trace({ n: '', n_total: '50', n_total_arms: '4', reserve_reps: '1-3', attempted_failure: '' });
    expect(numbers).toContain('people = 12: an equal share of 50 over 4 arms');
    expect(numbers.join('\n')).toMatch(/SD of the reserve = 0\.5774: the width of 1 to 3/u);
    const [below, above] = ['<0.001', '>0.05'].map((change_p) => trace({ change_p }).join('\n'));
    expect(below).toMatch(/p of the change, below = 0\.001: reported/u);
    expect(above).toMatch(/p of the change, above = 0\.05: reported/u);
  });

  it('of a ready-made effect are reported and nothing else', () => {
    expect(trace({ ...NO_STATISTICS, effect: '0.05', effect_variance: '0.001', effect_metric: 'log-ratio' })).toEqual([
      'ready-made effect = 0.05: reported',
      'variance of the ready-made effect = 0.001: reported',
    ]);
  });

  it('name the assumed correlation where an SD stands and no correlation can be had', () => {
    expect(trace({ correlation: '' })).toContain(
      'correlation of before with after = 0.8: assumed: the setting for this outcome',
    );
  });

  it('name no assumed correlation where the SD of the change alone gives the variance', () => {
    const numbers = trace({ baseline_sd: '', followup_sd: '', correlation: '', change_se: '1' });
    expect(numbers.join()).not.toMatch(/correlation/u);
    expect(numbers).toContain('SD of the change = 3.464: standard error × √n');
    expect(numbers.join()).toMatch(/variance = .*SD of the change alone/u);
  });

  it('recover no SD of the change where both SDs and their correlation are reported', () => {
    const numbers = trace({ change_mean: '3', change_se: '1' });
    expect(numbers).toContain('standard error of the change = 1: reported');
    expect(numbers.join()).not.toMatch(/standard error × √n/u);
  });

  it('list the formulas of the standardised change', () => {
    expect(trace({}, 'standardised').slice(-2).join()).toMatch(/J\(n − 1\) \(m₂ − m₁\)\/s₁.*2 \(1 − r\)\/n/u);
  });

  it('of a row without an effect in the metric are those that it reports', () => {
    expect(trace({ ...NO_STATISTICS, effect: '0.4', effect_variance: '0.02', effect_metric: 'standardised' })).toEqual([
      'ready-made effect = 0.4: reported',
      'variance of the ready-made effect = 0.02: reported',
    ]);
  });
});

describe('the source of a formula', () => {
  const stepsOf = (cells: Cells) => {
    const [arm] = makeArms([cells]);
    return (['log-ratio', 'standardised'] as const).flatMap((metric) => {
      const effect = computeEffect(arm, { metric, assumedCorrelation: 0.8 });
      return typeof effect === 'string' ? [] : effect.steps;
    });
  };
  const bare = { followup_mean: '', followup_sd: '', correlation: '', change_mean: '3' };
  it.each<[string, Cells]>([
    ['the SD of the change', { ...bare, change_sd: '2.5' }],
    ['its standard error', { ...bare, change_se: '0.7' }],
    ['its interval', { ...bare, change_ci_low: '1.5', change_ci_high: '4.5' }],
    ['its t', { ...bare, change_t: '4' }],
    ['its p', { ...bare, change_p: '0.002' }],
    ['three SDs', { ...bare, followup_sd: '6.2', change_sd: '2.5' }],
    ['a correlation', { ...bare, change_sd: '2.8', correlation: '0.9' }],
    ['the SD of the change alone', { ...bare, baseline_sd: '', change_sd: '2.5' }],
  ])('is named for every number made of %s, unless it is a sum or assumed', (_what, cells) => {
    const steps = stepsOf(cells);
    expect(steps.length).toBeGreaterThan(2);
    for (const step of steps) {
      const isNone = step.quantity === 'mean after' || step.how.startsWith('assumed');
      if (isNone) expect(sourceOf(step), step.how).toBeNull();
      else expect(sourceOf(step), step.how).toMatch(/Cochrane Handbook|\b(?:1999|2011|1988)\b/u);
    }
  });

  it('is none for what a paper reports', () => {
    const [arm] = makeArms([{}]);
    expect(traceNumbers(arm, null).map(sourceOf)).toEqual([null, null, null, null, null]);
  });
});
