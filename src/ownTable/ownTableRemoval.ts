/** Removes the reader's own table from this browser. Apart from its reading, since every page can do it. */
import { del } from 'idb-keyval';
import { OWN_KEY, openDatabase } from './ownTableDatabase.ts';
import { MARK_NAME } from './ownTableMark.ts';

/** The mark goes first: without it no page looks for the table. @throws where the browser refuses, with its reason */
export async function removeOwnTable(): Promise<void> {
  localStorage.removeItem(MARK_NAME);
  await del(OWN_KEY, openDatabase());
}
