/**
 * The worker of “Your table”: opens a file in steps with progress, asks what its reader must decide, validates and
 * keeps it, and says what changed against the site's table. It is ended to cancel.
 */
import { foldProblems, type ProblemFold } from '../../evidence/foldProblems.ts';
import {
  type Answer,
  answer,
  askAbout,
  openArms,
  readDraft,
  type TableDraft,
  type TableQuestions,
} from '../../evidence/opening/openTable.ts';
import { formatProblem, type Problem } from '../../evidence/problem.ts';
import type { Arm } from '../../evidence/schema.ts';
import { readArms } from '../../evidence/table.ts';
import { problemsToCsv } from '../../evidence/writeProblems.ts';
import { compareTables, type TableComparison } from '../../model/compareTables.ts';
import { defaultSettings } from '../../model/settings.ts';
import { type ExportedTable, exportTable, stateChange } from '../../ownTable/exportTable.ts';
import { type KeptTable, keepTable } from '../../ownTable/keptTables.ts';
import { loadTableText } from '../../ownTable/loadTable.ts';
import { stateTable, type TableFacts } from '../../ownTable/stateTable.ts';
import { identify } from '../../ownTable/version.ts';
import { LISTED_PROBLEMS } from '../../ui/listedProblems.ts';
import { answerCalls } from '../../ui/workerAnswers.ts';
import type { Operation } from '../../ui/workerCalls.ts';

export interface OpenedTable {
  readonly facts: TableFacts;
  /** The table as it is kept; null where it has problems, or questions that are not answered. */
  readonly kept: KeptTable | null;
  readonly questions: TableQuestions;
  /** How the file was read and what answers changed, a sentence each. */
  readonly said: readonly string[];
  /** The first problems and warnings by kind, and how many there are in all. */
  readonly problems: readonly ProblemFold[];
  readonly problemCount: number;
  readonly warnings: readonly ProblemFold[];
  readonly warningCount: number;
}

export interface OpeningStep {
  readonly phase: 'reading' | 'unpacking' | 'checking';
  readonly done: number;
  readonly total: number;
}

export type TableOperations = {
  readonly open: Operation<File, OpenedTable, OpeningStep>;
  /** To a question about the file that was opened last. */
  readonly answer: Operation<Answer, OpenedTable, OpeningStep>;
  /** Of the file that was opened last. */
  readonly problems: Operation<null, { readonly name: string; readonly text: string }>;
  readonly export: Operation<KeptTable, ExportedTable>;
  readonly compare: Operation<{ readonly shipped: string; readonly own: string }, TableComparison>;
};

/** Milliseconds between two reports of progress. */
const BETWEEN_REPORTS = 50;

interface LastOpened {
  readonly draft: TableDraft;
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
}

let last: LastOpened | null = null;

/** @throws where the worker was ended since */
function lastOpened(): LastOpened {
  if (!last) throw new Error('what was opened went when the work was stopped; open the file again');
  return last;
}

answerCalls<TableOperations>({
  open: async (file, { report }) => openFile(file, spaced(report)),
  answer: (given, { report }) => readAndKeep(answer(lastOpened().draft, given), spaced(report)),
  problems: () => {
    const { draft, problems, warnings } = lastOpened();
    return { name: `${draft.file.replace(/\.\w+$/u, '')}-problems.csv`, text: problemsToCsv(problems, warnings) };
  },
  export: exportTable,
  compare: async ({ shipped, own }) =>
    compareTables(await readTable(shipped, 'the site’s table'), await readTable(own, 'your table'), defaultSettings),
});

async function openFile(file: File, report: (step: OpeningStep) => void): Promise<OpenedTable> {
  const bytes = await readBytes(file, (done) => report({ phase: 'reading', done, total: file.size }));
  const opened = await openArms(bytes, file.name, (done, total) => report({ phase: 'unpacking', done, total }));
  return readAndKeep(opened, report);
}

/** Reads a table as it stands, and keeps it where nothing is asked and nothing is wrong. */
async function readAndKeep(draft: TableDraft, report: (step: OpeningStep) => void): Promise<OpenedTable> {
  const steps = readDraft(draft);
  let step = steps.next();
  while (!step.done) {
    report({ phase: 'checking', ...step.value });
    step = steps.next();
  }
  const { arms, problems, warnings } = step.value;
  last = { draft, problems, warnings };
  const questions = askAbout(draft);
  const facts = stateTable(draft.file, arms);
  const isOpen = questions.columns.length > 0 || questions.commas !== null;
  const kept = problems.length === 0 && !isOpen ? await keep(draft, facts) : null;
  return {
    facts,
    kept,
    questions,
    said: [...draft.opened.said, ...draft.changes.map(stateChange)],
    problems: listFirst(foldProblems(problems)),
    problemCount: problems.length,
    warnings: listFirst(foldProblems(warnings)),
    warningCount: warnings.length,
  };
}

async function keep({ text, opened, changes }: TableDraft, facts: TableFacts): Promise<KeptTable> {
  const kept: KeptTable = {
    ...facts,
    ...(await identify(text)),
    opened: Date.now(),
    ...(opened.encoding !== 'utf-8' && { encoding: opened.encoding }),
    ...(opened.sheet !== null && { sheet: opened.sheet }),
    ...(changes.length > 0 && { changes }),
  };
  await keepTable(kept, text);
  return kept;
}

/** As many as a page lists, of each kind too: all of them are in the file for download. */
function listFirst(folds: readonly ProblemFold[]): readonly ProblemFold[] {
  return folds
    .slice(0, LISTED_PROBLEMS)
    .map((fold) => ({ ...fold, problems: fold.problems.slice(0, LISTED_PROBLEMS) }));
}

/** The file's bytes, read chunk by chunk. */
async function readBytes(file: File, progress: (done: number) => void): Promise<Uint8Array> {
  const bytes = new Uint8Array(file.size);
  const reader = file.stream().getReader();
  let done = 0;
  for (;;) {
    const chunk = await reader.read();
    if (chunk.done) break;
    bytes.set(chunk.value, done);
    done += chunk.value.length;
    progress(done);
  }
  return bytes;
}

/** Leaves out reports that come soon after the one before. */
function spaced(report: (step: OpeningStep) => void) {
  let reported = Number.NEGATIVE_INFINITY;
  return (step: OpeningStep) => {
    const now = performance.now();
    if (now - reported < BETWEEN_REPORTS) return;
    reported = now;
    report(step);
  };
}

async function readTable(address: string, name: string): Promise<readonly Arm[]> {
  const { arms, problems } = readArms(await loadTableText(address), name);
  if (problems.length > 0) throw new Error(problems.slice(0, LISTED_PROBLEMS).map(formatProblem).join('\n'));
  return arms;
}
