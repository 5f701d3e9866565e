/** State of “Your table”: the tables that are kept, the one that the site reads, and what is done with them. */
import { signal } from '@preact/signals';
import type { TableComparison } from '../../model/compareTables.ts';
import { deleteTable, type KeptTable, listTables } from '../../ownTable/keptTables.ts';
import { addressIn, followTable, putInUse, type TableInUse, versionInUse } from '../../ownTable/tableInUse.ts';
import { reasonOf } from '../../ui/reasonOf.ts';
import { saveFile } from '../../ui/saveFile.ts';
import { createOpening, openTableWorker } from './opening.state.ts';

/** @param shipped address of the site's table */
export function createYourTable(shipped: string) {
  const inUse = signal<TableInUse>({ kind: 'site' });
  /** The newest first; null until they were looked for. */
  const kept = signal<readonly KeptTable[] | null>(null);
  /** Version of the table whose deleting was asked for and not yet confirmed. */
  const asked = signal<string | null>(null);
  /** What the last step did, for the status line. */
  const done = signal('');
  /** Why the last step could not be done. */
  const failure = signal<string | null>(null);
  const comparison = signal<TableComparison | null>(null);
  const comparing = signal(false);
  const calls = openTableWorker();

  /** @returns whether it was done */
  const attempt = async (work: () => Promise<void>): Promise<boolean> => {
    failure.value = null;
    done.value = '';
    try {
      await work();
      return true;
    } catch (error) {
      failure.value = reasonOf(error);
      return false;
    }
  };
  const list = async () => {
    await attempt(async () => {
      kept.value = await listTables();
    });
  };
  const opening = createOpening(list);
  const takeUp = (table: KeptTable) => attempt(() => putInUse(table.version));
  const goBack = () => attempt(() => putInUse(null));
  const confirmDeleting = async (table: KeptTable) => {
    asked.value = null;
    const isDone = await attempt(async () => {
      // The mark goes first, so that no page looks for a table that is not there.
      if (versionInUse() === table.version) await putInUse(null);
      await deleteTable(table.version);
      kept.value = await listTables();
    });
    if (isDone) done.value = `${table.name} was deleted.`;
  };
  const download = (table: KeptTable) => {
    failure.value = null;
    done.value = '';
    calls.ask('export', table, {
      take: ({ name, bytes, said }) => {
        saveFile({ name, type: 'text/csv', text: new Blob([bytes]) });
        done.value = said;
      },
      fail: (reason) => {
        failure.value = reason;
      },
    });
  };
  const stopComparing = () => {
    calls.end();
    comparing.value = false;
  };
  const compare = () => {
    failure.value = null;
    comparing.value = true;
    calls.ask(
      'compare',
      { shipped, own: addressIn(inUse.value, shipped) },
      {
        take: (found) => {
          comparing.value = false;
          comparison.value = found;
        },
        fail: (reason) => {
          comparing.value = false;
          failure.value = reason;
        },
      },
    );
  };
  const connect = () => {
    const stop = followTable((table) => {
      stopComparing();
      comparison.value = null;
      inUse.value = table;
      // Another tab may have opened or deleted some.
      void list();
    });
    return () => {
      stop();
      stopComparing();
      opening.cancel();
    };
  };
  return {
    inUse,
    kept,
    asked,
    done,
    failure,
    comparison,
    comparing,
    opening,
    takeUp,
    goBack,
    confirmDeleting,
    download,
    compare,
    stopComparing,
    connect,
  };
}

export type YourTableState = ReturnType<typeof createYourTable>;
