/** State of a figure with a reader's own settings: which figure and settings, both from the address, and what a worker made of them. */
import { computed, signal } from '@preact/signals';
import { LISTED_FIGURES, listFigures } from '../../figures/catalogue.ts';
import type { FileContext } from '../../figures/figureFiles.ts';
import type { Sweep, SweepProgress } from '../../model/checks/sweep.ts';
import { defaultSettings, type Settings } from '../../model/settings.ts';
import { openCalculation } from '../analysis/calculation.ts';
import type { FigureSource } from '../analysis/figureSource.ts';
import { readSettings } from '../analysis/settingsAddress.ts';

/** @param table address of the table that is read */
export function createLiveFigure(table: string) {
  const slug = signal<string>(LISTED_FIGURES[0].slug);
  const settings = signal<Settings>(defaultSettings);
  const source = signal<FigureSource | null>(null);
  const sweep = signal<Sweep | null>(null);
  const sweepProgress = signal<SweepProgress | null>(null);
  const notice = signal<string | null>(null);
  const problem = signal<string | null>(null);

  const needs = computed(() => LISTED_FIGURES.find((one) => one.slug === slug.value)?.needs);
  /** True until there is something to show, or it is known why there is nothing. */
  const pending = computed(() => {
    if (problem.value !== null) return false;
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
  const askSweep = () => {
    isSwept = true;
    const asked = { table, settings: settings.peek() };
    calculation.ask('sweep', asked, {
      progress: (step) => {
        sweepProgress.value = step;
      },
      take: (made) => {
        sweep.value = made;
      },
      fail,
    });
  };
  /** Asks for what figures are made from; for the sweep only where the chosen figure shows it. */
  const ask = () => {
    problem.value = null;
    const take = (found: FigureSource) => {
      source.value = found;
    };
    calculation.ask('figures', { table, settings: settings.peek() }, { progress: take, take, fail });
    if (needs.peek() === 'sweep') askSweep();
  };
  const connect = () => {
    const read = readSettings(location.search);
    settings.value = read.settings;
    const follow = () => {
      const wanted = decodeHash(location.hash);
      const isListed = LISTED_FIGURES.some((one) => one.slug === wanted);
      if (isListed) slug.value = wanted;
      notice.value =
        isListed || wanted === '' ? read.notice : `There is no figure “${wanted}”; choose one from the list.`;
    };
    const choose = () => {
      follow();
      // The sweep is asked for once, by the first figure that shows it.
      if (needs.peek() === 'sweep' && !isSwept) askSweep();
    };
    follow();
    ask();
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
  /** What files say of the data; the address is that of the page as it stands. */
  const contextOf = ({ dataVersion, demonstration }: FigureSource): FileContext => ({
    dataVersion,
    demonstration,
    settings: settings.value,
    address: location.href,
  });
  return {
    slug,
    settings,
    source,
    sweepProgress,
    notice,
    problem,
    pending,
    catalogue,
    retry: ask,
    connect,
    choose,
    contextOf,
  };
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
