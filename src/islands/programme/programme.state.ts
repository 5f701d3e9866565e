/**
 * State of the programme check: two versions as text, the exercises that the reader described, the
 * calendar, and the report on them. Nothing leaves the browser; the text outlives a reload of the tab.
 */
import { computed, effect, signal } from '@preact/signals';
import { type Exercise, plainName } from '../../evidence/exercises.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import { addressOfTable } from '../../ownTable/ownTable.ts';
import { type ProgrammeInput, type ProgrammeReport, reportProgramme } from '../../practice/programme/report.ts';
import { readSaved, type SavedProgramme, writeSaved } from '../../practice/programme/saved.ts';
import { reasonOf } from '../../ui/reasonOf.ts';
import { saveFile } from '../../ui/saveFile.ts';
import { startCalculation } from '../analysis/calculation.ts';
import type { ProgrammeReply, ProgrammeRequest } from './programmeWorker.ts';

/** Milliseconds without a keystroke after which a programme is checked. */
const REST = 300;
const STORE = 'shy-of-failure programme';

export type VersionName = 'first' | 'second';

export function createProgramme(
  start: PracticeAnalysis,
  listed: readonly Exercise[],
  example: SavedProgramme,
  shipped: string,
) {
  const analysis = signal<PracticeAnalysis>(start);
  /** True while the reader's own table is wanted and the site's still answers. */
  const foreign = signal(false);
  const programme = signal<SavedProgramme>(example);
  const input = computed<ProgrammeInput>(() => ({
    ...programme.value,
    exercises: [...programme.value.exercises, ...listed],
  }));
  const report = signal<ProgrammeReport>(reportProgramme(start, input.value));
  const pending = signal(false);
  /** Why the last step could not be done. */
  const problem = signal<string | null>(null);
  /** Why the reader's own table is not read. */
  const tableProblem = signal<string | null>(null);
  const change = (part: Partial<SavedProgramme>) => {
    problem.value = null;
    programme.value = { ...programme.value, ...part };
  };
  const describe = (exercise: Exercise) => {
    const others = programme.value.exercises.filter(({ name }) => plainName(name) !== plainName(exercise.name));
    change({ exercises: [...others, exercise] });
  };
  const save = () => {
    saveFile({ name: 'programme.json', type: 'application/json', text: writeSaved(programme.value) });
  };
  /** Number of the file that was opened last: one that takes longer to read must not come after it. */
  let lastOpened = 0;
  /** A file of this page, or a CSV of sets for one version. */
  const open = async (file: File, version: VersionName) => {
    const place = ++lastOpened;
    try {
      const text = await file.text();
      if (place === lastOpened) takeText(file.name, text, version);
    } catch (error) {
      problem.value = `${file.name}: ${reasonOf(error)}`;
    }
  };
  const takeText = (name: string, text: string, version: VersionName) => {
    if (!/^\s*\{/u.test(text)) {
      change({ [version]: text });
      return;
    }
    const read = readSaved(text);
    if (read.problem === null) change(read.programme);
    else problem.value = `${name}: ${read.problem}`;
  };

  /** Has the reader's own table analysed, once; returns what ends it. */
  const readOwn = (table: string) => {
    foreign.value = true;
    const calculation = startCalculation(
      (reply) => {
        if (reply.kind === 'problem') tableProblem.value = reply.problem;
        if (reply.kind !== 'practice') return;
        analysis.value = reply.analysis;
        foreign.value = false;
        calculation.end();
      },
      (reason) => {
        tableProblem.value = reason;
      },
    );
    calculation.ask({ kind: 'practice', id: 0, table, settings: start.settings });
    return calculation.end;
  };

  const connect = () => {
    const restored = readStored();
    if (restored) programme.value = restored;
    const worker = new Worker(new URL('./programmeWorker.ts', import.meta.url), { type: 'module' });
    let latest = 0;
    /** The analysis that the worker has. */
    let sent: PracticeAnalysis | null = null;
    const table = addressOfTable(shipped);
    const stopReading = table === shipped ? null : readOwn(table);
    worker.addEventListener('error', () => {
      pending.value = false;
      problem.value = 'the check could not be started in this browser';
    });
    worker.addEventListener('message', ({ data }: MessageEvent<ProgrammeReply>) => {
      if (data.id !== latest) return;
      pending.value = false;
      if (data.report) report.value = data.report;
      else problem.value = data.problem;
    });
    let rest: ReturnType<typeof setTimeout> | undefined;
    let checked = { input: restored ? null : input.value, by: start };
    const stop = effect(() => {
      const wanted = { input: input.value, by: analysis.value };
      if (wanted.input === checked.input && wanted.by === checked.by) return;
      checked = wanted;
      pending.value = true;
      // From here on a reply is about what stood before.
      const id = ++latest;
      clearTimeout(rest);
      rest = setTimeout(() => {
        store(programme.peek());
        const request: ProgrammeRequest = {
          id,
          analysis: sent === wanted.by ? null : wanted.by,
          input: wanted.input,
        };
        sent = wanted.by;
        worker.postMessage(request);
      }, REST);
    });
    return () => {
      clearTimeout(rest);
      stop();
      stopReading?.();
      worker.terminate();
    };
  };
  return {
    programme,
    report,
    pending,
    foreign,
    problem,
    tableProblem,
    analysis,
    change,
    describe,
    save,
    open,
    showExample: () => change(example),
    connect,
  };
}

export type ProgrammeState = ReturnType<typeof createProgramme>;

/** What this tab kept; null where it kept nothing that can be read. */
function readStored(): SavedProgramme | null {
  try {
    return readSaved(sessionStorage.getItem(STORE) ?? '').programme;
  } catch {
    // A browser may forbid pages to keep anything.
    return null;
  }
}

function store(programme: SavedProgramme): void {
  try {
    sessionStorage.setItem(STORE, writeSaved(programme));
  } catch {
    // Forbidden or full: the programme is checked all the same, and can be saved to a file.
  }
}
