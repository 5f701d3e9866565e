/**
 * The reader's own table of study arms, kept in this browser only (IndexedDB, since a table may be
 * larger than other stores hold). Pages and workers read it from here; nothing is sent anywhere.
 */
import { createStore, del, get, set } from 'idb-keyval';
import { z } from 'zod';

/** Address by which a worker knows that the reader's own table is meant, in place of one on the site. */
export const OWN_TABLE = 'own table';

/** Name under which a mark says that there is an own table, for pages to know before they look. */
const MARK = 'shy-of-failure own table';
const KEY = 'arms';

const ownTableSchema = z.strictObject({
  /** Name of the file it came from. */
  name: z.string().max(500),
  /** CSV, as it was opened. */
  text: z.string(),
  /** Studies and rows, for the mark on every page. */
  studies: z.int().min(0),
  rows: z.int().min(0),
});

export type OwnTable = z.infer<typeof ownTableSchema>;

const store = () => createStore('shy-of-failure', 'tables');

/** The table, validated; null where there is none or it cannot be read. */
export async function loadOwnTable(): Promise<OwnTable | null> {
  const found = ownTableSchema.safeParse(await get(KEY, store()));
  return found.success ? found.data : null;
}

/** @throws where the browser refuses to store it, with its reason */
export async function storeOwnTable(table: OwnTable): Promise<void> {
  await set(KEY, table, store());
  const { text: _, ...mark } = table;
  localStorage.setItem(MARK, JSON.stringify(mark));
}

export async function removeOwnTable(): Promise<void> {
  localStorage.removeItem(MARK);
  await del(KEY, store());
}

/** What the mark says of the own table; null where there is none. Known at once, before the table is. */
export function readMark(): Omit<OwnTable, 'text'> | null {
  const written = localStorage.getItem(MARK);
  if (written === null) return null;
  try {
    const found = ownTableSchema.omit({ text: true }).safeParse(JSON.parse(written));
    return found.success ? found.data : null;
  } catch {
    return null;
  }
}
