/**
 * What an older version left: noted when a newer one takes over, with the pages that are open then, since those may
 * still ask for it; removed when they are closed. The note lies in a store, since browsers end a service worker whenever
 * it has nothing to do. A version never removes what it did not find itself: a newer one may be fetching its files.
 */
import { worker } from './workerScope.ts';

interface Older {
  /** Ids of the pages that were open. */
  readonly windows: readonly string[];
  /** Addresses of entries in the store of all versions. */
  readonly entries: readonly string[];
  /** Names of stores of that version alone. */
  readonly stores: readonly string[];
}

const NOTE = `shy-of-failure-older-${worker.registration.scope}`;
/** Nothing of the site is at this address. */
const ADDRESS = `${worker.registration.scope}older-version`;

/**
 * @param store name of the store of all versions
 * @param needed addresses of the entries that this version needs
 * @param isOldStore whether a store is of an older version alone
 */
export async function noteOlder(
  store: string,
  needed: ReadonlySet<string>,
  isOldStore: (name: string) => boolean,
): Promise<void> {
  const windows = await worker.clients.matchAll({ type: 'window', includeUncontrolled: true });
  const names = await caches.keys();
  const requests = await (await caches.open(store)).keys();
  // Looked at after the entries: a version that is fetched by now may have put some of them there.
  const entries = isNewerComing() ? [] : requests.map(({ url }) => url).filter((url) => !needed.has(url));
  const older: Older = { windows: windows.map(({ id }) => id), entries, stores: names.filter(isOldStore) };
  await (await caches.open(NOTE)).put(ADDRESS, Response.json(older));
}

/** Removes what was noted, if none of the noted pages is open any more. A version that is coming leaves it to that one. */
export async function removeOlder(store: string): Promise<void> {
  const note = await caches.match(ADDRESS, { cacheName: NOTE });
  if (!note || isNewerComing()) return;
  const { windows, entries, stores }: Older = await note.json();
  const open = await Promise.all(windows.map((id) => worker.clients.get(id)));
  if (open.some((window) => window !== undefined)) return;
  const shared = await caches.open(store);
  await Promise.all([...entries.map((url) => shared.delete(url)), ...stores.map((name) => caches.delete(name))]);
  await caches.delete(NOTE);
}

function isNewerComing(): boolean {
  return Boolean(worker.registration.installing ?? worker.registration.waiting);
}
