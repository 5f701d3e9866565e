/**
 * Which table the pages read: the site's, or one of the reader's own. One answer for all that stands on a
 * page, found out once and given to all at once when it changes, here or in another tab, so that no two
 * parts of a page ever read two tables. Every page loads this file, so it stays small: what knows the
 * store is fetched only where there is something to look for.
 */
import type { KeptTable } from './keptTables.ts';
import { IN_USE, OLD_MARK } from './marks.ts';

export type TableInUse =
  | { readonly kind: 'site' }
  | { readonly kind: 'own'; readonly about: KeptTable }
  /** An own table is meant, but cannot be had: pages show the site's and say so. */
  | { readonly kind: 'missing'; readonly reason: string };

/** @param before what was read until now; null the first time */
type Listener = (table: TableInUse, before: TableInUse | null) => unknown;

const OWN = 'own-table:';
const SITE: TableInUse = { kind: 'site' };

let now: TableInUse | null = null;
/** Number of the newest look; an older one that comes back later is not heard. */
let latest = 0;
const listeners = new Set<Listener>();

/** Calls the listener with the table in use as soon as it is known and at every change; gives what ends it. */
export function followTable(listener: Listener): () => void {
  listeners.add(listener);
  if (now) listener(now, null);
  else if (listeners.size === 1) void look();
  return () => {
    listeners.delete(listener);
  };
}

/** The table in use as far as it is known yet; null before that. */
export function tableNow(): TableInUse | null {
  return now;
}

/** Has all pages read an own table, or the site's with null. @throws where the browser refuses, with its reason */
export async function putInUse(version: string | null): Promise<void> {
  if (version === null) localStorage.removeItem(IN_USE);
  else localStorage.setItem(IN_USE, version);
  localStorage.removeItem(OLD_MARK);
  await look();
}

/** Version of the own table that is meant at this moment, whichever tab chose it; null for the site's. */
export function versionInUse(): string | null {
  return readMark(IN_USE);
}

/** Address by which workers know the table; a `missing` one gives the site's. */
export function addressIn(table: TableInUse, shipped: string): string {
  return table.kind === 'own' ? addressOf(table.about) : shipped;
}

/** Address by which workers know a table that is kept. */
export function addressOf({ version }: KeptTable): string {
  return OWN + version;
}

/** Version of an own table by its address; null for a table of the site. */
export function ownVersionOf(address: string): string | null {
  return address.startsWith(OWN) ? address.slice(OWN.length) : null;
}

async function look(): Promise<void> {
  const mine = ++latest;
  const [mark, oldMark] = [readMark(IN_USE), readMark(OLD_MARK)];
  const found = mark === null && oldMark === null ? SITE : await find(mark);
  if (mine === latest) tell(found);
}

async function find(mark: string | null): Promise<TableInUse> {
  try {
    const { adoptOnlyTable, findTable } = await import('./keptTables.ts');
    const adopted = mark === null ? await adoptOnlyTable() : null;
    // Who looked a moment before may have taken the old table over: its mark stands by now.
    const version = mark ?? readMark(IN_USE);
    const about = adopted ?? (version === null ? null : await findTable(version));
    return about ? { kind: 'own', about } : { kind: 'missing', reason: 'this browser no longer keeps it' };
  } catch (error) {
    const { reasonOf } = await import('../ui/reasonOf.ts');
    return { kind: 'missing', reason: reasonOf(error) };
  }
}

function tell(table: TableInUse): void {
  const before = now;
  if (JSON.stringify(table) === JSON.stringify(before)) return;
  now = table;
  for (const listener of listeners) listener(table, before);
}

function readMark(name: string): string | null {
  try {
    return localStorage.getItem(name);
  } catch {
    // The browser lets pages keep nothing, so there is no own table.
    return null;
  }
}

// Another tab says so at once; a page that was frozen or kept for “back” hears nothing and looks again.
if (typeof document !== 'undefined') {
  addEventListener('storage', ({ key }) => {
    if (key === null || key === IN_USE || key === OLD_MARK) void look();
  });
  for (const name of ['pageshow', 'focus']) addEventListener(name, () => void look());
  document.addEventListener('visibilitychange', () => void look());
}
