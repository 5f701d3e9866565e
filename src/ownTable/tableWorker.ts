/**
 * The worker of “Your table”: opens a file in steps with progress, validates and stores it, and says
 * what changed against the site's table. It is ended to cancel.
 */
import { formatProblem, type Problem } from '../evidence/problem.ts';
import type { Arm } from '../evidence/schema.ts';
import { readArms, readArmsInSteps } from '../evidence/table.ts';
import { problemsToCsv } from '../evidence/writeProblems.ts';
import { writeArms } from '../evidence/writeTable.ts';
import { compareTables, type TableComparison } from '../model/compareTables.ts';
import { defaultSettings } from '../model/settings.ts';
import { reasonOf } from '../ui/reasonOf.ts';
import { OWN_TABLE, type OwnTableMark } from './ownTable.ts';
import { writeOwnTable } from './ownTableStore.ts';
import { markOf } from './tableMark.ts';
import { loadTableText } from './tableText.ts';

export type TableRequest =
  | { readonly kind: 'open'; readonly file: File }
  /** Of the file that was opened last. */
  | { readonly kind: 'problems' }
  | { readonly kind: 'export' }
  | { readonly kind: 'compare'; readonly shipped: string };

export interface OpenedTable {
  readonly mark: OwnTableMark;
  /** The first problems and warnings, and how many there are. */
  readonly problems: readonly Problem[];
  readonly problemCount: number;
  readonly warnings: readonly Problem[];
  readonly warningCount: number;
}

export type TableReply =
  | { readonly kind: 'progress'; readonly phase: 'reading' | 'checking'; readonly done: number; readonly total: number }
  | { readonly kind: 'opened'; readonly opened: OpenedTable; readonly stored: boolean }
  | { readonly kind: 'file'; readonly name: string; readonly text: string }
  | { readonly kind: 'comparison'; readonly comparison: TableComparison }
  | { readonly kind: 'failed'; readonly reason: string };

/** Problems that a page lists; all are in the file for download. */
const SHOWN = 200;
/** Milliseconds between two reports of progress. */
const BETWEEN_REPORTS = 50;

let last: {
  readonly name: string;
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
} | null = null;

self.addEventListener('message', ({ data }: MessageEvent<TableRequest>) => {
  answer(data).catch((error: unknown) => {
    reply({ kind: 'failed', reason: reasonOf(error) });
  });
});

async function answer(request: TableRequest): Promise<void> {
  if (request.kind === 'open') await open(request.file);
  else if (request.kind === 'problems') {
    if (!last) throw new Error('the list of problems went when the work was stopped; open the file again');
    const name = `${last.name.replace(/\.\w+$/u, '')}-problems.csv`;
    reply({ kind: 'file', name, text: problemsToCsv(last.problems, last.warnings) });
  } else if (request.kind === 'export') {
    reply({ kind: 'file', name: 'arms.csv', text: writeArms(await readOwn()) });
  } else if (request.kind === 'compare') {
    const shipped = requireArms(await loadTableText(request.shipped), request.shipped);
    reply({ kind: 'comparison', comparison: compareTables(shipped, await readOwn(), defaultSettings) });
  }
}

async function open(file: File): Promise<void> {
  const report = makeReporter();
  const text = await readText(file, (done) => report('reading', done, file.size));
  const steps = readArmsInSteps(text, file.name);
  let step = steps.next();
  while (!step.done) {
    report('checking', step.value.done, step.value.total);
    step = steps.next();
  }
  const { arms, problems, warnings } = step.value;
  last = { name: file.name, problems, warnings };
  const mark = markOf(file.name, arms);
  const stored = problems.length === 0;
  if (stored) await writeOwnTable({ ...mark, text });
  reply({
    kind: 'opened',
    stored,
    opened: {
      mark,
      problems: problems.slice(0, SHOWN),
      problemCount: problems.length,
      warnings: warnings.slice(0, SHOWN),
      warningCount: warnings.length,
    },
  });
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

function makeReporter() {
  let reported = Number.NEGATIVE_INFINITY;
  return (phase: 'reading' | 'checking', done: number, total: number) => {
    const now = performance.now();
    if (now - reported < BETWEEN_REPORTS) return;
    reported = now;
    reply({ kind: 'progress', phase, done, total });
  };
}

async function readOwn(): Promise<readonly Arm[]> {
  return requireArms(await loadTableText(OWN_TABLE), 'your table');
}

function requireArms(text: string, name: string): readonly Arm[] {
  const { arms, problems } = readArms(text, name);
  if (problems.length > 0) throw new Error(problems.slice(0, SHOWN).map(formatProblem).join('\n'));
  return arms;
}

function reply(message: TableReply): void {
  self.postMessage(message);
}
