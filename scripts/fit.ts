/**
 * Fits a table of study arms and prints the analysis.
 *
 *     npm run fit -- TABLE.csv [--outcome growth|strength] [--settings FILE.json] [--full] [--json]
 *
 * --full adds strength, work beyond failure, fatigue and the checks (influence, bootstrap, …).
 *
 * Exit code 0: fitted. 1: the table or the settings have problems (all are listed). 2: wrong call.
 */
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { formatProblem } from '../src/evidence/problem.ts';
import { readArms } from '../src/evidence/table.ts';
import { analyse } from '../src/model/analyse.ts';
import { analyseInFull } from '../src/model/full.ts';
import { CallError, parseCall, readText, runScript } from './call.ts';
import { describeAnalysis } from './report.ts';
import { readSettings } from './settings.ts';

const USAGE = 'usage: npm run fit -- TABLE.csv [--outcome growth|strength] [--settings FILE.json] [--full] [--json]';

runScript(run);

function run(): void {
  const { file, outcome, settingsFile, json, full } = readCall();
  const settings = readSettings(settingsFile, outcome);
  const table = readArms(readText(file, 'table'), basename(file));
  for (const warning of table.warnings) console.error(`warning: ${formatProblem(warning)}`);
  if (table.problems.length > 0) {
    throw new CallError(
      `${table.problems.length} problem(s) in ${file}; nothing was fitted:\n${table.problems.map(formatProblem).join('\n')}`,
      1,
    );
  }
  const analysis = full ? analyseInFull(table.arms, settings) : analyse(table.arms, settings);
  console.log(json ? JSON.stringify(analysis, null, 2) : describeAnalysis(analysis, basename(file)));
}

function readCall() {
  const { values, positionals } = parseCall(parse, USAGE);
  const [file] = positionals;
  if (positionals.length !== 1 || file === undefined) {
    throw new CallError(`expected one table file, received ${positionals.length}\n${USAGE}`, 2);
  }
  return { file, outcome: values.outcome, settingsFile: values.settings, json: values.json, full: values.full };
}

function parse() {
  return parseArgs({
    allowPositionals: true,
    options: {
      outcome: { type: 'string' },
      settings: { type: 'string' },
      json: { type: 'boolean', default: false },
      full: { type: 'boolean', default: false },
    },
  });
}
