/**
 * Checks a table of study arms, and whether each of its studies has a line in the table of studies.
 * `npm run check -- --help` says how.
 */
import { existsSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import type { Arm } from '../src/evidence/schema.ts';
import { compareStudyLines } from '../src/evidence/studyLines.ts';
import { type ArmTable, readStudies } from '../src/evidence/table.ts';
import { OUTCOMES } from '../src/evidence/vocabulary.ts';
import { CallError, runScript, stateFileError } from './terminal/call.ts';
import { listKinds, type ReadFile, readAnyText, readTableFile, TABLE_HELP, TABLE_OPTIONS } from './terminal/table.ts';

const SHIPPED_ARMS = 'data/arms.csv';
const STUDIES = 'studies.csv';

const HELP = `usage: npm run check -- [FILE] [--decimal-comma] [--write NEW.csv] [--all]

Checks a table of study arms; says every problem with its line, column, value and what was expected.

Without a file it checks ${SHIPPED_ARMS} and the table of studies beside it, data/${STUDIES}: they
belong together, so that a study without its line there is a problem. With a file that table is what is
checked, and a ${STUDIES} beside it may be another's: whatever is wrong there is a warning. A line whose
study has no arms is always a warning: a reference may be there before its arms are coded.

  --write NEW.csv       writes the table as it was read, from a spreadsheet too, as CSV in UTF-8
${TABLE_HELP}

Exit code 0: no problem. 1: problems. 2: wrong call.`;

const form = {
  help: HELP,
  options: { write: { type: 'string' }, ...TABLE_OPTIONS },
  files: { counts: [0, 1], expected: 'one file' },
} as const;

runScript(form, async ({ values, files }) => {
  const file = files[0] ?? SHIPPED_ARMS;
  if (values.write !== undefined && existsSync(values.write)) {
    throw new CallError(`expected a new file for --write, found one at ${resolve(values.write)}`, 2);
  }
  const ofArms = await readTableFile(file, 'table', values);
  const studiesFile = join(dirname(file), STUDIES);
  const areBothChecked = files.length === 0;
  const ofStudies = checkStudies(ofArms, file, studiesFile, areBothChecked);
  const problems = [...ofArms.problems, ...(areBothChecked ? ofStudies.problems : [])];
  const warnings = [...(areBothChecked ? [] : ofStudies.problems), ...ofStudies.warnings];
  for (const note of ofArms.notes) console.log(`note: ${note}`);
  for (const warning of [...ofArms.warningLines, ...listKinds(warnings, values.all)])
    console.log(`warning: ${warning}`);
  if (values.write !== undefined) writeTable(ofArms, values.write);
  if (problems.length > 0) {
    const checked = areBothChecked ? `${file} and ${studiesFile}` : file;
    const lines = [...ofArms.problemLines, ...listKinds(areBothChecked ? ofStudies.problems : [], values.all)];
    throw new CallError([...lines, `${problems.length} problem(s) in ${checked}; ${ofStudies.summary}`].join('\n'), 1);
  }
  const count = ofArms.warnings.length + warnings.length;
  console.log(`${file}: ${summarise(ofArms.arms)}; ${ofStudies.summary}; no problem, ${count} warning(s)`);
});

function writeTable({ text }: ReadFile, file: string): void {
  if (text === '') return;
  try {
    writeFileSync(file, text, { flag: 'wx' });
  } catch (error) {
    throw new CallError(`cannot write the table ${file}: ${stateFileError(error, file, 'write')}`, 2);
  }
  console.log(`written to ${file}`);
}

/** The table of studies itself, and how it goes with the arms. Without one there is nothing to compare, unless it must be there. */
function checkStudies({ arms, problems: ofArms }: ArmTable, file: string, studiesFile: string, isNeeded: boolean) {
  if (resolve(file) === resolve(studiesFile)) {
    const arms = join(dirname(file), basename(SHIPPED_ARMS));
    return { problems: [], warnings: [], summary: `for a table of studies, check the arms beside it: ${arms}` };
  }
  if (!isNeeded && !existsSync(studiesFile)) {
    return { problems: [], warnings: [], summary: `no ${studiesFile} to compare its studies with` };
  }
  const { text, notes } = readAnyText(studiesFile, 'table of studies');
  for (const note of notes) console.log(`note: ${note}`);
  const { studies, problems, warnings } = readStudies(text, STUDIES);
  // Rows with problems are not read, so that their studies would seem to be missing.
  if (ofArms.length + problems.length > 0) {
    return { problems, warnings, summary: `studies not compared with ${studiesFile} until both have no problem` };
  }
  const { withoutLine, withoutArms } = compareStudyLines(
    { rows: arms, file: basename(file) },
    { rows: studies, file: STUDIES },
  );
  return {
    problems: withoutLine,
    warnings: [...warnings, ...withoutArms],
    summary: `studies compared with ${studiesFile}`,
  };
}

function summarise(arms: readonly Arm[]): string {
  const count = (values: readonly string[]) => new Set(values).size;
  const studies = count(arms.map(({ study }) => study));
  const namedArms = count(arms.map(({ study, arm }) => JSON.stringify([study, arm])));
  const outcomes = OUTCOMES.map((outcome) => `${arms.filter((arm) => arm.outcome === outcome).length} ${outcome}`);
  return `${arms.length} rows of ${namedArms} arms in ${studies} studies (${outcomes.join(', ')})`;
}
