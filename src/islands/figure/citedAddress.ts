/**
 * The address by which a figure with a reader's settings is cited: the settings in one order whoever chose them how, the
 * version of the table, and what was found then.
 *
 *     ?v=2&curve=log&split=50&table=ba6d2a5e&then=l0.4_0.2_1.1*n64_15#growth-light
 *
 * `table=own-…` is no citation: the page puts it into its address while it shows a reader's own table, so that who is
 * sent that address is not shown another figure in its place.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { type Headline, isHeadlineOf, readHeadline, writeHeadline } from '../../figures/citing/headline.ts';
import { FILTER_KEYS } from '../../model/filters.ts';
import { ADJUSTMENTS, type Settings } from '../../model/settings.ts';
import { type CitedTable, OWN, readCitedTable, TABLE } from '../../ownTable/citedTable.ts';
import { readSettings, VERSION, writeSettings } from '../analysis/settingsAddress.ts';

/**
 * Characters of a settings' mark, hexadecimal: 40 bits. Of 1,000 different settings two are alike once in two million
 * times; what is marked alike then is still told apart by its address, which every file and reference holds in full.
 */
const MARK_LENGTH = 10;

const FOUND = 'then';

export interface Pin extends CitedTable {
  /** What was found; null where the address does not say, or not so that it could be read. */
  readonly found: Headline | null;
}

/** The same settings in one order: lists of words sorted, each once. */
export function orderSettings(settings: Settings): Settings {
  const sort = <Word extends string>(words: readonly Word[]) => [...new Set(words)].sort();
  const lists = [...FILTER_KEYS, 'withoutStudies' as const].map((key) => [key, sort(settings.include[key])]);
  return {
    ...settings,
    adjust: ADJUSTMENTS.filter((one) => settings.adjust.includes(one)),
    include: { ...settings.include, ...Object.fromEntries(lists) },
  };
}

/** What tells settings from others in the name of a file; null for the site's own. */
export function markOf(settings: Settings): string | null {
  const query = writeSettings(orderSettings(settings));
  return query === '' ? null : bytesToHex(sha256(utf8ToBytes(query))).slice(0, MARK_LENGTH);
}

/** Query of the address that cites settings, of the table of that version. */
export function writeCited(settings: Settings, { version, own, found }: Pin): string {
  const query = new URLSearchParams(writeSettings(orderSettings(settings)));
  // The version of the address stands first, also where all settings are the defaults.
  const parts = query.size > 0 ? [...query] : [['v', VERSION]];
  const cited = new URLSearchParams([...parts, [TABLE, (own ? OWN : '') + version]]);
  if (found) cited.set(FOUND, writeHeadline(found));
  return `?${cited}`;
}

/** What is no longer as the address says: the table, or what is found in that same table; null where all is. */
export function changedSince({ version, found }: Pin, dataVersion: string, now: Headline): 'table' | 'finding' | null {
  if (version !== dataVersion) return 'table';
  // Older addresses hold the same counts without the letter of their figure.
  return found === null || writeHeadline({ ...found, counts: now.counts }) === writeHeadline(now) ? null : 'finding';
}

export interface ReadCited {
  readonly settings: Settings;
  readonly pin: Pin | null;
  /** What could not be taken, for the reader; null where everything was. */
  readonly notice: string | null;
  /** So much of it as is true whichever figure is chosen then. */
  readonly lastingNotice: string | null;
}

/**
 * Settings and pin of an address; never throws, whatever it holds.
 *
 * @param slug of the figure that the address names; empty where it names none
 */
export function readCited(search: string, slug: string): ReadCited {
  const query = new URLSearchParams(search);
  const [table, written] = [query.get(TABLE), query.get(FOUND)];
  const cited = readCitedTable(query);
  query.delete(TABLE);
  query.delete(FOUND);
  const read = readSettings(query.size > 0 ? `?${query}` : '');
  const said = written === null ? null : readHeadline(written);
  const found = said && isHeadlineOf(slug, said) ? said : null;
  const join = (...parts: readonly (string | null)[]) => parts.filter((one) => one !== null).join(' ') || null;
  const lastingNotice = join(
    read.notice,
    table !== null && !cited
      ? 'The address names a version of the table that is none; the figure is of the table as it is.'
      : null,
  );
  const ofFound =
    written !== null && (!said || !cited)
      ? 'What was found when this was cited could not be read from the address.'
      : said && !found && slug !== ''
        ? 'What the address says was found is of another figure than the one that it names, and is not told.'
        : null;
  return {
    settings: read.settings,
    pin: cited && { ...cited, found },
    notice: join(lastingNotice, ofFound),
    lastingNotice,
  };
}
