/** Tables of study arms as the scripts read them: any file that can be opened as one, with what must be asked about it. */
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { foldProblems, formatFold } from '../../src/evidence/foldProblems.ts';
import type { ColumnQuestion } from '../../src/evidence/opening/columnQuestions.ts';
import type { DecimalCommas } from '../../src/evidence/opening/decimalComma.ts';
import { decodeText } from '../../src/evidence/opening/encoding.ts';
import { stateEncoding } from '../../src/evidence/opening/openFile.ts';
import {
  acceptLikely,
  answer,
  askAbout,
  openArms,
  readDraftNow,
  type TableDraft,
} from '../../src/evidence/opening/openTable.ts';
import { type Problem, showValue } from '../../src/evidence/problem.ts';
import type { ArmTable } from '../../src/evidence/table.ts';
import { countOf } from '../../src/numerics/countOf.ts';
import { CallError, placeProblem, stateFileError } from './call.ts';

/** Options of every script that reads such a table. */
export const TABLE_OPTIONS = {
  'decimal-comma': { type: 'boolean', default: false },
  all: { type: 'boolean', default: false },
} as const;

export const TABLE_HELP = `  --decimal-comma       reads numbers with decimal commas, in a table where nothing else can be meant
  --all                 lists every problem and warning; several of one kind are one line otherwise

A table is CSV (commas, semicolons or tabs; UTF-8, UTF-16 or Windows-1252) or a spreadsheet (.xlsx or .ods),
of which the sheet is read whose header fits.`;

interface TableOptions {
  readonly 'decimal-comma': boolean;
  readonly all: boolean;
}

export interface ReadFile extends ArmTable {
  /** CSV as it was read, with what the options changed. */
  readonly text: string;
  /** How the file was read and what is asked about it, a line each. */
  readonly notes: readonly string[];
  /** Warnings and problems as they are printed; what is asked stands before them. */
  readonly warningLines: readonly string[];
  readonly problemLines: readonly string[];
}

/**
 * @param what names the file's part in the call, for the message
 * @param name of the file in problems; its last part by default
 */
export async function readTableFile(
  file: string,
  what: string,
  options: TableOptions,
  name: string = basename(file),
): Promise<ReadFile> {
  const opened = await openArms(readBytes(file, what), name);
  const draft = options['decimal-comma'] ? answer(opened, { of: 'commas', isYes: true }) : opened;
  const table = readDraftNow(draft);
  const questions = askAbout(draft);
  const asked = [...questions.columns.map(askColumn), ...(questions.commas ? [askCommas(questions.commas)] : [])];
  const said = [...draft.opened.said, ...draft.changes.map((change) => `${change}.`)];
  return {
    ...table,
    text: draft.text,
    notes: said.map((one) => `${name}: ${one}`),
    warningLines: [
      ...(table.problems.length === 0 ? asked : []).map((one) => `${name}: ${one}`),
      ...listKinds(table.warnings, options.all),
    ],
    problemLines: listProblemLines(draft, table.problems, asked, options.all),
  };
}

/** Problems or warnings, a line each, or a line for several of one kind. */
export function listKinds(problems: readonly Problem[], isAll: boolean): readonly string[] {
  if (isAll) return problems.map(placeProblem);
  return foldProblems(problems).map((fold) => `${fold.problems[0].file}: ${formatFold(fold)}`);
}

/** What is asked, and the problems that stay whatever the answer; with all of them, as it stands. */
function listProblemLines(
  draft: TableDraft,
  problems: readonly Problem[],
  asked: readonly string[],
  isAll: boolean,
): readonly string[] {
  if (problems.length === 0) return [];
  const lines = asked.map((one) => `${draft.file}: ${one}`);
  const likely = asked.length > 0 && !isAll ? readDraftNow(acceptLikely(draft)).problems : problems;
  if (likely.length >= problems.length) return [...lines, ...listKinds(problems, isAll)];
  const solved = problems.length - likely.length;
  return [
    ...lines,
    `${draft.file}: ${countOf(solved, 'problem')} would go with that (--all lists all as it stands); ${likely.length === 0 ? 'none stays' : 'these stay:'}`,
    ...listKinds(likely, false),
  ];
}

function askColumn({ written, values, candidates, rivals }: ColumnQuestion): string {
  const held = values.length > 0 ? ` (${values.map((value) => showValue(value)).join(', ')})` : '';
  const meant = candidates.map(({ name, description }) => `\`${name}\` (${description})`).join(' or ');
  const rival = rivals.length > 0 ? `, or is ${rivals.map((one) => `\`${showValue(one)}\``).join(' or ')} it` : '';
  return `column \`${showValue(written)}\`${held}: is this ${meant}${rival}? Then rename it.`;
}

function askCommas({ cells, example, columns, couldBeThousands }: DecimalCommas): string {
  const doubt = couldBeThousands
    .map(({ name, cell }) => ` In \`${name}\` “${cell}” could also mean thousands.`)
    .join('');
  const names = columns.map(({ name }) => name).join(', ');
  return `${countOf(cells, 'cell')} with a decimal comma, such as “${showValue(example)}” (${names}): are these decimal commas? Then give --decimal-comma.${doubt}`;
}

/** Text of a file in whatever encoding, with how it was read where that is not plain. */
export function readAnyText(file: string, what: string): { readonly text: string; readonly notes: readonly string[] } {
  const { text, encoding } = decodeText(readBytes(file, what));
  return { text, notes: stateEncoding(text, encoding).map((one) => `${basename(file)}: ${one}`) };
}

function readBytes(file: string, what: string): Uint8Array {
  try {
    return new Uint8Array(readFileSync(file));
  } catch (error) {
    throw new CallError(`cannot read the ${what} ${file}: ${stateFileError(error, file)}`, 2);
  }
}
