/**
 * From simulated people, each form in which a paper may print a change gives, in expectation, the effect and variance of
 * the raw data. 1,000 tables of 20 people whose sizes have an SD of 15 % of the mean and who gain 6 % ± 4 %; the effect of
 * the raw data is that of the means with the SDs and the correlation of the very people. Bounds are what was measured,
 * rounded up: each form's own error stands beside them. Both are of the same people, so that little of it is chance.
 */
import { describe, expect, it } from 'vitest';
import { computeEffect, type Effect } from '../../../src/evidence/effects.ts';
import { smallSampleFactor } from '../../../src/evidence/smallSampleFactor.ts';
import { studentQuantile, studentTwoSidedP } from '../../../src/numerics/distributions.ts';
import { makeRandom } from '../../../src/numerics/random.ts';
import { type Cells, makeArms } from '../../support/tables.ts';

const TABLES = 1000;
const PEOPLE = 20;
/** Two truths: people gain 6 % of what they have, or all the same 2.4, on average; so do before and after correlate. */
const TRUTHS = {
  'a share': { after: (value: number) => 1.06 * value, correlation: (1.06 * 6) / Math.hypot(1.06 * 6, 1.6) },
  'the same': { after: (value: number) => value + 2.4, correlation: 6 / Math.hypot(6, 1.6) },
} as const;
type Truth = keyof typeof TRUTHS;

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const products = (a: readonly number[], b: readonly number[]) => {
  const [ma, mb] = [mean(a), mean(b)];
  return a.reduce((sum, value, i) => sum + (value - ma) * (b[i] - mb), 0);
};
const sd = (values: readonly number[]) => Math.sqrt(products(values, values) / (values.length - 1));
/** Quartile by linear interpolation between order statistics. */
const quantile = (values: readonly number[], share: number) => {
  const sorted = [...values].sort((a, b) => a - b);
  const place = share * (sorted.length - 1);
  const low = Math.floor(place);
  return sorted[low] + (place - low) * ((sorted[low + 1] ?? sorted[low]) - sorted[low]);
};

interface People {
  readonly before: readonly number[];
  readonly after: readonly number[];
  readonly change: readonly number[];
  readonly percents: readonly number[];
}

function draw(normal: () => number, truth: Truth): People {
  const before = Array.from({ length: PEOPLE }, () => 40 + 6 * normal());
  const after = before.map((value) => TRUTHS[truth].after(value) + 1.6 * normal());
  const change = after.map((value, i) => value - before[i]);
  return { before, after, change, percents: change.map((value, i) => (100 * value) / before[i]) };
}

const EMPTY: Cells = {
  n: String(PEOPLE),
  baseline_mean: '',
  baseline_sd: '',
  followup_mean: '',
  followup_sd: '',
  correlation: '',
};
const cellsOf = (cells: Readonly<Record<string, number>>): Cells =>
  Object.fromEntries(Object.entries(cells).map(([name, value]) => [name, String(value)]));
/** Effects of rows, in their order. */
function effectsOf(rows: readonly Cells[], metric: 'log-ratio' | 'standardised', truth: Truth): Effect[] {
  const arms = makeArms(rows.map((cells, i) => ({ ...EMPTY, ...cells, study: `Study ${i}` })));
  return arms.map((arm) => {
    const effect = computeEffect(arm, { metric, assumedCorrelation: TRUTHS[truth].correlation });
    if (typeof effect === 'string') throw new Error(effect);
    return effect;
  });
}

const correlationOf = ({ before, after }: People) =>
  products(before, after) / Math.sqrt(products(before, before) * products(after, after));
const rawOf = (people: People) =>
  cellsOf({
    baseline_mean: mean(people.before),
    baseline_sd: sd(people.before),
    followup_mean: mean(people.after),
    followup_sd: sd(people.after),
    correlation: correlationOf(people),
  });
const meansOf = ({ before, after }: People) => ({ baseline_mean: mean(before), followup_mean: mean(after) });
const errorOf = (values: readonly number[]) => sd(values) / Math.sqrt(PEOPLE);
const tOf = (values: readonly number[]) => mean(values) / errorOf(values);
const limits = (values: readonly number[], level: number) => {
  const reach = studentQuantile((1 + level) / 2, PEOPLE - 1) * errorOf(values);
  return [mean(values) - reach, mean(values) + reach] as const;
};
const quartilesOf = (name: string, values: readonly number[]) => ({
  [`${name}_q1`]: quantile(values, 0.25),
  [`${name}_median`]: quantile(values, 0.5),
  [`${name}_q3`]: quantile(values, 0.75),
});

interface Form {
  readonly what: string;
  readonly cells: (people: People) => Readonly<Record<string, number | string>>;
  /** Largest distance of the mean effect from that of the raw data. */
  readonly effect: number;
  /** Share by which the mean variance may be below and above that of the raw data. */
  readonly variance: readonly [below: number, above: number];
  readonly metric?: 'standardised';
}

const EXACT = { effect: 1e-9, variance: [1e-9, 1e-9] } as const;
/**
 * From the SD of the change alone: 1 % too large where all gain the same, 12 % where people gain a share of what they
 * have, whose log ratio varies less than their change.
 */
const OF_CHANGE = { effect: 1e-9, variance: [0, 0.12] } as const;
/** The mean of people's per cents is not the per cent of the means: 0.13 points of 6, and a variance 8 % larger. */
const OF_PERCENTS = { effect: 0.0013, variance: [0, 0.085] } as const;

const FORMS: readonly Form[] = [
  {
    what: 'means with standard errors, and the correlation',
    cells: (p) => ({
      ...meansOf(p),
      baseline_se: errorOf(p.before),
      followup_se: errorOf(p.after),
      correlation: correlationOf(p),
    }),
    ...EXACT,
  },
  { what: 'means, and the SD of the change', cells: (p) => ({ ...meansOf(p), change_sd: sd(p.change) }), ...OF_CHANGE },
  {
    what: 'means, and a 90 % interval of the change',
    cells: (p) => {
      const [low, high] = limits(p.change, 0.9);
      return { ...meansOf(p), change_ci_low: low, change_ci_high: high, ci_level: 90 };
    },
    ...OF_CHANGE,
  },
  { what: 'means, and F', cells: (p) => ({ ...meansOf(p), change_f: tOf(p.change) ** 2 }), ...OF_CHANGE },
  {
    what: 'means, and p with its degrees of freedom',
    cells: (p) => ({ ...meansOf(p), change_p: studentTwoSidedP(tOf(p.change), 30), change_df: 30 }),
    ...OF_CHANGE,
  },
  {
    what: 'a change with its SD, and the change in per cent of the means',
    cells: (p) => ({
      change_mean: mean(p.change),
      change_sd: sd(p.change),
      percent_change: (100 * mean(p.change)) / mean(p.before),
    }),
    ...OF_CHANGE,
  },
  ...(
    [
      ['its SD', (p: People) => ({ percent_change_sd: sd(p.percents) })],
      ['its standard error', (p: People) => ({ percent_change_se: errorOf(p.percents) })],
      [
        'its 99 % interval',
        (p: People) => {
          const [low, high] = limits(p.percents, 0.99);
          return { percent_change_ci_low: low, percent_change_ci_high: high, ci_level: 99 };
        },
      ],
      ['its t', (p: People) => ({ change_t: tOf(p.percents) })],
      ['its F', (p: People) => ({ change_f: tOf(p.percents) ** 2 })],
      ['its p', (p: People) => ({ change_p: studentTwoSidedP(tOf(p.percents), PEOPLE - 1) })],
    ] as const
  ).map(
    ([what, spread]): Form => ({
      what: `the mean change in per cent with ${what}`,
      cells: (p) => ({ percent_change: mean(p.percents), ...spread(p) }),
      ...OF_PERCENTS,
    }),
  ),
  {
    what: 'the change in per cent with a standardised effect by the SD before',
    cells: (p) => ({
      percent_change: (100 * mean(p.change)) / mean(p.before),
      effect: mean(p.change) / sd(p.before),
      effect_metric: 'standardised',
      effect_standardiser: 'baseline-sd',
    }),
    effect: 1e-9,
    // The correlation is that of all people, and the SD after is taken as equal to that before.
    variance: [0.03, 0.035],
  },
  {
    what: 'the change in per cent with a corrected standardised effect by the SD of the change',
    cells: (p) => ({
      percent_change: (100 * mean(p.change)) / mean(p.before),
      effect: (smallSampleFactor(PEOPLE - 1) * mean(p.change)) / sd(p.change),
      effect_metric: 'standardised',
      effect_standardiser: 'change-sd',
      effect_corrected: 'yes',
    }),
    ...OF_CHANGE,
  },
  {
    what: 'medians with quartiles of both, and the SD of the change',
    cells: (p) => ({
      ...quartilesOf('baseline', p.before),
      ...quartilesOf('followup', p.after),
      change_sd: sd(p.change),
    }),
    // Of the quartiles only the means are used, which differ from the raw ones by chance.
    effect: 0.0003,
    variance: [0, 0.12],
  },
  {
    what: 'the mean before with median and quartiles of the change',
    cells: (p) => ({ baseline_mean: mean(p.before), ...quartilesOf('change', p.change) }),
    effect: 0.0003,
    // The square of an SD that is off by a quarter is on average a tenth too large, on top of that of the change.
    variance: [0, 0.22],
  },
  {
    what: 'a standardised effect by the SD before, without its variance',
    cells: (p) => ({
      effect: mean(p.change) / sd(p.before),
      effect_metric: 'standardised',
      effect_standardiser: 'baseline-sd',
    }),
    effect: 1e-9,
    // With the correlation of all people in place of that of the very people.
    variance: [0.015, 0],
    metric: 'standardised',
  },
  {
    what: 'a standardised effect by the SD of the change, without its variance',
    cells: (p) => ({
      effect: mean(p.change) / sd(p.change),
      effect_metric: 'standardised',
      effect_standardiser: 'change-sd',
    }),
    // √(2 (1 − r)) takes SDs before and after as equal: with 9 % more spread after, d_b of 0.38 is a tenth too small.
    effect: 0.038,
    variance: [0.12, 0],
    metric: 'standardised',
  },
];

describe('the effect and variance of raw data', () => {
  const cases = (Object.keys(TRUTHS) as Truth[]).flatMap((truth) => FORMS.map((form) => ({ truth, ...form })));
  it.each<Form & { readonly truth: Truth }>(cases)(
    'come, where people gain $truth, in expectation from $what',
    ({ truth, cells, effect, variance, metric }) => {
      const { normal } = makeRandom(16);
      const people = Array.from({ length: TABLES }, () => draw(normal, truth));
      const print = (one: People) =>
        Object.fromEntries(Object.entries(cells(one)).map(([name, value]) => [name, String(value)]));
      const raw = effectsOf(people.map(rawOf), metric ?? 'log-ratio', truth);
      const found = effectsOf(people.map(print), metric ?? 'log-ratio', truth);
      const difference = mean(found.map(({ y }, i) => y - raw[i].y));
      const ratio = mean(found.map(({ v }) => v)) / mean(raw.map(({ v }) => v));
      expect(Math.abs(difference)).toBeLessThanOrEqual(effect);
      expect(ratio).toBeGreaterThan(1 - variance[0]);
      expect(ratio).toBeLessThan(1 + variance[1]);
    },
  );
});
