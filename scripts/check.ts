/**
 * Checks a table of study arms, and whether each of its studies has a line in the table of studies.
 * `npm run check -- --help` says how.
 */
import { existsSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import type { Arm } from '../src/evidence/schema.ts';
import { compareStudyLines } from '../src/evidence/studyLines.ts';
import { type ArmTable, readArms, readStudies } from '../src/evidence/table.ts';
import { OUTCOMES } from '../src/evidence/vocabulary.ts';
import { CallError, listProblems, placeProblem, readText, runScript } from './terminal/call.ts';

const SHIPPED_ARMS = 'data/arms.csv';
const STUDIES = 'studies.csv';

const HELP = `usage: npm run check -- [FILE.csv]

Checks a table of study arms; lists every problem with its line, column, value and what was expected.

Without a file it checks ${SHIPPED_ARMS} and the table of studies beside it, data/${STUDIES}: they
belong together, so that a study without its line there is a problem. With a file that table is what is
checked, and a ${STUDIES} beside it may be another's: whatever is wrong there is a warning. A line whose
study has no arms is always a warning: a reference may be there before its arms are coded.

Exit code 0: no problem. 1: problems, all listed. 2: wrong call.`;

runScript({ help: HELP, files: { counts: [0, 1], expected: 'one file' } }, ({ files }) => {
  const file = files[0] ?? SHIPPED_ARMS;
  const ofArms = readArms(readText(file, 'table'), basename(file));
  const studiesFile = join(dirname(file), STUDIES);
  const areBothChecked = files.length === 0;
  const ofStudies = checkStudies(ofArms, file, studiesFile, areBothChecked);
  const problems = [...ofArms.problems, ...(areBothChecked ? ofStudies.problems : [])];
  const warnings = [...ofArms.warnings, ...(areBothChecked ? [] : ofStudies.problems), ...ofStudies.warnings];
  for (const warning of warnings) console.log(`warning: ${placeProblem(warning)}`);
  if (problems.length > 0) {
    const checked = areBothChecked ? `${file} and ${studiesFile}` : file;
    throw new CallError(
      `${listProblems(problems)}\n${problems.length} problem(s) in ${checked}; ${ofStudies.summary}`,
      1,
    );
  }
  console.log(`${file}: ${summarise(ofArms.arms)}; ${ofStudies.summary}; no problem, ${warnings.length} warning(s)`);
});

/** The table of studies itself, and how it goes with the arms. Without one there is nothing to compare, unless it must be there. */
function checkStudies({ arms, problems: ofArms }: ArmTable, file: string, studiesFile: string, isNeeded: boolean) {
  if (resolve(file) === resolve(studiesFile)) {
    const arms = join(dirname(file), basename(SHIPPED_ARMS));
    return { problems: [], warnings: [], summary: `for a table of studies, check the arms beside it: ${arms}` };
  }
  if (!isNeeded && !existsSync(studiesFile)) {
    return { problems: [], warnings: [], summary: `no ${studiesFile} to compare its studies with` };
  }
  const { studies, problems, warnings } = readStudies(readText(studiesFile, 'table of studies'), STUDIES);
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
