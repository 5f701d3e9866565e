/**
 * How far what is foretold of planned studies is from simulated ones, as `npm run agreement` wrote it, in the words and
 * numbers of the Methods page.
 */
import { readFileSync } from 'node:fs';
import { quantileSorted } from 'simple-statistics';
import * as z from 'zod';
import { groupRows } from '../evidence/groupRows.ts';
import { formatNumber } from '../figures/format.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';

const share = z.number().min(0).max(1);
const width = z.nullable(z.number());
const resultSchema = z.object({
  table: z.string(),
  band: z.enum(['light', 'heavy', 'all']),
  expected: width,
  simulated: width,
  simulatedError: width,
  miss: z.nullable(z.number()),
  unbounded: z.object({ expected: share, simulated: share }),
  chance: z.object({ expected: z.nullable(share), simulated: share }),
});
const { tables, results } = z
  .object({ tables: z.int(), results: z.array(resultSchema) })
  .parse(JSON.parse(readFileSync('data/plan-agreement.json', 'utf8')));

type Result = z.infer<typeof resultSchema>;

/** What most plans are within: 19 of 20, as an interval of 95 % promises. */
const MOST = 0.95;

export const planAgreement = {
  /** Studies simulated for each plan. */
  tables,
  plans: results.length,
  ...summarise(results),
  /** Table by table, and band by band. */
  rows: [...groupRows(results, ({ table, band }) => `${table} ${band}`).values()].map((of) => ({
    name: of[0].table === 'shipped' ? `invented table, ${LOAD_NAMES[of[0].band]}` : of[0].table,
    plans: of.length,
    ...summarise(of),
  })),
} as const;

function summarise(of: readonly Result[]) {
  const known = of.filter(({ miss }) => miss !== null);
  const misses = Float64Array.from(known, ({ miss }) => Math.abs(miss ?? 0)).sort();
  const errors = known.map(({ simulated, simulatedError }) => (simulatedError ?? 0) / (simulated ?? 1));
  const chances = of.flatMap(({ chance: { expected, simulated } }) =>
    expected === null ? [] : [Math.abs(expected - simulated)],
  );
  const percent = (value: number) => `${formatNumber(100 * value, 1)}\u00a0%`;
  return {
    /** Plans with a width by both ways, and those without one by both. */
    both: known.length,
    neither: of.filter(({ expected, simulated }) => expected === null && simulated === null).length,
    most: misses.length === 0 ? 'none' : percent(misses[misses.length - 1]),
    usual: misses.length === 0 ? 'none' : percent(quantileSorted(Array.from(misses), MOST)),
    error: errors.length === 0 ? 'none' : percent(Math.max(...errors)),
    /** Points of per cent. */
    chance: chances.length === 0 ? 'none' : formatNumber(100 * Math.max(...chances), 0),
  };
}
