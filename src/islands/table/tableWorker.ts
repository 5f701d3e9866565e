/**
 * The worker of “Your table”: opens a file in steps with progress, validates and keeps it, and says what
 * changed against the site's table. It is ended to cancel.
 */
import { formatProblem, type Problem } from '../../evidence/problem.ts';
import type { Arm } from '../../evidence/schema.ts';
import { readArms, readArmsInSteps } from '../../evidence/table.ts';
import { problemsToCsv } from '../../evidence/writeProblems.ts';
import { writeArms } from '../../evidence/writeTable.ts';
import { compareTables, type TableComparison } from '../../model/compareTables.ts';
import { defaultSettings } from '../../model/settings.ts';
import { type KeptTable, keepTable } from '../../ownTable/keptTables.ts';
import { loadTableText } from '../../ownTable/loadTable.ts';
import { stateTable, type TableFacts } from '../../ownTable/stateTable.ts';
import { identify } from '../../ownTable/version.ts';
import { LISTED_PROBLEMS } from '../../ui/listedProblems.ts';
import { answerCalls } from '../../ui/workerAnswers.ts';
import type { Operation } from '../../ui/workerCalls.ts';

export interface OpenedTable {
  readonly facts: TableFacts;
  /** The table as it is kept; null where it has problems. */
  readonly kept: KeptTable | null;
  /** The first problems and warnings, and how many there are. */
  readonly problems: readonly Problem[];
  readonly problemCount: number;
  readonly warnings: readonly Problem[];
  readonly warningCount: number;
}

interface OpeningStep {
  readonly phase: 'reading' | 'checking';
  readonly done: number;
  readonly total: number;
}

export type TableOperations = {
  readonly open: Operation<File, OpenedTable, OpeningStep>;
  /** Of the file that was opened last. */
  readonly problems: Operation<null, { readonly name: string; readonly text: string }>;
  /** Asked with the address of a table. */
  readonly export: Operation<string, { readonly text: string }>;
  readonly compare: Operation<{ readonly shipped: string; readonly own: string }, TableComparison>;
};

/** Milliseconds between two reports of progress. */
const BETWEEN_REPORTS = 50;

let last: {
  readonly name: string;
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
} | null = null;

answerCalls<TableOperations>({
  open: async (file, { report }) => openFile(file, spaced(report)),
  problems: () => {
    if (!last) throw new Error('the list of problems went when the work was stopped; open the file again');
    const name = `${last.name.replace(/\.\w+$/u, '')}-problems.csv`;
    return { name, text: problemsToCsv(last.problems, last.warnings) };
  },
  export: async (own) => ({ text: writeArms(await readTable(own, 'your table')) }),
  compare: async ({ shipped, own }) =>
    compareTables(await readTable(shipped, 'the site’s table'), await readTable(own, 'your table'), defaultSettings),
});

async function openFile(file: File, report: (step: OpeningStep) => void): Promise<OpenedTable> {
  const text = await readText(file, (done) => report({ phase: 'reading', done, total: file.size }));
  const steps = readArmsInSteps(text, file.name);
  let step = steps.next();
  while (!step.done) {
    report({ phase: 'checking', ...step.value });
    step = steps.next();
  }
  const { arms, problems, warnings } = step.value;
  last = { name: file.name, problems, warnings };
  const facts = stateTable(file.name, arms);
  const kept = problems.length === 0 ? { ...facts, ...(await identify(text)), opened: Date.now() } : null;
  if (kept) await keepTable(kept, text);
  return {
    facts,
    kept,
    problems: problems.slice(0, LISTED_PROBLEMS),
    problemCount: problems.length,
    warnings: warnings.slice(0, LISTED_PROBLEMS),
    warningCount: warnings.length,
  };
}

/** The file's text, read chunk by chunk; bytes that are not UTF-8 become U+FFFD, which the reader of tables reports. */
async function readText(file: File, progress: (done: number) => void): Promise<string> {
  const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
  const parts: string[] = [];
  const reader = file.stream().getReader();
  let done = 0;
  for (;;) {
    const chunk = await reader.read();
    if (chunk.done) break;
    done += chunk.value.length;
    parts.push(decoder.decode(chunk.value, { stream: true }));
    progress(done);
  }
  return parts.join('') + decoder.decode();
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
