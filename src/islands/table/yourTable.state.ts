/** State of “Your table”: the file that is being opened, what is wrong with it, and the table that the site reads. */
import { signal } from '@preact/signals';
import type { TableComparison } from '../../model/compareTables.ts';
import { markOwnTable, type OwnTableMark, readMark } from '../../ownTable/ownTable.ts';
import { MARK_CHANGED } from '../../ownTable/ownTableMark.ts';
import { removeOwnTable } from '../../ownTable/ownTableRemoval.ts';
import type { OpenedTable, TableReply, TableRequest } from '../../ownTable/tableWorker.ts';
import { reasonOf } from '../../ui/reasonOf.ts';
import { saveFile } from '../../ui/saveFile.ts';

interface OpeningProgress {
  readonly name: string;
  readonly phase: 'reading' | 'checking';
  /** 0 to 1. */
  readonly share: number;
}

export function createYourTable(shipped: string) {
  /** The own table that the site reads; null where it reads its own. */
  const own = signal<OwnTableMark | null>(null);
  const progress = signal<OpeningProgress | null>(null);
  /** The file that was opened last; null before one was. */
  const opened = signal<OpenedTable | null>(null);
  const comparison = signal<TableComparison | null>(null);
  const comparing = signal(false);
  const failure = signal<string | null>(null);
  let worker: Worker | null = null;

  const post = (request: TableRequest) => {
    failure.value = null;
    worker ??= startWorker();
    worker.postMessage(request);
  };
  const startWorker = () => {
    const started = new Worker(new URL('../../ownTable/tableWorker.ts', import.meta.url), { type: 'module' });
    started.addEventListener('error', () =>
      take({ kind: 'failed', reason: 'the worker could not be started in this browser' }),
    );
    started.addEventListener('message', ({ data }: MessageEvent<TableReply>) => take(data));
    return started;
  };
  const take = (reply: TableReply) => {
    if (reply.kind === 'progress') {
      const name = progress.value?.name ?? '';
      progress.value = { name, phase: reply.phase, share: reply.total > 0 ? reply.done / reply.total : 0 };
    } else if (reply.kind === 'opened') {
      progress.value = null;
      opened.value = reply.opened;
      if (reply.stored) takeUp(reply.opened.mark);
    } else if (reply.kind === 'comparison') {
      comparing.value = false;
      comparison.value = reply.comparison;
    } else if (reply.kind === 'file') saveFile({ name: reply.name, type: 'text/csv', text: reply.text });
    else {
      progress.value = null;
      comparing.value = false;
      failure.value = reply.reason;
    }
  };
  /** Has the whole site read the table that the worker stored. */
  const takeUp = (mark: OwnTableMark) => {
    try {
      markOwnTable(mark);
    } catch (error) {
      failure.value = reasonOf(error);
      return;
    }
    own.value = mark;
    comparison.value = null;
    dispatchEvent(new Event(MARK_CHANGED));
  };
  const open = (file: File) => {
    cancel();
    opened.value = null;
    progress.value = { name: file.name, phase: 'reading', share: 0 };
    post({ kind: 'open', file });
  };
  /** Ends whatever is being done; what the site reads stays. */
  const cancel = () => {
    worker?.terminate();
    worker = null;
    progress.value = null;
    comparing.value = false;
  };
  const compare = () => {
    comparing.value = true;
    post({ kind: 'compare', shipped });
  };
  const goBack = async () => {
    cancel();
    failure.value = null;
    try {
      await removeOwnTable();
    } catch (error) {
      failure.value = reasonOf(error);
      return;
    }
    own.value = null;
    opened.value = null;
    comparison.value = null;
    dispatchEvent(new Event(MARK_CHANGED));
  };
  const connect = () => {
    own.value = readMark();
    return cancel;
  };
  return {
    own,
    progress,
    opened,
    comparison,
    comparing,
    failure,
    open,
    cancel,
    compare,
    goBack,
    downloadProblems: () => post({ kind: 'problems' }),
    downloadTable: () => post({ kind: 'export' }),
    connect,
  };
}

export type YourTableState = ReturnType<typeof createYourTable>;
