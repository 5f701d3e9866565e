/**
 * State of a figure with a reader's own settings: which figure, settings and table, all from the address, and what a
 * worker made of them. An address that cites the site's table reads that one, whatever table of the reader's own is in
 * use; one that was made from an own table is drawn from no other.
 */
import { computed, signal } from '@preact/signals';
import { LISTED_FIGURES, listFigures } from '../../figures/catalogue.ts';
import type { Sweep, SweepProgress } from '../../model/checks/sweep.ts';
import { defaultSettings, type Settings } from '../../model/settings.ts';
import { citedVersionOf } from '../../ownTable/citedVersion.ts';
import { shownVersionOf } from '../../ownTable/shownVersion.ts';
import { ownVersionOf } from '../../ownTable/tableInUse.ts';
import { openCalculation } from '../analysis/calculation.ts';
import type { FigureSource } from '../analysis/figureSource.ts';
import { type Pin, readCited, writeCited } from './citedAddress.ts';

/** Addresses of the table in use and of the site's, which may be the same. */
export interface Tables {
  readonly inUse: string;
  readonly site: string;
}

export function createLiveFigure(tables: Tables) {
  const slug = signal<string>(LISTED_FIGURES[0].slug);
  const settings = signal<Settings>(defaultSettings);
  const pin = signal<Pin | null>(null);
  /** Address of the table that is read; null where it is one that this browser does not have in use. */
  const table = signal<string | null>(null);
  const source = signal<FigureSource | null>(null);
  const sweep = signal<Sweep | null>(null);
  const sweepProgress = signal<SweepProgress | null>(null);
  const notice = signal<string | null>(null);
  const problem = signal<string | null>(null);
  const isRead = signal(false);

  const needs = computed(() => LISTED_FIGURES.find((one) => one.slug === slug.value)?.needs);
  const isElsewhere = computed(() => isRead.value && table.value === null);
  const isOwn = computed(() => table.value !== null && ownVersionOf(table.value) !== null);
  /** True until there is something to show, or it is known why there is nothing. */
  const pending = computed(() => {
    if (problem.value !== null || isElsewhere.value) return false;
    if (source.value === null) return true;
    return (needs.value === 'checks' && !source.value.checked) || (needs.value === 'sweep' && sweep.value === null);
  });
  /** The chosen figure, or the one entry that says why there is none. */
  const catalogue = computed(() =>
    pending.value || source.value === null
      ? null
      : listFigures({ analysis: source.value.analysis, map: source.value.map, sweep: sweep.value }, slug.value),
  );

  const calculation = openCalculation();
  let isSwept = false;
  const fail = (reason: string) => {
    problem.value = reason;
  };
  const askSweep = (of: string) => {
    isSwept = true;
    calculation.ask(
      'sweep',
      { table: of, settings: settings.peek() },
      {
        progress: (step) => {
          sweepProgress.value = step;
        },
        take: (made) => {
          sweep.value = made;
        },
        fail,
      },
    );
  };
  /** Asks for what figures are made from; for the sweep only where the chosen figure shows it. */
  const ask = () => {
    problem.value = null;
    const of = table.peek();
    if (of === null) return;
    const take = (found: FigureSource) => {
      source.value = found;
    };
    calculation.ask('figures', { table: of, settings: settings.peek() }, { progress: take, take, fail });
    if (needs.peek() === 'sweep') askSweep(of);
  };
  const tableFor = (pinned: Pin | null): string | null => {
    if (!pinned) return tables.inUse;
    if (!pinned.own) return tables.site;
    return citedVersionOf(tables.inUse) === pinned.version ? tables.inUse : null;
  };
  /** Writes which table the settings are shown of into the address, the figure as it is. */
  const writePin = (pinned: Pin) => {
    pin.value = pinned;
    history.replaceState(null, '', `${location.pathname}${writeCited(settings.peek(), pinned)}#${slug.peek()}`);
  };
  const readSlug = (said: string | null) => {
    const wanted = slugIn(location.hash);
    const listed = LISTED_FIGURES.find((one) => one.slug === wanted);
    if (listed) slug.value = listed.slug;
    const chosen = LISTED_FIGURES.find((one) => one.slug === slug.peek())?.name;
    // Who is sent to a figure and loses its name on the way must not take another for it.
    const isLost = wanted === '' && pin.peek() !== null;
    const missing = isLost
      ? 'The address names no figure: its end, from # on, is missing'
      : `There is no figure “${wanted}”`;
    notice.value =
      listed || (wanted === '' && !isLost)
        ? said
        : [said, `${missing}; “${chosen}” is chosen instead.`].filter(Boolean).join(' ');
  };
  const connect = () => {
    const cited = slugIn(location.hash);
    const read = readCited(location.search, cited);
    settings.value = read.settings;
    pin.value = read.pin;
    table.value = tableFor(read.pin);
    isRead.value = true;
    readSlug(read.notice);
    // Who is sent this address must not take another table's figure for it.
    const own = isOwn.peek() ? citedVersionOf(tables.inUse) : null;
    if (own !== null) writePin({ version: own, own: true, found: null });
    ask();
    const choose = () => {
      const isCited = slugIn(location.hash) === cited;
      readSlug(isCited ? read.notice : read.lastingNotice);
      // What was found then is of the figure that was cited, and is told of it whenever it is chosen again.
      const pinned = pin.peek();
      const found = isCited ? (read.pin?.found ?? null) : null;
      if (pinned && pinned.found !== found) writePin({ ...pinned, found });
      const of = table.peek();
      // The sweep is asked for once, by the first figure that shows it.
      if (needs.peek() === 'sweep' && !isSwept && of !== null) askSweep(of);
    };
    addEventListener('hashchange', choose);
    return () => {
      removeEventListener('hashchange', choose);
      calculation.end();
      isSwept = false;
    };
  };
  const choose = (wanted: string) => {
    location.hash = wanted;
  };
  /** Draws from the site's table what was made from one that is not here: all of the page, its notice too, is of that then. */
  const drawFromSite = () => {
    writePin({ version: shownVersionOf(tables.site), own: false, found: null });
    location.reload();
  };
  return {
    slug,
    settings,
    pin,
    isOwn,
    isElsewhere,
    source,
    sweepProgress,
    notice,
    problem,
    pending,
    catalogue,
    retry: ask,
    connect,
    choose,
    drawFromSite,
  };
}

/** Slug behind the hash, without what a text puts behind an address, “…#strength.”; what stands there where it is none. */
export function slugIn(hash: string): string {
  const written = decodeHash(hash);
  const bare = written.replace(/[^a-z]+$/u, '');
  return LISTED_FIGURES.some(({ slug }) => slug === bare) ? bare : written;
}

/** What stands behind the hash; as it was written where that is no encoded text. */
export function decodeHash(hash: string): string {
  const written = hash.slice(1);
  try {
    return decodeURIComponent(written);
  } catch {
    return written;
  }
}

export type LiveFigureState = ReturnType<typeof createLiveFigure>;
