/** A row whose people are not known but whose standard error is: the same as with them, whatever their number. */
import { describe, expect, it } from 'vitest';
import { computeEffect, type Effect } from '../../../src/evidence/effects.ts';
import { expectRelative } from '../../support/closeness.ts';
import { type Cells, makeArms } from '../../support/tables.ts';

const BARE: Cells = {
  baseline_mean: '',
  baseline_sd: '',
  followup_mean: '',
  followup_sd: '',
  correlation: '',
};
const choice = { metric: 'log-ratio', assumedCorrelation: 0.8 } as const;

function effectOf(cells: Cells): Effect {
  const effect = computeEffect(makeArms([{ ...BARE, ...cells }])[0], choice);
  if (typeof effect === 'string') throw new Error(effect);
  return effect;
}

describe.each<[string, Cells]>([
  ['of the change', { baseline_mean: '40', change_mean: '3', change_se: '0.5' }],
  ['of the change in per cent', { percent_change: '7.2', percent_change_se: '1.9' }],
  ['of both means', { baseline_mean: '40', baseline_se: '1.5', followup_mean: '43', followup_se: '1.6' }],
  [
    'of both means with their correlation',
    {
      baseline_mean: '40',
      baseline_se: '1.5',
      followup_mean: '43',
      followup_se: '1.6',
      correlation: '0.95',
    },
  ],
])('a standard error %s', (_of, cells) => {
  it.each(['2', '18', '1000'])('needs no n: the same effect and variance as with %s people', (n) => {
    const [without, counted] = [effectOf({ ...cells, n: '' }), effectOf({ ...cells, n })];
    expectRelative(without.y, counted.y, 1e-13, 'y');
    expectRelative(without.v, counted.v, 1e-12, 'v');
  });
});

it('by hand: 7.2 % with a standard error of 1.9 is ln 1.072 with (1.9/107.2)²', () => {
  const { y, v, steps } = effectOf({ n: '', percent_change: '7.2', percent_change_se: '1.9' });
  expectRelative(y, Math.log(1.072), 1e-13, 'y');
  expectRelative(v, (1.9 / 107.2) ** 2, 1e-13, 'v');
  expect(steps.at(-1)?.how).toMatch(/standard error of the change in per cent/u);
});

it.each<[string, Cells]>([
  ['SDs', { baseline_mean: '40', baseline_sd: '6', followup_mean: '43', followup_sd: '6.4' }],
  ['an interval', { baseline_mean: '40', change_mean: '3', change_ci_low: '2', change_ci_high: '4' }],
])('%s without the number of people give no effect, with the reason', (_what, cells) => {
  expect(computeEffect(makeArms([{ ...BARE, n: '', ...cells }])[0], choice)).toMatch(/`n` is empty/u);
});

it('has no standardised change, which needs an SD', () => {
  const [arm] = makeArms([{ ...BARE, n: '', percent_change: '7.2', percent_change_se: '1.9' }]);
  expect(computeEffect(arm, { ...choice, metric: 'standardised' })).toMatch(/`n` is empty/u);
});
