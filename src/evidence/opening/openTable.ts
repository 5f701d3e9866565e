/** A file as a table of study arms, with what its reader must be asked before it can be read as it was meant. */

import { countOf } from '../../numerics/countOf.ts';
import { DESCRIBED_ARM_COLUMNS } from '../columnMeanings.ts';
import { ARM_COLUMNS } from '../schema.ts';
import { type ArmTable, drain, type Progress, readArmsInSteps } from '../table.ts';
import { askColumns, type ColumnQuestion, isRefusedName, renameColumn } from './columnQuestions.ts';
import { convertDecimalCommas, type DecimalCommas, findDecimalCommas } from './decimalComma.ts';
import { makeNameTest } from './likelyColumns.ts';
import { mergeProblems } from './mergeProblems.ts';
import { type OpenedFile, openFile } from './openFile.ts';
import { SYNONYMS } from './synonyms.ts';

/** A table between being opened and being read: its text as it stands, and what was done to it. */
export interface TableDraft {
  readonly file: string;
  readonly opened: OpenedFile;
  readonly text: string;
  /** What was changed in the text since it was opened, a sentence each. */
  readonly changes: readonly string[];
  /** Names of the header that were said to mean no column. */
  readonly declined: ReadonlySet<string>;
  /** True once the commas were said to be no decimal ones. */
  readonly keepsCommas: boolean;
}

/** What is asked of a table; a question that is answered is not asked again. */
export interface TableQuestions {
  readonly columns: readonly ColumnQuestion[];
  readonly commas: DecimalCommas | null;
}

export type Answer =
  /** @property name the column that is meant; null for none of them */
  | { readonly of: 'column'; readonly question: ColumnQuestion; readonly name: string | null }
  | { readonly of: 'commas'; readonly isYes: boolean };

/** @param report told, of a spreadsheet, how much of a sheet is read */
export async function openArms(
  bytes: Uint8Array,
  file: string,
  report?: (done: number, total: number) => void,
): Promise<TableDraft> {
  const opened = await openFile(bytes, file, makeNameTest(ARM_COLUMNS, SYNONYMS), report);
  return { file, opened, text: opened.text, changes: [], declined: new Set(), keepsCommas: false };
}

export function askAbout({ opened, text, file, declined, keepsCommas }: TableDraft): TableQuestions {
  if (opened.isRefused) return { columns: [], commas: null };
  return {
    columns: askColumns(text, file, DESCRIBED_ARM_COLUMNS, SYNONYMS, declined),
    // In a spreadsheet a comma in a text may have parted thousands in a number elsewhere: nobody can tell any more.
    commas: keepsCommas || opened.sheet !== null ? null : findDecimalCommas(text, file, ARM_COLUMNS),
  };
}

export function answer(draft: TableDraft, given: Answer): TableDraft {
  const { text, file, changes, declined } = draft;
  if (given.of === 'commas') {
    const found = given.isYes ? findDecimalCommas(text, file, ARM_COLUMNS) : null;
    if (!found) return { ...draft, keepsCommas: true };
    const said = `${countOf(found.cells, 'cell')} with a decimal comma now ${found.cells === 1 ? 'has' : 'have'} a point`;
    return { ...draft, text: convertDecimalCommas(text, found), changes: [...changes, said] };
  }
  const { written, place } = given.question;
  const rename = (name: string) => renameColumn(text, file, DESCRIBED_ARM_COLUMNS, SYNONYMS, place, name);
  if (given.name !== null) {
    return { ...draft, text: rename(given.name), changes: [...changes, `the column ${written} is now ${given.name}`] };
  }
  const refused = { ...draft, declined: new Set([...declined, written]) };
  if (!isRefusedName(text, file, DESCRIBED_ARM_COLUMNS, SYNONYMS, written)) return refused;
  // So like a column's name that the table would be refused for it: it takes another.
  const name = `${written} (not read)`;
  return {
    ...refused,
    declined: new Set([...refused.declined, name]),
    text: rename(name),
    changes: [...changes, `the column ${written} is now ${name}`],
  };
}

/** The draft with every question answered that has one likely answer: what a table would be if it means what it seems to. */
export function acceptLikely(draft: TableDraft): TableDraft {
  let accepted = draft;
  for (const question of askAbout(draft).columns) {
    const [only, ...others] = question.candidates;
    if (others.length > 0 || question.rivals.length > 0) continue;
    accepted = answer(accepted, { of: 'column', question, name: only.name });
  }
  return answer(accepted, { of: 'commas', isYes: accepted.opened.sheet === null });
}

/** Reads the table as it stands, with what was wrong with its file and its sheet, in steps that report progress. */
export function* readDraft({ opened, text, file }: TableDraft): Generator<Progress, ArmTable> {
  if (opened.isRefused) return { arms: [], problems: opened.problems, warnings: [] };
  const read = yield* readArmsInSteps(text, file);
  return { ...read, problems: mergeProblems(opened.problems, read.problems) };
}

/** As `readDraft`, at once. */
export function readDraftNow(draft: TableDraft): ArmTable {
  return drain(readDraft(draft));
}
