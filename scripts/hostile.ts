/** Searches small hostile tables for numbers that are none; `npm run hostile -- --help` says how. */
import { checkHostileCase, ORDERS } from './measure/hostileChecks.ts';
import { drawHostileCase } from './measure/hostileTables.ts';
import { CallError, runScript } from './terminal/call.ts';

/** Tables of which one is also read with all its checks, words and figures. */
const CHECK_EVERY = 20;
/** Findings that are printed. */
const MOST_PRINTED = 20;

const HELP = `usage: npm run hostile [-- --tables 20000] [--from 1]

Draws tables of 2 to 8 studies with settings, reads each in ${ORDERS} orders of its rows, and looks for numbers that
are none, intervals without a width, such words in any text, and numbers that depend on the order. Every
${CHECK_EVERY}th table with its checks and figures too. 20,000 tables take some twenty minutes.

  --tables NUMBER   how many tables; 20000 by default
  --from NUMBER     first seed; 1 by default

Exit code 0: nothing found. 1: findings, with the seed of their table. 2: wrong call.`;

const form = {
  help: HELP,
  options: { tables: { type: 'string', default: '20000' }, from: { type: 'string', default: '1' } },
} as const;

runScript(form, ({ values }) => {
  const tables = readCount(values.tables, '--tables');
  const from = readCount(values.from, '--from');
  const total = { made: 0, refused: 0, unsound: 0, unstable: 0 };
  for (let seed = from; seed < from + tables; seed++) {
    const { unsound, unstable, made, refused } = checkHostileCase(
      drawHostileCase(seed),
      seed,
      seed % CHECK_EVERY === 0,
    );
    total.made += made;
    total.refused += refused;
    total.unsound += Number(unsound.length > 0);
    total.unstable += Number(unstable.length > 0);
    for (const finding of [...unsound, ...unstable].slice(0, 2)) {
      if (total.unsound + total.unstable <= MOST_PRINTED) console.log(`seed ${seed}: ${finding}`);
    }
  }
  console.log(
    `${tables} tables in ${ORDERS} orders: ${total.made} fits made, ${total.refused} refused in words; ${total.unsound} tables with a number that is none, ${total.unstable} that depend on the order`,
  );
  if (total.unsound + total.unstable > 0) process.exitCode = 1;
});

function readCount(text: string, option: string): number {
  const count = Number(text);
  if (Number.isInteger(count) && count > 0) return count;
  throw new CallError(`${option}: expected a whole number above 0, received “${text}”`, 2);
}
