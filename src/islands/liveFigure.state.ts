/** State of a figure with a reader's own settings: which figure and settings, both from the address, and what a worker made of them. */
import { computed, signal } from '@preact/signals';
import { LISTED_FIGURES, listFigures } from '../figures/catalogue.ts';
import type { FileContext } from '../figures/figureFiles.ts';
import type { Sweep, SweepProgress } from '../model/checks/sweep.ts';
import { defaultSettings, type Settings } from '../model/settings.ts';
import type { WorkerReply, WorkerRequest } from './analysisWorker.ts';
import type { FigureSource } from './figureSource.ts';
import { addressOfTable } from './ownTable.ts';
import { readSettings } from './settingsAddress.ts';

export function createLiveFigure(shipped: string) {
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

  const connect = () => {
    const table = addressOfTable(shipped);
    const read = readSettings(location.search);
    settings.value = read.settings;
    const worker = new Worker(new URL('./analysisWorker.ts', import.meta.url), { type: 'module' });
    const ask = (kind: 'figures' | 'sweep') => {
      const request: WorkerRequest = { kind, id: 0, table, settings: settings.value };
      worker.postMessage(request);
    };
    worker.addEventListener('error', () => {
      problem.value = 'the calculation could not be started in this browser';
    });
    worker.addEventListener('message', ({ data }: MessageEvent<WorkerReply>) => {
      if (data.kind === 'figures') {
        const { kind: _kind, id: _id, ...found } = data;
        source.value = found;
      }
      if (data.kind === 'sweep progress') sweepProgress.value = data.progress;
      if (data.kind === 'sweep') sweep.value = data.sweep;
      if (data.kind === 'problem') problem.value = data.problem;
    });
    ask('figures');
    let isSwept = false;
    const follow = () => {
      const wanted = decodeURIComponent(location.hash.slice(1));
      const isListed = LISTED_FIGURES.some((one) => one.slug === wanted);
      if (isListed) slug.value = wanted;
      notice.value =
        isListed || wanted === ''
          ? read.notice
          : `There is no figure “${wanted}”; it is to be one of those in the list.`;
      // The sweep is asked for once, by the first figure that shows it.
      if (needs.value === 'sweep' && !isSwept) {
        isSwept = true;
        ask('sweep');
      }
    };
    follow();
    addEventListener('hashchange', follow);
    return () => {
      removeEventListener('hashchange', follow);
      worker.terminate();
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
  return { slug, settings, source, sweepProgress, notice, problem, pending, catalogue, connect, choose, contextOf };
}

export type LiveFigureState = ReturnType<typeof createLiveFigure>;
