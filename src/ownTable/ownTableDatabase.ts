/** Where this browser keeps the reader's own table: IndexedDB, since a table may be larger than other stores hold. */
import { createStore, type UseStore } from 'idb-keyval';

export const OWN_KEY = 'arms';

let opened: UseStore | null = null;

export function openDatabase(): UseStore {
  opened ??= createStore('shy-of-failure', 'tables');
  return opened;
}
