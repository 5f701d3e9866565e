/** State of taking a study of the reader's own table into the form. */
import { signal } from '@preact/signals';
import { loadTableText } from '../../ownTable/loadTable.ts';
import { addressOf } from '../../ownTable/tableInUse.ts';
import { reasonOf } from '../../ui/reasonOf.ts';
import { callWorker } from '../../ui/workerCalls.ts';
import { findInUse } from './addToTable.state.ts';
import type { Cells } from './cells.ts';
import type { JoinOperations } from './joinWorker.ts';

type Taking =
  | { readonly step: 'none' }
  | { readonly step: 'working' }
  | { readonly step: 'no table' }
  | {
      readonly step: 'choosing';
      readonly table: string;
      readonly studies: readonly { readonly study: string; readonly rows: number }[];
    }
  | { readonly step: 'failed'; readonly reason: string };

/** @param take hears the rows of the chosen study, and where they are from */
export function createTaking(
  take: (rows: readonly Cells[], from: { readonly table: string; readonly study: string }) => void,
) {
  const taking = signal<Taking>({ step: 'none' });
  const calls = callWorker<JoinOperations>(
    () => new Worker(new URL('./joinWorker.ts', import.meta.url), { type: 'module' }),
  );
  const ask = <Name extends 'list' | 'take'>(name: Name, request: JoinOperations[Name]['request']) =>
    new Promise<JoinOperations[Name]['result']>((done, fail) => {
      calls.ask(name, request, { take: done, fail: (reason) => fail(new Error(reason)) });
    }).finally(calls.end);
  const loadOwn = async () => {
    const own = await findInUse();
    return own && { name: own.name, text: await loadTableText(addressOf(own)) };
  };
  const attempt = async (work: () => Promise<void>) => {
    if (taking.value.step === 'working') return;
    taking.value = { step: 'working' };
    try {
      await work();
    } catch (error) {
      taking.value = { step: 'failed', reason: reasonOf(error) };
    }
  };
  /** Lists the studies of the table that is in use. */
  const start = () =>
    attempt(async () => {
      const table = await loadOwn();
      taking.value = table
        ? { step: 'choosing', table: table.name, studies: await ask('list', table) }
        : { step: 'no table' };
    });
  const choose = (study: string) =>
    attempt(async () => {
      const table = await loadOwn();
      const rows = table ? await ask('take', { table, study }) : [];
      if (!table || rows.length === 0) throw new Error(`your table has no study ${study} any more`);
      take(rows, { table: table.name, study });
      taking.value = { step: 'none' };
    });
  return { taking, start, choose };
}

export type TakingState = ReturnType<typeof createTaking>;
