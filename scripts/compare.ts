/**
 * Compares two tables of study arms: what changed, the answer before and after, and who moved it.
 * `npm run compare -- --help` says how.
 */
import { type ArmTable, readArms } from '../src/evidence/table.ts';
import { compareTables } from '../src/model/compareTables.ts';
import { CallError, listProblems, placeProblem, readText, runScript } from './terminal/call.ts';
import { stateComparison } from './terminal/comparisonReport.ts';
import { readSettings, SETTINGS_HELP } from './terminal/settings.ts';

const HELP = `usage: npm run compare -- OLD.csv NEW.csv [--settings FILE.json] [--json]

Says what changed between two tables of study arms, slope and target before and after, and which
study's change moved them most.

${SETTINGS_HELP}
  --json                prints all of the comparison as JSON

Exit code 0: compared, whatever changed. 1: a table or the settings have problems (all are listed).
2: wrong call.`;

const form = {
  help: HELP,
  options: { settings: { type: 'string' }, json: { type: 'boolean', default: false } },
  files: { counts: [2], expected: 'two table files, the old and the new' },
} as const;

runScript(form, ({ values, files: [old, now] }) => {
  const settings = readSettings(values.settings);
  // Both are read before either is judged, so that all problems come at once.
  const [before, after] = [readTable(old, 'old table'), readTable(now, 'new table')];
  for (const warning of [...before.warnings, ...after.warnings]) console.error(`warning: ${placeProblem(warning)}`);
  const problems = [...before.problems, ...after.problems];
  if (problems.length > 0) {
    const counts = [before, after].map(({ problems }, i) => `${problems.length} problem(s) in ${[old, now][i]}`);
    throw new CallError(`${listProblems(problems)}\n${counts.join(', ')}; nothing was compared`, 1);
  }
  const comparison = compareTables(before.arms, after.arms, settings);
  console.log(values.json ? JSON.stringify(comparison, null, 2) : stateComparison(comparison, old, now));
});

/** The two may have one name, so that problems say their paths. */
function readTable(file: string, what: string): ArmTable {
  return readArms(readText(file, what), file);
}
