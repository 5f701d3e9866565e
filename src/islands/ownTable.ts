/**
 * The reader's own table of study arms, kept in this browser only (IndexedDB, since a table may be
 * larger than other stores hold). Pages and workers read it from here; nothing is sent anywhere.
 */
import { createStore, del, get, set } from 'idb-keyval';
import * as z from 'zod/mini';
import '../evidence/zodConfig.ts';
import { MARK_NAME } from './ownTableMark.ts';

/** Address by which a worker knows that the reader's own table is meant, in place of one on the site. */
export const OWN_TABLE = 'own table';

const KEY = 'arms';

const markSchema = z.strictObject({
  /** Name of the file it came from. */
  name: z.string().check(z.maxLength(500)),
  studies: z.int().check(z.gte(0)),
  rows: z.int().check(z.gte(0)),
  /** True where a row says that it is invented. */
  demonstration: z.boolean(),
});
const ownTableSchema = z.extend(markSchema, {
  /** CSV, as it was opened. */
  text: z.string(),
});

type OwnTable = z.infer<typeof ownTableSchema>;
/** What is said of the own table on every page. */
export type OwnTableMark = z.infer<typeof markSchema>;

let opened: ReturnType<typeof createStore> | null = null;
function store(): ReturnType<typeof createStore> {
  opened ??= createStore('shy-of-failure', 'tables');
  return opened;
}

/** The table, validated; null where there is none or what is stored is something else. */
export async function loadOwnTable(): Promise<OwnTable | null> {
  const found = ownTableSchema.safeParse(await get(KEY, store()));
  return found.success ? found.data : null;
}

/** Stores the table without marking it, as a worker can. @throws where the browser refuses, with its reason */
export async function writeOwnTable(table: OwnTable): Promise<void> {
  await set(KEY, table, store());
}

/** Says on every page from now on that there is an own table. */
export function markOwnTable({ name, studies, rows, demonstration }: OwnTableMark): void {
  localStorage.setItem(MARK_NAME, JSON.stringify({ name, studies, rows, demonstration }));
}

/** Stores and marks. @throws where the browser refuses to store it, with its reason */
export async function storeOwnTable(table: OwnTable): Promise<void> {
  await writeOwnTable(table);
  markOwnTable(table);
}

export async function removeOwnTable(): Promise<void> {
  localStorage.removeItem(MARK_NAME);
  await del(KEY, store());
}

/** What the mark says of the own table; null where there is none. Known at once, before the table is. */
export function readMark(): OwnTableMark | null {
  try {
    const found = markSchema.safeParse(JSON.parse(localStorage.getItem(MARK_NAME) ?? 'null'));
    return found.success ? found.data : null;
  } catch {
    // What stands there is no JSON, or the browser forbids pages to keep anything.
    return null;
  }
}

/** Address of the table that a page's workers read: the reader's own where there is one, else the site's. */
export function addressOfTable(shipped: string): string {
  return readMark() ? OWN_TABLE : shipped;
}
