/**
 * Numbers of a row that contradict one another. Tables are made from simulated people, so that all statistics of a
 * row belong together, and rounded as papers round them: none may be doubted. Then one cell of such a row is spoilt in
 * each way that the checks look for: that, and nothing else, must be told.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeEffects } from '../../src/evidence/effects.ts';
import { formatProblem, type Problem } from '../../src/evidence/problem.ts';
import { readArms } from '../../src/evidence/table.ts';
import { NAMES, type Name, simulate, writeCells } from '../support/simulatedStatistics.ts';
import { type Cells, makeTable } from '../support/tables.ts';
import { SLIPS } from './slips.ts';

/** A row needs means and an SD; everything else may be left out. */
const leftOut = fc.subarray(NAMES.filter((name) => !['baseline_mean', 'followup_mean', 'baseline_sd'].includes(name)));

const doubtsOf = (cells: Cells) => {
  const { problems, warnings } = readArms(makeTable([cells]), 'row.csv');
  return [...problems, ...warnings];
};

describe('statistics of simulated people', () => {
  it.each([
    ['decimals, 0 to 6', (digits: number) => (value: number) => value.toFixed(digits), 6],
    [
      'significant digits, 2 to 7',
      (digits: number) => (value: number) => String(Number(value.toPrecision(digits + 2))),
      5,
    ],
  ])('rounded to %s, whatever is left out, contradict one another in nothing', (_how, makeWrite, most) => {
    let checked = 0;
    fc.assert(
      fc.property(
        fc.nat(1e6),
        fc.integer({ min: 4, max: 60 }),
        fc.constantFrom(2, 40, 180, 2600),
        fc.integer({ min: 0, max: most }),
        leftOut,
        (seed, n, scale, digits, left) => {
          const cells = writeCells(simulate(seed, n, scale), n, makeWrite(digits), left);
          fc.pre(cells.baseline_sd !== '' && Number(cells.baseline_mean) > 0 && Number(cells.followup_mean) > 0);
          checked++;
          expect(doubtsOf(cells).map(formatProblem)).toEqual([]);
        },
      ),
      { seed: 14, numRuns: 3000 },
    );
    expect(checked).toBeGreaterThan(2000);
  });

  it('that stand in a table with all of their digits contradict one another in nothing', () => {
    for (let seed = 0; seed < 300; seed++) {
      const n = 3 + (seed % 40);
      expect(doubtsOf(writeCells(simulate(seed, n, 40), n, String, [])).map(formatProblem)).toEqual([]);
    }
  });
});

describe('a ready-made effect of the other sign than the change', () => {
  const means: Cells = { baseline_mean: '42.1', followup_mean: '45.2' };
  it.each([
    [
      'standardised',
      { effect: '-0.48', effect_metric: 'standardised' },
      'above',
      '`followup_mean` (45.2) and `baseline_mean` (42.1)',
    ],
    [
      'a log ratio',
      { effect: '-0.07', effect_variance: '0.0003', effect_metric: 'log-ratio' },
      'above',
      '`followup_mean`',
    ],
    [
      'of a fall',
      { followup_mean: '', change_mean: '-3.1', effect: '0.07', effect_variance: '0.0003', effect_metric: 'log-ratio' },
      'below',
      '`change_mean` (-3.1)',
    ],
  ] as const)('is told: %s', (_what, cells, side, from) => {
    const told = doubtsOf({ ...means, ...cells }).filter(({ column }) => column === 'effect');
    expect(told.map(({ kind }) => kind)).toEqual(['unusual']);
    expect(told[0].expected).toContain(`an effect ${side} 0, as the change is (${from}`);
  });

  it('is not told of the same sign, nor where rounding leaves the sign open', () => {
    const told = (cells: Cells) => doubtsOf({ ...means, ...cells }).filter(({ column }) => column === 'effect');
    expect(told({ effect: '0.48', effect_metric: 'standardised' })).toEqual([]);
    expect(
      told({ followup_mean: '42.2', baseline_mean: '42.1', effect: '-0.0', effect_metric: 'standardised' }),
    ).toEqual([]);
    expect(told({ followup_mean: '42', baseline_mean: '42', effect: '-0.1', effect_metric: 'standardised' })).toEqual(
      [],
    );
  });
});

describe('one slip in a row whose statistics agree', () => {
  it.each(SLIPS)('is told, alone, for $what', ({ left, spoil, column, expected, isProblem }) => {
    let tried = 0;
    for (let seed = 0; seed < 200; seed++) {
      const n = 8 + (seed % 9);
      const sound = writeCells(simulate(seed, n, 40), n, (value) => value.toFixed(4), left);
      const row = sound as Readonly<Record<Name, string>>;
      // A t near 0 has no sign to speak of, and people who hardly differ in their change leave an SD of its own little.
      if (Math.abs(Number(row.change_t || '9')) < 1 || doubtsOf(sound).length > 0) continue;
      tried++;
      const found: Problem[] = doubtsOf({ ...sound, ...spoil(row, n) });
      expect(found.map(formatProblem), JSON.stringify({ ...sound, ...spoil(row, n) })).toHaveLength(1);
      const [only] = found;
      expect([only.line, only.column, only.kind]).toEqual([2, column, isProblem ? 'contradiction' : 'unusual']);
      expect(only.expected).toMatch(expected);
      expect(formatProblem(only)).not.toMatch(/Infinity|NaN|undefined/u);
    }
    expect(tried).toBeGreaterThan(100);
  });
});

describe('numbers beyond any measure', () => {
  it.each<[string, Cells, RegExp]>([
    ['an SD of the change without end', { change_sd: '1e300', correlation: '' }, /not one far below −1/],
    [
      'SDs next to nothing',
      { baseline_sd: '1e-300', followup_sd: '1e-300', change_sd: '1', correlation: '' },
      /% of the mean/,
    ],
    ['a t of next to nothing', { change_mean: '3', change_t: '1e-300', change_p: '0.01' }, /a p of/],
    ['a p of next to nothing', { change_mean: '3', change_t: '2', change_p: '1e-300' }, /a p of/],
  ])('are told without “Infinity” or “NaN”: %s', (_what, cells, expected) => {
    const told = doubtsOf(cells).map(formatProblem);
    expect(
      told.some((line) => expected.test(line)),
      told.join('\n'),
    ).toBe(true);
    expect(told.join('\n')).not.toMatch(/Infinity|NaN/u);
  });

  it('are told so in every message and every reason of 2,000 rows of extremes', () => {
    const extreme = fc.constantFrom('', '5e-324', '1e-300', '1e-12', '0.5', '1', '40', '1e12', '1e200', '1.7e308');
    const row = fc.record(Object.fromEntries(NAMES.map((name) => [name, extreme] as const)));
    let told = 0;
    fc.assert(
      fc.property(row, fc.constantFrom('2', '12', '100000'), (cells, n) => {
        const rest = Array.from({ length: 12 }, (_, i) => ({ arm: `arm ${i}`, followup_mean: `${43 + i / 10}` }));
        const { arms, problems, warnings } = readArms(makeTable([...rest, { ...cells, n }]), 'far.csv');
        const reasons = (['log-ratio', 'standardised'] as const).flatMap((metric) =>
          computeEffects(arms, { outcome: 'growth', metric, assumedCorrelation: 0.8 }).excluded.map(
            ({ reason }) => reason,
          ),
        );
        const messages = [...[...problems, ...warnings].map(formatProblem), ...reasons];
        told += messages.length;
        expect(messages.filter((message) => /Infinity|NaN|undefined/u.test(message))).toEqual([]);
      }),
      { seed: 15, numRuns: 2000 },
    );
    expect(told).toBeGreaterThan(2000);
  });

  it('are told so of a change that no percentage holds', () => {
    const rest = Array.from({ length: 12 }, (_, i) => ({ arm: `arm ${i}`, followup_mean: `${43 + i / 10}` }));
    const { warnings } = readArms(
      makeTable([...rest, { arm: 'far', effect: '900', effect_variance: '0.1', effect_metric: 'log-ratio' }]),
      'far.csv',
    );
    expect(warnings.map(({ line, value }) => [line, value])).toEqual([[14, 'a change of more than 1,000,000 %']]);
  });
});
