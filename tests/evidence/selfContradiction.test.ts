/**
 * Numbers of a row that contradict one another. Tables are made from simulated people, so that all statistics of a
 * row belong together, and rounded as papers round them: none may be doubted. Then one cell of such a row is spoilt in
 * each way that the checks look for: that, and nothing else, must be told.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatProblem, type Problem } from '../../src/evidence/problem.ts';
import { readArms } from '../../src/evidence/table.ts';
import { studentQuantile, studentTwoSidedP } from '../../src/numerics/distributions.ts';
import { makeRandom } from '../../src/numerics/random.ts';
import { type Cells, makeTable } from '../support/tables.ts';

type Name =
  | `${'baseline' | 'followup' | 'change'}_${'mean' | 'sd'}`
  | `change_${'se' | 'ci_low' | 'ci_high' | 't' | 'p'}`
  | 'correlation';
type Statistics = Readonly<Record<Name, number>>;

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const sumOfProducts = (a: readonly number[], b: readonly number[]) => {
  const [ma, mb] = [mean(a), mean(b)];
  return a.reduce((sum, value, i) => sum + (value - ma) * (b[i] - mb), 0);
};
const sdOf = (values: readonly number[]) => Math.sqrt(sumOfProducts(values, values) / (values.length - 1));

/** All statistics of people whose size, and its change, is drawn. @param scale of the measure */
function simulate(seed: number, n: number, scale: number): Statistics {
  const random = makeRandom(seed);
  const before = Array.from({ length: n }, () => scale * (1 + 0.15 * random.normal()));
  const after = before.map((value) => value * 1.06 + scale * 0.05 * random.normal());
  const change = after.map((value, i) => value - before[i]);
  const error = sdOf(change) / Math.sqrt(n);
  const t = mean(change) / error;
  const reach = studentQuantile(0.975, n - 1) * error;
  return {
    baseline_mean: mean(before),
    baseline_sd: sdOf(before),
    followup_mean: mean(after),
    followup_sd: sdOf(after),
    change_mean: mean(change),
    change_sd: sdOf(change),
    change_se: error,
    change_ci_low: mean(change) - reach,
    change_ci_high: mean(change) + reach,
    change_t: t,
    change_p: studentTwoSidedP(t, n - 1),
    correlation: sumOfProducts(before, after) / Math.sqrt(sumOfProducts(before, before) * sumOfProducts(after, after)),
  };
}

/** What rounds to nothing, or to a correlation of 1, would not be entered. */
function enter(name: Name, text: string): string {
  const value = Number(text);
  const isMean = name === 'change_mean' || name === 'change_t' || name.startsWith('change_ci');
  return (value === 0 && !isMean) || (name === 'correlation' && Math.abs(value) >= 1) ? '' : text;
}

const NAMES = Object.keys(simulate(1, 5, 40)) as Name[];

function writeCells(statistics: Statistics, n: number, write: (value: number) => string, left: readonly Name[]): Cells {
  const entries = NAMES.map((name) => [name, left.includes(name) ? '' : enter(name, write(statistics[name]))]);
  const cells: Cells = { n: String(n), ...Object.fromEntries(entries) };
  // Half an interval is no interval, and one that rounding closed has no width.
  const isClosed = Number(cells.change_ci_low) >= Number(cells.change_ci_high);
  const hasBoth = cells.change_ci_low !== '' && cells.change_ci_high !== '';
  return hasBoth && !isClosed ? cells : { ...cells, change_ci_low: '', change_ci_high: '' };
}

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

interface Slip {
  readonly what: string;
  readonly left: readonly Name[];
  readonly spoil: (cells: Readonly<Record<Name, string>>, n: number) => Cells;
  readonly column: Name;
  readonly expected: RegExp;
  readonly isProblem?: true;
}

const times = (text: string, factor: number, digits = 2) => (Number(text) * factor).toFixed(digits);
const plus = (text: string, more: number) => (Number(text) + more).toFixed(2);
const SPREAD: readonly Name[] = ['change_sd', 'change_se', 'change_ci_low', 'change_ci_high'];

const SLIPS: readonly Slip[] = [
  {
    what: 't of the other sign than the printed change',
    left: [],
    spoil: ({ change_t }) => ({ change_t: times(change_t, -1) }),
    column: 'change_t',
    expected: /^a t (?:above|below) 0, as the change is .*`change_mean`/,
  },
  {
    what: 't of the other sign than the means',
    left: ['change_mean'],
    spoil: ({ change_t }) => ({ change_t: times(change_t, -1) }),
    column: 'change_t',
    expected: /`followup_mean`.*`baseline_mean`/,
  },
  {
    what: 'a p that is not that of t',
    left: [],
    spoil: ({ change_p }) => ({ change_p: Number(change_p) > 0.3 ? '0.0010' : '0.6000' }),
    column: 'change_p',
    expected: /two-sided one of `change_t`/,
  },
  {
    what: 'a p that is not that of the change and its error',
    left: ['change_t'],
    spoil: ({ change_p }) => ({ change_p: Number(change_p) > 0.3 ? '0.0010' : '0.6000' }),
    column: 'change_p',
    expected: /`change_se`/,
  },
  {
    what: 'a t that is not the change over its error',
    left: ['change_p'],
    spoil: ({ change_t }) => ({ change_t: plus(change_t, Math.sign(Number(change_t)) * 3) }),
    column: 'change_t',
    expected: /`change_mean` .* and `change_se`/,
  },
  {
    what: 'a t that is not what the interval says',
    left: ['change_p', 'change_sd', 'change_se'],
    spoil: ({ change_t }) => ({ change_t: plus(change_t, Math.sign(Number(change_t)) * 3) }),
    column: 'change_t',
    expected: /`change_ci_low`.*`change_ci_high`/,
  },
  {
    what: 'a standard error that is the SD',
    left: [],
    spoil: ({ change_sd }) => ({ change_se: change_sd }),
    column: 'change_se',
    expected: /`change_sd`.*√n/,
    isProblem: true,
  },
  {
    what: 'an SD that is the standard error',
    left: [],
    spoil: ({ change_se }) => ({ change_sd: change_se }),
    column: 'change_se',
    expected: /`change_sd`.*√n/,
    isProblem: true,
  },
  {
    what: 'SD and standard error exchanged',
    left: [],
    spoil: ({ change_se, change_sd }) => ({ change_sd: change_se, change_se: change_sd }),
    column: 'change_se',
    expected: /`n`/,
    isProblem: true,
  },
  {
    what: 'a standard error of other people',
    left: [],
    spoil: ({ change_se }) => ({ change_se: times(change_se, 1.5) }),
    column: 'change_se',
    expected: /divided by √n/,
  },
  {
    what: 'an interval beside the printed change',
    left: [],
    spoil: ({ change_ci_low, change_ci_high }) => ({
      change_ci_low: plus(change_ci_low, 60),
      change_ci_high: plus(change_ci_high, 60),
    }),
    column: 'change_mean',
    expected: /inside its interval/,
    isProblem: true,
  },
  {
    what: 'an interval beside the change of the means',
    left: ['change_mean'],
    spoil: ({ change_ci_low, change_ci_high }) => ({
      change_ci_low: plus(change_ci_low, 60),
      change_ci_high: plus(change_ci_high, 60),
    }),
    column: 'change_ci_low',
    expected: /holds the change/,
  },
  {
    what: 'an interval that is not centred on the change',
    left: [],
    spoil: ({ change_ci_high }) => ({ change_ci_high: plus(change_ci_high, 2) }),
    column: 'change_ci_high',
    expected: /as far above the change as `change_ci_low`/,
  },
  {
    what: 'an interval too wide for its SD',
    left: ['change_t', 'change_p', 'change_se'],
    spoil: ({ change_ci_low, change_ci_high }) => ({
      change_ci_low: plus(change_ci_low, -0.8),
      change_ci_high: plus(change_ci_high, 0.8),
    }),
    column: 'change_ci_high',
    expected: /apart, as `change_sd`.*`n`/,
  },
  {
    what: 'a correlation that three SDs exclude',
    left: [],
    spoil: () => ({ correlation: '0.3' }),
    column: 'correlation',
    expected: /`baseline_sd`.*`followup_sd`.*`change_sd`/,
  },
  {
    what: 'a correlation that two SDs and an interval exclude',
    left: ['change_sd', 'change_se', 'change_t', 'change_p'],
    spoil: () => ({ correlation: '0.3' }),
    column: 'correlation',
    expected: /`change_ci_low`/,
  },
  {
    what: 'a correlation with which no SD after fits',
    left: ['followup_sd'],
    spoil: ({ change_sd, baseline_sd }) => ({
      correlation: Number(change_sd) < 0.9 * Number(baseline_sd) ? '0.1' : '-0.5',
    }),
    column: 'correlation',
    expected: /differ as little as `change_sd`/,
  },
  ...(['baseline', 'followup'] as const).map(
    (when): Slip => ({
      what: `an SD ${when} that is a thousandth of the mean`,
      left: [],
      spoil: (cells) => ({ [`${when}_sd`]: times(cells[`${when}_mean`], 0.001, 3) }),
      column: `${when}_sd`,
      expected: /at least 1 % of the mean/,
    }),
  ),
  {
    what: 'an SD of the change in another unit',
    left: ['change_se', 'correlation', 'change_t', 'change_p', 'change_ci_low', 'change_ci_high'],
    spoil: ({ baseline_mean }) => ({ change_sd: times(baseline_mean, 0.0005, 4) }),
    column: 'change_sd',
    expected: /at least 0\.1 % of the mean/,
  },
  {
    what: 'a change that is not that of the means',
    left: SPREAD.concat('change_t', 'change_p'),
    spoil: ({ change_mean }) => ({ change_mean: plus(change_mean, 5) }),
    column: 'change_mean',
    expected: /mean after minus the mean before/,
  },
];

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

  it('are told so of a change that no percentage holds', () => {
    const rest = Array.from({ length: 12 }, (_, i) => ({ arm: `arm ${i}`, followup_mean: `${43 + i / 10}` }));
    const { warnings } = readArms(
      makeTable([...rest, { arm: 'far', effect: '900', effect_variance: '0.1', effect_metric: 'log-ratio' }]),
      'far.csv',
    );
    expect(warnings.map(({ line, value }) => [line, value])).toEqual([[14, 'a change of more than 1,000,000 %']]);
  });
});
