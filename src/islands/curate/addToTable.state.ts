/**
 * State of adding rows to the reader's own table: what has to be asked first, and how it ended. Nothing
 * is stored before the whole table was read without a problem.
 */
import { signal } from '@preact/signals';
import type { Problem } from '../../evidence/problem.ts';
import { MARK_CHANGED } from '../../ownTable/ownTableMark.ts';
import { loadOwnTable, storeOwnTable } from '../../ownTable/ownTableStore.ts';
import { reasonOf } from '../../ui/reasonOf.ts';
import type { JoinedTables, TableText } from './joinTables.ts';
import type { JoinRequest } from './joinWorker.ts';

/** Name of a table that was made of such rows alone. */
const OWN_NAME = 'own-arms.csv';

type Joined = Extract<JoinedTables, { readonly kind: 'joined' }>;

type Adding =
  | { readonly step: 'none' }
  | { readonly step: 'working' }
  /** There is no own table: of what shall it be made? */
  | { readonly step: 'asking for a start' }
  /** Columns would be left behind. */
  | { readonly step: 'asking about columns'; readonly joined: Joined }
  | { readonly step: 'added'; readonly joined: Joined }
  | { readonly step: 'refused'; readonly reason: string; readonly problems: readonly Problem[] }
  | { readonly step: 'failed'; readonly reason: string };

/** The table that the site shows. */
export interface SiteTable {
  readonly address: string;
  readonly name: string;
}

/** @param csvOf text of the rows with a header */
export function createAdding(siteTable: SiteTable, csvOf: () => string) {
  const adding = signal<Adding>({ step: 'none' });

  const start = async () => {
    await attempt(async () => {
      const own = await loadOwnTable();
      if (own) await join({ name: own.name, text: own.text }, own.name);
      else adding.value = { step: 'asking for a start' };
    });
  };
  const startWithRows = () => attempt(() => join(null, OWN_NAME));
  const startWithCopy = () =>
    attempt(async () => {
      const response = await fetch(siteTable.address);
      if (!response.ok) throw new Error(`expected the table at ${siteTable.address}, received ${response.status}`);
      const text = await response.text();
      await join({ name: siteTable.name, text }, siteTable.name.replace(/(?:\.csv)?$/iu, '-and-own.csv'));
    });
  const confirm = async () => {
    const { value: asked } = adding;
    if (asked.step === 'asking about columns') await attempt(() => store(asked.joined));
  };
  const cancel = () => {
    adding.value = { step: 'none' };
  };

  const join = async (table: TableText | null, name: string) => {
    const reply = await askWorker({ table, rows: csvOf(), name });
    if (reply.kind === 'refused') {
      adding.value = { step: 'refused', reason: reply.reason, problems: reply.problems };
    } else if (reply.unread.length > 0) adding.value = { step: 'asking about columns', joined: reply };
    else await store(reply);
  };
  const store = async (joined: Joined) => {
    await storeOwnTable({ ...joined.mark, text: joined.table.text });
    dispatchEvent(new Event(MARK_CHANGED));
    adding.value = { step: 'added', joined };
  };
  const attempt = async (work: () => Promise<void>) => {
    if (adding.value.step === 'working') return;
    adding.value = { step: 'working' };
    try {
      await work();
    } catch (error) {
      adding.value = { step: 'failed', reason: reasonOf(error) };
    }
  };
  return { adding, start, startWithRows, startWithCopy, confirm, cancel };
}

export type AddingState = ReturnType<typeof createAdding>;

function askWorker(request: JoinRequest): Promise<JoinedTables> {
  const worker = new Worker(new URL('./joinWorker.ts', import.meta.url), { type: 'module' });
  return new Promise<JoinedTables>((resolve, reject) => {
    worker.addEventListener('message', ({ data }: MessageEvent<JoinedTables>) => resolve(data));
    worker.addEventListener('error', () => reject(new Error('the table could not be read in this browser')));
    worker.postMessage(request);
  }).finally(() => worker.terminate());
}
