/** Measures how far expected widths are from simulated ones; `npm run agreement -- --help` says how. */
import { writeFileSync } from 'node:fs';
import { type Agreement, comparePlan, listTables, PLANS, SEED, TABLES } from './measure/planAgreement.ts';
import { runScript } from './terminal/call.ts';
import { readTableFile } from './terminal/table.ts';

/** Studies drawn for a plan where only a look is wanted. */
const QUICK_TABLES = 100;

const HELP = `usage: npm run agreement -- [--quick]

Sets what is expected of ${PLANS.length} planned studies beside ${TABLES} simulated studies each, which are added to the table and fitted
in full: on the shipped table, and on tables of 8 and 30 studies. Writes data/plan-agreement.json. Takes some minutes.

--quick  ${QUICK_TABLES} studies each, printed and not written.`;

/** Five decimals: a thousand times finer than the simulation's error. */
const round = (value: number) => Math.round(1e5 * value) / 1e5;

const SHIPPED = new URL('../data/arms.csv', import.meta.url).pathname;

runScript({ help: HELP, options: { quick: { type: 'boolean', default: false } } }, async ({ values: { quick } }) => {
  const { arms } = await readTableFile(SHIPPED, 'table', { 'decimal-comma': false, all: false });
  const results: Agreement[] = [];
  for (const table of listTables(arms)) {
    for (const band of table.bands) {
      const here = PLANS.map((_, index) => comparePlan(table, band, index, quick ? QUICK_TABLES : TABLES));
      const misses = here.flatMap(({ miss }) => (miss === null ? [] : [Math.abs(miss)]));
      const most = misses.length > 0 ? `${(100 * Math.max(...misses)).toFixed(1)} % at most` : 'no width';
      console.log(`${table.name}, ${band}: ${misses.length} widths, off by ${most}`);
      results.push(...here);
    }
  }
  const report = {
    about:
      'Expected widths of the target’s interval with a planned study, beside those of simulated studies fitted in full.',
    tables: TABLES,
    seed: SEED,
    results,
  };
  if (!quick)
    writeFileSync(
      new URL('../data/plan-agreement.json', import.meta.url),
      `${JSON.stringify(report, (_, value) => (typeof value === 'number' ? round(value) : value), 2)}\n`,
    );
});
