/**
 * Adds the studies of a reference manager's export to the table of studies.
 * `npm run references -- --help` says how.
 */
import { appendFileSync, existsSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { appendRows } from '../src/evidence/appendRows.ts';
import { type Problem, showValue } from '../src/evidence/problem.ts';
import { STUDY_COLUMNS, type Study } from '../src/evidence/schema.ts';
import { compareStudyLines } from '../src/evidence/studyLines.ts';
import { readStudies } from '../src/evidence/table.ts';
import { BIBTEX } from './references/bibtex.ts';
import { CSL_JSON } from './references/cslJson.ts';
import { type Export, type Format, readExport } from './references/entry.ts';
import { type Plan, planAdditions } from './references/planAdditions.ts';
import { RIS } from './references/ris.ts';
import { CallError, listProblems, placeProblem, readText, runScript, stateFileError } from './terminal/call.ts';
import { readAnyText, readTableFile } from './terminal/table.ts';

const HELP = `usage: npm run references -- FILE.ris|FILE.bib|FILE.json [--table FILE.csv] [--write]

Reads an export of a reference manager (RIS, BibTeX or CSL-JSON) and prints the lines that it would add
to the table of studies. No line of the table is changed. An entry with the DOI, or the title and year, of a
study in it is reported as already there. Abstract, keywords and notes are not read.

  --table FILE.csv      the table of studies; data/studies.csv where left out
  --write               appends the lines to the table

Exit code 0: fine. 1: entries or the table have problems (all are listed; entries without any are added
all the same, but nothing to a table with problems). 2: wrong call.`;

const FORMATS: Readonly<Record<string, Format>> = { '.ris': RIS, '.bib': BIBTEX, '.json': CSL_JSON };

const form = {
  help: HELP,
  options: { table: { type: 'string', default: 'data/studies.csv' }, write: { type: 'boolean', default: false } },
  files: { counts: [1], expected: 'one export' },
} as const;

runScript(form, async ({ values: { table, write }, files: [file] }) => {
  const format = FORMATS[extname(file).toLowerCase()];
  if (!format) throw new CallError(`expected a file that ends in .ris, .bib or .json, received ${file}`, 2);
  const { text: exportText, notes } = readAnyText(file, 'export');
  for (const note of notes) console.log(`note: ${note}`);
  const exported = readExport(format, exportText, basename(file));
  const existing = readText(table, 'table');
  const { studies, problems } = readTable(existing, table);
  if (problems.length > 0) {
    throw new CallError(`${listProblems(problems)}\n${problems.length} problem(s) in ${table}; nothing is added`, 1);
  }
  const plan = planAdditions(exported.entries, studies, basename(file), format.fields);
  const addition = appendRows(existing, plan.added, STUDY_COLUMNS, basename(table));
  if (write && addition.text !== '') append(table, addition.text);
  describe(plan, exported, addition.text, { file, table, write });
  const after = readStudies(existing + addition.text, basename(table));
  for (const warning of after.warnings) console.log(`warning: ${placeProblem(warning)}`);
  for (const column of addition.unwritten) {
    console.log(`warning: ${table} has no column ${column}; what the entries say there is not written`);
  }
  await compareWithArms(after.studies, table);
  const wrong = [...exported.problems, ...plan.problems].sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
  if (wrong.length > 0) throw new CallError(`${listProblems(wrong)}\n${wrong.length} problem(s) in ${file}`, 1);
});

/** The table; one with a header alone is what a curator starts from, and no problem here. */
function readTable(text: string, table: string): { studies: readonly Study[]; problems: readonly Problem[] } {
  const { studies, problems } = readStudies(text, basename(table));
  const isOnlyHeader =
    text.trim() !== '' && problems.length === 1 && problems[0].kind === 'file' && problems[0].line === null;
  return { studies, problems: isOnlyHeader ? [] : problems };
}

function append(table: string, text: string): void {
  try {
    appendFileSync(table, text);
  } catch (error) {
    throw new CallError(`cannot write the table ${table}: ${stateFileError(error, table, 'write')}`, 2);
  }
}

function describe(plan: Plan, exported: Export, text: string, call: { file: string; table: string; write: boolean }) {
  const { added, already, problems } = plan;
  const left = exported.problems.length + problems.length;
  console.log(`entries read from ${call.file}: ${exported.entries.length}`);
  const verb = call.write ? 'added' : 'would be added (nothing is written without --write)';
  console.log(`${added.length} to ${call.table} ${verb}${text === '' ? '' : `:\n${text.trim()}`}`);
  if (already.length > 0) console.log(`${already.length} already there:`);
  for (const { entry, title, as, because } of already) {
    console.log(`  line ${entry.line}, “${showValue(title)}”: ${because} as ${showValue(as)}`);
  }
  if (left > 0) console.log(`${left} problem(s), listed below; those entries are left out`);
}

/** Says which studies of the arms beside the table have no line in it, and the other way round. */
async function compareWithArms(studies: readonly Study[], table: string): Promise<void> {
  const file = join(dirname(table), 'arms.csv');
  if (!existsSync(file)) {
    console.log(`no ${file} beside the table, so that its studies were not compared`);
    return;
  }
  const { arms, problems } = await readTableFile(file, 'table of arms', { 'decimal-comma': false, all: false });
  if (problems.length > 0) {
    console.log(`${file} has ${problems.length} problem(s) (npm run check), so that its studies were not compared`);
    return;
  }
  const { withoutLine, withoutArms } = compareStudyLines(
    { rows: arms, file: 'arms.csv' },
    { rows: studies, file: basename(table) },
  );
  for (const problem of [...withoutLine, ...withoutArms]) console.log(`warning: ${placeProblem(problem)}`);
  if (withoutLine.length + withoutArms.length === 0)
    console.log(`every study of ${file} has its line, and every line its arms`);
}
