/**
 * Compares two tables of study arms: what changed, the answer before and after, and who moved it.
 *
 *     npm run compare -- OLD.csv NEW.csv [--settings FILE.json] [--json]
 *
 * Exit code 0: compared, whatever changed. 1: a table or the settings have problems (all are listed).
 * 2: wrong call.
 */
import { parseArgs } from 'node:util';
import { formatProblem } from '../src/evidence/problem.ts';
import { type ArmTable, readArms } from '../src/evidence/table.ts';
import { compareTables } from '../src/model/compareTables.ts';
import { CallError, parseCall, readText, runScript } from './call.ts';
import { describeComparison } from './comparisonReport.ts';
import { readSettings } from './settings.ts';

const USAGE = 'usage: npm run compare -- OLD.csv NEW.csv [--settings FILE.json] [--json]';

runScript(run);

function run(): void {
  const { old, now, settingsFile, json } = readCall();
  const settings = readSettings(settingsFile);
  // Both are read before either is judged, so that all problems come at once.
  const [before, after] = [readTable(old, 'old table'), readTable(now, 'new table')];
  for (const { file, table } of [before, after]) {
    for (const warning of table.warnings) console.error(`warning: ${file}, ${formatProblem(warning)}`);
  }
  const wrong = [before, after].filter(({ table }) => table.problems.length > 0);
  if (wrong.length > 0) {
    throw new CallError(
      wrong
        .map(
          ({ file, table }) =>
            `${table.problems.length} problem(s) in ${file}; nothing was compared:\n${table.problems.map(formatProblem).join('\n')}`,
        )
        .join('\n'),
      1,
    );
  }
  const comparison = compareTables(before.table.arms, after.table.arms, settings);
  console.log(json ? JSON.stringify(comparison, null, 2) : describeComparison(comparison, old, now));
}

function readTable(file: string, what: string): { readonly file: string; readonly table: ArmTable } {
  return { file, table: readArms(readText(file, what), file) };
}

function readCall() {
  const { values, positionals } = parseCall(parse, USAGE);
  const [old, now] = positionals;
  if (positionals.length !== 2 || old === undefined || now === undefined) {
    throw new CallError(`expected two table files, the old and the new, received ${positionals.length}\n${USAGE}`, 2);
  }
  return { old, now, settingsFile: values.settings, json: values.json };
}

function parse() {
  return parseArgs({
    allowPositionals: true,
    options: { settings: { type: 'string' }, json: { type: 'boolean', default: false } },
  });
}
