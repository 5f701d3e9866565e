/** The reader's own table of study arms as this browser keeps it. Pages and workers read it from here; nothing is sent anywhere. */
import { get, set } from 'idb-keyval';
import * as z from 'zod/mini';
import { markOwnTable, markSchema } from './ownTable.ts';
import { OWN_KEY, openDatabase } from './ownTableDatabase.ts';

const ownTableSchema = z.extend(markSchema, {
  /** CSV, as it was opened. */
  text: z.string(),
});

type OwnTable = z.infer<typeof ownTableSchema>;

/** The table, validated; null where there is none or what is stored is something else. */
export async function loadOwnTable(): Promise<OwnTable | null> {
  const found = ownTableSchema.safeParse(await get(OWN_KEY, openDatabase()));
  return found.success ? found.data : null;
}

/** Stores the table without marking it, as a worker can. @throws where the browser refuses, with its reason */
export async function writeOwnTable(table: OwnTable): Promise<void> {
  await set(OWN_KEY, table, openDatabase());
}

/** Stores and marks. @throws where the browser refuses to store it, with its reason */
export async function storeOwnTable(table: OwnTable): Promise<void> {
  await writeOwnTable(table);
  markOwnTable(table);
}
