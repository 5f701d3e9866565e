/** Fits a table of study arms and prints the analysis; `npm run fit -- --help` says how. */
import { basename } from 'node:path';
import { DEMONSTRATION_NOTE, isDemonstration } from '../src/evidence/demonstration.ts';
import { analyse } from '../src/model/analyse.ts';
import { analyseInFull } from '../src/model/full.ts';
import { CallError, runScript } from './terminal/call.ts';
import { stateFullAnalysis } from './terminal/fullReport.ts';
import { stateAnalysis } from './terminal/report.ts';
import { readSettings, SETTINGS_HELP } from './terminal/settings.ts';
import { readTableFile, TABLE_HELP, TABLE_OPTIONS } from './terminal/table.ts';

const HELP = `usage: npm run fit -- TABLE [--outcome growth|strength|fatigue] [--settings FILE.json] [--full] [--json]

Fits the table of study arms and prints the analysis.

  --outcome NAME        what is fitted against reserve; growth where neither this nor the settings say
${SETTINGS_HELP}
  --full                adds strength, work beyond failure, fatigue and the checks
  --json                prints all of the analysis as JSON
${TABLE_HELP}

Exit code 0: fitted. 1: the table or the settings have problems. 2: wrong call.`;

const form = {
  help: HELP,
  options: {
    outcome: { type: 'string' },
    settings: { type: 'string' },
    json: { type: 'boolean', default: false },
    full: { type: 'boolean', default: false },
    ...TABLE_OPTIONS,
  },
  files: { counts: [1], expected: 'one table file' },
} as const;

runScript(form, async ({ values, files: [file] }) => {
  const settings = readSettings(values.settings, values.outcome);
  const { arms, problems, problemLines, warningLines, notes } = await readTableFile(file, 'table', values);
  for (const note of notes) console.error(`note: ${note}`);
  for (const warning of warningLines) console.error(`warning: ${warning}`);
  if (problems.length > 0) {
    throw new CallError(
      [...problemLines, `${problems.length} problem(s) in ${file}; nothing was fitted`].join('\n'),
      1,
    );
  }
  const full = values.full ? analyseInFull(arms, settings) : null;
  const analysis = full ?? analyse(arms, settings);
  if (values.json) {
    console.log(JSON.stringify(analysis, null, 2));
    return;
  }
  console.log(stateAnalysis(analysis, `${basename(file)}${isDemonstration(arms) ? `, ${DEMONSTRATION_NOTE}` : ''}`));
  if (full) console.log(`\n${stateFullAnalysis(full)}`);
});
