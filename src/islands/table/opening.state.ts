/** State of opening a file as a table: how far it is, and what was found in it. */
import { signal } from '@preact/signals';
import type { Answer } from '../../evidence/opening/openTable.ts';
import { loadTableText } from '../../ownTable/loadTable.ts';
import { putInUse } from '../../ownTable/tableInUse.ts';
import { reasonOf } from '../../ui/reasonOf.ts';
import { saveFile } from '../../ui/saveFile.ts';
import { callWorker, type Operation, type Waiting } from '../../ui/workerCalls.ts';
import type { OpenedTable, OpeningStep, TableOperations } from './tableWorker.ts';

interface OpeningProgress {
  readonly name: string;
  readonly phase: OpeningStep['phase'];
  /** 0 to 1. */
  readonly share: number;
}

export function openTableWorker() {
  return callWorker<TableOperations>(
    () => new Worker(new URL('./tableWorker.ts', import.meta.url), { type: 'module' }),
  );
}

/** @param kept called when a table has come to those that are kept */
export function createOpening(kept: () => Promise<void>) {
  const progress = signal<OpeningProgress | null>(null);
  /** The file that was opened last, where it was taken or refused; null before that and where it could not be done. */
  const opened = signal<OpenedTable | null>(null);
  const failure = signal<string | null>(null);
  const calls = openTableWorker();

  const fail = (reason: string) => {
    progress.value = null;
    failure.value = reason;
  };
  /** Has the whole site read a table that holds. What was found is said only once that is done. */
  const take = async (found: OpenedTable) => {
    if (found.kept) {
      await kept();
      try {
        await putInUse(found.kept.version);
      } catch (error) {
        fail(`${found.kept.name} is kept below, but cannot be taken up: ${reasonOf(error)}`);
        return;
      }
    }
    progress.value = null;
    opened.value = found;
  };
  const follow = (name: string): Waiting<Operation<unknown, OpenedTable, OpeningStep>> => ({
    progress: ({ phase, done, total }) => {
      progress.value = { name, phase, share: total > 0 ? done / total : 0 };
    },
    take: (found) => void take(found),
    fail,
  });
  const open = (file: File) => {
    cancel();
    failure.value = null;
    opened.value = null;
    progress.value = { name: file.name, phase: 'reading', share: 0 };
    calls.ask('open', file, follow(file.name));
  };
  /** Answers a question about the file that was opened last; what is asked then stands in its place. */
  const reply = (given: Answer) => {
    if (!opened.value || progress.value) return;
    failure.value = null;
    const { name } = opened.value.facts;
    progress.value = { name, phase: 'checking', share: 0 };
    calls.ask('answer', given, follow(name));
  };
  /** Opens a table that the site serves, as if its file had been chosen. */
  const openServed = async (address: string, name: string) => {
    cancel();
    failure.value = null;
    opened.value = null;
    const started = { name, phase: 'reading', share: 0 } as const;
    progress.value = started;
    try {
      const text = await loadTableText(address);
      // Stopped meanwhile, or another file was opened.
      if (progress.value === started) open(new File([text], name, { type: 'text/csv' }));
    } catch (error) {
      if (progress.value === started) fail(reasonOf(error));
    }
  };
  /** Ends the opening; what the site reads stays. */
  const cancel = () => {
    calls.end();
    progress.value = null;
  };
  const downloadProblems = () => {
    failure.value = null;
    calls.ask('problems', null, {
      take: ({ name, text }) => saveFile({ name, type: 'text/csv', text }),
      fail,
    });
  };
  return { progress, opened, failure, open, openServed, reply, cancel, downloadProblems };
}
