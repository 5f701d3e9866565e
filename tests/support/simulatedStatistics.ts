/** Statistics of simulated people, which belong together as those of real ones do, and their cells as a paper rounds them. */
import { studentQuantile, studentTwoSidedP } from '../../src/numerics/distributions.ts';
import { makeRandom } from '../../src/numerics/random.ts';
import type { Cells } from './tables.ts';

/** Columns that are simulated. */
export type Name =
  | `${'baseline' | 'followup' | 'change'}_${'mean' | 'sd'}`
  | `change_${'se' | 'ci_low' | 'ci_high' | 't' | 'f' | 'p'}`
  | `${'baseline' | 'followup'}_se`
  | `percent_change${'' | '_sd' | '_se' | '_ci_low' | '_ci_high'}`
  | 'correlation';
export type Statistics = Readonly<Record<Name, number>>;

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const sumOfProducts = (a: readonly number[], b: readonly number[]) => {
  const [ma, mb] = [mean(a), mean(b)];
  return a.reduce((sum, value, i) => sum + (value - ma) * (b[i] - mb), 0);
};
const sdOf = (values: readonly number[]) => Math.sqrt(sumOfProducts(values, values) / (values.length - 1));

/** All statistics of people whose size, and its change, is drawn. @param scale of the measure */
export function simulate(seed: number, n: number, scale: number): Statistics {
  const random = makeRandom(seed);
  const before = Array.from({ length: n }, () => scale * (1 + 0.15 * random.normal()));
  const after = before.map((value) => value * 1.06 + scale * 0.05 * random.normal());
  const change = after.map((value, i) => value - before[i]);
  const error = sdOf(change) / Math.sqrt(n);
  const t = mean(change) / error;
  const quantile = studentQuantile(0.975, n - 1);
  const reach = quantile * error;
  const percents = change.map((value, i) => (100 * value) / before[i]);
  const percentError = sdOf(percents) / Math.sqrt(n);
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
    change_f: t ** 2,
    change_p: studentTwoSidedP(t, n - 1),
    baseline_se: sdOf(before) / Math.sqrt(n),
    followup_se: sdOf(after) / Math.sqrt(n),
    percent_change: mean(percents),
    percent_change_sd: sdOf(percents),
    percent_change_se: percentError,
    percent_change_ci_low: mean(percents) - quantile * percentError,
    percent_change_ci_high: mean(percents) + quantile * percentError,
    correlation: sumOfProducts(before, after) / Math.sqrt(sumOfProducts(before, before) * sumOfProducts(after, after)),
  };
}

/** What rounds to nothing, or to a correlation of 1, would not be entered. */
function enter(name: Name, text: string): string {
  const value = Number(text);
  const mayBeNone = ['change_mean', 'change_t', 'change_f', 'percent_change'];
  const isMean = mayBeNone.includes(name) || name.includes('change_ci');
  return (value === 0 && !isMean) || (name === 'correlation' && Math.abs(value) >= 1) ? '' : text;
}

export const NAMES: readonly Name[] = Object.keys(simulate(1, 5, 40)) as Name[];

/** @param write rounds a number @param left columns that stay empty */
export function writeCells(
  statistics: Statistics,
  n: number,
  write: (value: number) => string,
  left: readonly Name[],
): Cells {
  const entries = NAMES.map((name) => [name, left.includes(name) ? '' : enter(name, write(statistics[name]))]);
  const cells: Cells = { n: String(n), ...Object.fromEntries(entries) };
  return withoutHalves(
    withoutHalves(cells, 'change_ci_low', 'change_ci_high'),
    'percent_change_ci_low',
    'percent_change_ci_high',
  );
}

/** Half an interval is no interval, and one that rounding closed has no width. */
function withoutHalves(cells: Cells, low: Name, high: Name): Cells {
  const isClosed = Number(cells[low]) >= Number(cells[high]);
  const hasBoth = cells[low] !== '' && cells[high] !== '';
  return hasBoth && !isClosed ? cells : { ...cells, [low]: '', [high]: '' };
}
