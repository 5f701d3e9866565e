/**
 * State of adding rows to the reader's own table: what has to be asked first, and how it ended. Nothing is
 * kept before the whole table was read without a problem, nor where another table has been taken up since.
 */
import { signal } from '@preact/signals';
import type { Problem } from '../../evidence/problem.ts';
import { findTable, type KeptTable, keepTable } from '../../ownTable/keptTables.ts';
import { loadTableText } from '../../ownTable/loadTable.ts';
import { addressOf, putInUse, versionInUse } from '../../ownTable/tableInUse.ts';
import { identify } from '../../ownTable/version.ts';
import { reasonOf } from '../../ui/reasonOf.ts';
import { callWorker } from '../../ui/workerCalls.ts';
import type { JoinedTables, StudyRows, TableText } from './joinTables.ts';
import type { JoinOperations } from './joinWorker.ts';

/** Name of a table that was made of such rows alone. */
const OWN_NAME = 'own-arms.csv';

/** A joined table, and the version of the one that it was made from; null where there was none. */
type Joined = Extract<JoinedTables, { readonly kind: 'joined' }> & { readonly from: string | null };

type Adding =
  | { readonly step: 'none' }
  | { readonly step: 'working' }
  /** There is no own table: of what shall it be made? */
  | { readonly step: 'asking for a start' }
  /** Columns would be left behind. */
  | { readonly step: 'asking about columns'; readonly joined: Joined }
  /** Since it began, another table was taken up, or put away where there is none now. */
  | { readonly step: 'asking about another'; readonly now: KeptTable | null }
  | { readonly step: 'added'; readonly joined: Joined }
  | { readonly step: 'refused'; readonly reason: string; readonly problems: readonly Problem[] }
  | { readonly step: 'failed'; readonly reason: string };

/** The table that the site shows. */
export interface SiteTable {
  readonly address: string;
  readonly name: string;
}

/**
 * @param studiesFor rows of the studies; those that were taken from the table of that name take their place in it
 * @param noteAdded hears the name of the table that the studies are in from now on
 */
export function createAdding(
  shipped: SiteTable,
  studiesFor: (table: string | null) => readonly StudyRows[],
  noteAdded: (table: string) => void,
) {
  const adding = signal<Adding>({ step: 'none' });
  const calls = callWorker<JoinOperations>(
    () => new Worker(new URL('./joinWorker.ts', import.meta.url), { type: 'module' }),
  );

  const start = async () => {
    await attempt(async () => {
      const own = await findInUse();
      if (own) await join({ name: own.name, text: await loadTableText(addressOf(own)) }, own.name, own.version);
      else adding.value = { step: 'asking for a start' };
    });
  };
  const startWithRows = () => attempt(() => join(null, OWN_NAME, null));
  const startWithCopy = () =>
    attempt(async () => {
      const text = await loadTableText(shipped.address);
      await join({ name: shipped.name, text }, shipped.name.replace(/(?:\.csv)?$/iu, '-and-own.csv'), null);
    });
  const confirm = async () => {
    const { value: asked } = adding;
    if (asked.step === 'asking about columns') await attempt(() => keep(asked.joined));
  };
  const cancel = () => {
    adding.value = { step: 'none' };
  };

  const join = async (table: TableText | null, name: string, from: string | null) => {
    const reply = await new Promise<JoinedTables>((take, fail) => {
      const asked = { table, studies: studiesFor(table?.name ?? null), name };
      calls.ask('join', asked, { take, fail: (reason) => fail(new Error(reason)) });
    }).finally(calls.end);
    if (reply.kind === 'refused') {
      adding.value = { step: 'refused', reason: reply.reason, problems: reply.problems };
    } else if (reply.unread.length > 0) adding.value = { step: 'asking about columns', joined: { ...reply, from } };
    else await keep({ ...reply, from });
  };
  const keep = async (joined: Joined) => {
    const now = await findInUse();
    if ((now?.version ?? null) !== joined.from) {
      adding.value = { step: 'asking about another', now };
      return;
    }
    const kept: KeptTable = {
      ...joined.facts,
      ...(await identify(joined.text)),
      opened: Date.now(),
      // What its file was stays true of what was added to.
      ...(now?.encoding && { encoding: now.encoding }),
      ...(now?.sheet !== undefined && { sheet: now.sheet }),
      changes: [...(now?.changes ?? []), joined.change],
    };
    await keepTable(kept, joined.text, joined.from);
    await putInUse(kept.version);
    noteAdded(joined.facts.name);
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

/** The own table that the site reads at this moment, whichever tab chose it. */
export async function findInUse(): Promise<KeptTable | null> {
  const version = versionInUse();
  return version === null ? null : findTable(version);
}
