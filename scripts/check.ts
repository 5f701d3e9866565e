/**
 * Checks a table of study arms.
 *
 *     npm run check -- [FILE]          default: data/arms.csv
 *
 * Exit code 0: no problem; prints a summary and warnings. 1: problems, all of them. 2: wrong call.
 */
import { basename } from 'node:path';
import { formatProblem } from '../src/evidence/problem.ts';
import { readArms } from '../src/evidence/table.ts';
import { OUTCOMES } from '../src/evidence/vocabulary.ts';
import { CallError, readText, runScript } from './call.ts';

const DEFAULT_FILE = 'data/arms.csv';

runScript(() => {
  const files = process.argv.slice(2);
  if (files.length > 1)
    throw new CallError(`expected one file, received ${files.length}\nusage: npm run check -- [FILE]`, 2);
  const file = files[0] ?? DEFAULT_FILE;
  const { arms, problems, warnings } = readArms(readText(file, 'table'), basename(file));
  for (const warning of warnings) console.log(`warning: ${formatProblem(warning)}`);
  if (problems.length > 0) {
    throw new CallError(`${problems.map(formatProblem).join('\n')}\n${problems.length} problem(s) in ${file}`, 1);
  }
  const count = (values: readonly string[]) => new Set(values).size;
  const studies = count(arms.map(({ study }) => study));
  const namedArms = count(arms.map(({ study, arm }) => JSON.stringify([study, arm])));
  const outcomes = OUTCOMES.map((outcome) => `${arms.filter((arm) => arm.outcome === outcome).length} ${outcome}`);
  console.log(
    `${file}: ${arms.length} rows of ${namedArms} arms in ${studies} studies (${outcomes.join(', ')}); no problem, ${warnings.length} warning(s)`,
  );
});
