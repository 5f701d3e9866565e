/**
 * The reader's own tables as this browser keeps them: IndexedDB, since a table may be larger than other
 * stores hold. A table is kept under a name of its text (version.ts), so that a page which names one can never be
 * handed another, and what is opened later never takes the place of what was there.
 */
import { createStore, get, getMany, keys, promisifyRequest, setMany, type UseStore } from 'idb-keyval';
import type { Encoding } from '../evidence/opening/encoding.ts';
import { IN_USE, OLD_MARK } from './marks.ts';

/** What is said of an own table wherever it is named. */
export interface KeptTable {
  /** What tells its text from every other: SHA-256, hexadecimal, where the browser can hash (version.ts). */
  readonly version: string;
  /** Name of the file it came from. */
  readonly name: string;
  readonly studies: number;
  readonly rows: number;
  /** True where a row says that it is invented. */
  readonly demonstration: boolean;
  /** How its papers were read, where that was not in full, and what of it counted for the answer when it was opened. */
  readonly reading?: string;
  /** Of the text as UTF-8. */
  readonly bytes: number;
  /** When it was opened or last added to, milliseconds since 1970. */
  readonly opened: number;
  /** What its file was written in, where that is not UTF-8; the text is kept as UTF-8 all the same. */
  readonly encoding?: Encoding;
  /** Name of the sheet that the text was made from, where its file was a spreadsheet. */
  readonly sheet?: string;
  /** What was changed since the file was opened, a sentence each; nothing where it stands as it was. */
  readonly changes?: readonly string[];
}

/** Said of a table apart from its text: lists are read without the texts. */
const ABOUT = 'about ';
const TEXT = 'text ';
/** Where the only own table stood, with its text, before there could be several. */
const ONLY_KEY = 'arms';

let opened: UseStore | null = null;
function open(): UseStore {
  opened ??= createStore('shy-of-failure', 'tables');
  return opened;
}

/** All tables that are kept, the newest first. @throws where the browser refuses, with its reason */
export async function listTables(): Promise<readonly KeptTable[]> {
  await adoptOnlyTable();
  const names = (await keys(open())).filter((key) => typeof key === 'string' && key.startsWith(ABOUT));
  const found = await getMany<unknown>(names, open());
  return found.filter(isKeptTable).sort((a, b) => b.opened - a.opened);
}

/** What is said of a table; null where it is not kept. @throws where the browser refuses, with its reason */
export async function findTable(version: string): Promise<KeptTable | null> {
  const about = await get<unknown>(ABOUT + version, open());
  return isKeptTable(about) ? about : null;
}

/** The text of a table; null where it is not kept. @throws where the browser refuses, with its reason */
export async function loadText(version: string): Promise<string | null> {
  const text = await get<unknown>(TEXT + version, open());
  return typeof text === 'string' ? text : null;
}

/**
 * Keeps a table, all of it or nothing.
 *
 * @param replaces version that this one holds in full, and that goes in the same step; null for none
 * @throws where the browser refuses, with its reason
 */
export async function keepTable(about: KeptTable, text: string, replaces: string | null = null): Promise<void> {
  await open()('readwrite', (store) => {
    store.put(about, ABOUT + about.version);
    store.put(text, TEXT + about.version);
    if (replaces !== null && replaces !== about.version) {
      store.delete(ABOUT + replaces);
      store.delete(TEXT + replaces);
    }
    return promisifyRequest(store.transaction);
  });
}

/** @throws where the browser refuses, with its reason */
export async function deleteTable(version: string): Promise<void> {
  await open()('readwrite', (store) => {
    store.delete(ABOUT + version);
    store.delete(TEXT + version);
    return promisifyRequest(store.transaction);
  });
}

/**
 * Takes over a table that was kept when there could be only one, and gives it; null where there is none.
 * It goes from its old place only once it stands in its new one and is marked there, if it was in use: whoever finds the
 * old place empty then finds the mark.
 */
export async function adoptOnlyTable(): Promise<KeptTable | null> {
  const found = await get<unknown>(ONLY_KEY, open());
  if (!isRecord(found) || typeof found.text !== 'string') return null;
  const { identify } = await import('./version.ts');
  const { text, ...said } = found;
  const about = { ...said, ...(await identify(found.text)), opened: Date.now() };
  if (!isKeptTable(about)) return null;
  await setMany(
    [
      [ABOUT + about.version, about],
      [TEXT + about.version, text],
    ],
    open(),
  );
  if (localStorage.getItem(OLD_MARK) !== null) {
    if (localStorage.getItem(IN_USE) === null) localStorage.setItem(IN_USE, about.version);
    localStorage.removeItem(OLD_MARK);
  }
  await open()('readwrite', (store) => {
    store.delete(ONLY_KEY);
    return promisifyRequest(store.transaction);
  });
  return about;
}

/** Written out rather than with the schemas' library: every page reads it, and they stay small. */
function isKeptTable(found: unknown): found is KeptTable {
  return (
    isRecord(found) &&
    isVersion(found.version) &&
    typeof found.name === 'string' &&
    [found.studies, found.rows, found.bytes, found.opened].every((count) => Number.isFinite(count)) &&
    typeof found.demonstration === 'boolean' &&
    (found.reading === undefined || typeof found.reading === 'string')
  );
}

function isVersion(text: unknown): text is string {
  return typeof text === 'string' && /^(?:unhashed-)?[\da-f]{32,64}$/u.test(text);
}

function isRecord(found: unknown): found is Record<string, unknown> {
  return typeof found === 'object' && found !== null;
}
