/**
 * Compares two tables of study arms: what changed, the answer before and after, and who moved it.
 * `npm run compare -- --help` says how.
 */
import { compareTables } from '../src/model/compareTables.ts';
import { CallError, runScript } from './terminal/call.ts';
import { stateComparison } from './terminal/comparisonReport.ts';
import { readSettings, SETTINGS_HELP } from './terminal/settings.ts';
import { readTableFile, TABLE_HELP, TABLE_OPTIONS } from './terminal/table.ts';

const HELP = `usage: npm run compare -- OLD NEW [--settings FILE.json] [--json]

Says what changed between two tables of study arms, slope and target before and after, and which
study's change moved them most.

${SETTINGS_HELP}
  --json                prints all of the comparison as JSON
${TABLE_HELP}

Exit code 0: compared, whatever changed. 1: a table or the settings have problems. 2: wrong call.`;

const form = {
  help: HELP,
  options: { settings: { type: 'string' }, json: { type: 'boolean', default: false }, ...TABLE_OPTIONS },
  files: { counts: [2], expected: 'two table files, the old and the new' },
} as const;

runScript(form, async ({ values, files: [old, now] }) => {
  const settings = readSettings(values.settings);
  // Both are read before either is judged, so that all problems come at once; they may have one name, so these say paths.
  const before = await readTableFile(old, 'old table', values, old);
  const after = await readTableFile(now, 'new table', values, now);
  const both = [before, after];
  for (const note of both.flatMap(({ notes }) => notes)) console.error(`note: ${note}`);
  for (const warning of both.flatMap(({ warningLines }) => warningLines)) console.error(`warning: ${warning}`);
  if (both.some(({ problems }) => problems.length > 0)) {
    const counts = both.map(({ problems }, i) => `${problems.length} problem(s) in ${[old, now][i]}`);
    const lines = both.flatMap(({ problemLines }) => problemLines);
    throw new CallError([...lines, `${counts.join(', ')}; nothing was compared`].join('\n'), 1);
  }
  const comparison = compareTables(before.arms, after.arms, settings);
  console.log(values.json ? JSON.stringify(comparison, null, 2) : stateComparison(comparison, old, now));
});
