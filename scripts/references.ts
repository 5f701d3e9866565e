/**
 * Adds the studies of a reference manager's export to the table of studies.
 *
 *     npm run references -- FILE.ris|FILE.bib [--table data/studies.csv] [--write]
 *
 * Without --write it prints the lines that it would add. What stands in the table is never changed; an
 * entry with the DOI, or the title and year, of a study in it is reported as already there. Abstract,
 * keywords and notes of an entry are not read.
 *
 * Exit code 0: fine. 1: entries or the table have problems (all are listed; entries without any are
 * added all the same, but nothing to a table with problems). 2: wrong call.
 */
import { appendFileSync, existsSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { formatProblem, type Problem, showValue } from '../src/evidence/problem.ts';
import type { Study } from '../src/evidence/schema.ts';
import { compareStudyLines } from '../src/evidence/studyLines.ts';
import { readArms, readStudies } from '../src/evidence/table.ts';
import { CallError, parseCall, readText, runScript } from './call.ts';
import { appendRows } from './references/appendRows.ts';
import type { Export, FieldNames } from './references/entry.ts';
import { type Plan, planAdditions } from './references/planAdditions.ts';
import { BIBTEX_FIELDS, readBibtex } from './references/readBibtex.ts';
import { RIS_FIELDS, readRis } from './references/readRis.ts';

const USAGE = 'usage: npm run references -- FILE.ris|FILE.bib [--table data/studies.csv] [--write]';

interface Format {
  readonly read: (text: string, file: string) => Export;
  readonly fields: FieldNames;
}

const FORMATS: Readonly<Record<string, Format>> = {
  '.ris': { read: readRis, fields: RIS_FIELDS },
  '.bib': { read: readBibtex, fields: BIBTEX_FIELDS },
};

runScript(() => {
  const { file, format, table, write } = readCall();
  const exported = format.read(readText(file, 'export').replace(/^\ufeff/u, ''), basename(file));
  const existing = readText(table, 'table');
  const { studies, problems } = readTable(existing, table);
  if (problems.length > 0) {
    throw new CallError(`${list(problems)}\n${problems.length} problem(s) in ${table}; nothing is added`, 1);
  }
  const plan = planAdditions(exported.entries, studies, basename(file), format.fields);
  const addition = appendRows(existing, plan.added, basename(table));
  if (write && addition.text !== '') append(table, addition.text);
  describe(plan, exported, addition.text, { file, table, write });
  const after = readStudies(existing + addition.text, basename(table));
  for (const warning of after.warnings) console.log(`warning: ${place(warning)}`);
  for (const column of addition.unwritten) {
    console.log(`warning: ${table} has no column ${column}; what the entries say there is not written`);
  }
  compareWithArms(after.studies, table);
  const wrong = [...exported.problems, ...plan.problems].sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
  if (wrong.length > 0) throw new CallError(`${list(wrong)}\n${wrong.length} problem(s) in ${file}`, 1);
});

function readCall() {
  const { values, positionals } = parseCall(parse, USAGE);
  const [file] = positionals;
  if (positionals.length !== 1 || file === undefined) {
    throw new CallError(`expected one export, received ${positionals.length}\n${USAGE}`, 2);
  }
  const format = FORMATS[extname(file).toLowerCase()];
  if (!format) throw new CallError(`expected a file that ends in .ris or .bib, received ${file}\n${USAGE}`, 2);
  return { file, format, table: values.table, write: values.write };
}

function parse() {
  return parseArgs({
    allowPositionals: true,
    options: { table: { type: 'string', default: 'data/studies.csv' }, write: { type: 'boolean', default: false } },
  });
}

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
    const code = error instanceof Error && 'code' in error ? error.code : error;
    throw new CallError(`cannot write the table ${table}: ${code}`, 2);
  }
}

function describe(plan: Plan, exported: Export, text: string, call: { file: string; table: string; write: boolean }) {
  const { added, already, problems } = plan;
  const left = exported.problems.length + problems.length;
  console.log(`${call.file}: ${exported.entries.length} entries read`);
  const verb = call.write ? 'added' : 'would be added (nothing is written without --write)';
  console.log(`${added.length} to ${call.table} ${verb}${text === '' ? '' : `:\n${text.trim()}`}`);
  if (already.length > 0) console.log(`${already.length} already there:`);
  for (const { entry, title, as, because } of already) {
    console.log(`  line ${entry.line}, “${showValue(title)}”: ${because} as ${showValue(as)}`);
  }
  if (left > 0) console.log(`${left} problem(s), listed below; those entries are left out`);
}

/** Says which studies of the arms beside the table have no line in it, and the other way round. */
function compareWithArms(studies: readonly Study[], table: string): void {
  const file = join(dirname(table), 'arms.csv');
  if (!existsSync(file)) {
    console.log(`no ${file} beside the table, so that its studies were not compared`);
    return;
  }
  const { arms, problems } = readArms(readText(file, 'table of arms'), 'arms.csv');
  if (problems.length > 0) {
    console.log(`${file} has ${problems.length} problem(s) (npm run check), so that its studies were not compared`);
    return;
  }
  const { withoutLine, withoutArms } = compareStudyLines(
    { rows: arms, file: 'arms.csv' },
    { rows: studies, file: basename(table) },
  );
  for (const problem of [...withoutLine, ...withoutArms]) console.log(`warning: ${place(problem)}`);
  if (withoutLine.length + withoutArms.length === 0)
    console.log(`every study of ${file} has its line, and every line its arms`);
}

function list(problems: readonly Problem[]): string {
  return problems.map(place).join('\n');
}

function place(problem: Problem): string {
  return `${problem.file}: ${formatProblem(problem)}`;
}
