/**
 * State of the Evidence page: settings, kept in the address, and what two workers made of them. One
 * worker answers each move of a control with a new fit; the other does the slower checks, once the
 * controls have rested, and the sweep.
 */
import { computed, effect, signal } from '@preact/signals';
import type { Sweep, SweepProgress } from '../model/checks/sweep.ts';
import type { BandsChecks } from '../model/full.ts';
import type { Analysis } from '../model/result.ts';
import { defaultSettings, type Settings } from '../model/settings.ts';
import type { WorkerReply, WorkerRequest } from './analysisWorker.ts';
import type { Change } from './evidence.controls.ts';
import { GUIDE_STEPS } from './evidence.guide.ts';
import type { Vocabulary } from './filterOptions.ts';
import { addressOfTable } from './ownTable.ts';
import { saveFile } from './saveFile.ts';
import { readSettings, writeSettings } from './settingsAddress.ts';

/** Milliseconds without a move after which the checks are made and the address gets an entry. */
const REST = 400;
/** A large table waits longer, by this multiple of its last fit, so that checks do not slow the next move. */
const REST_IN_FITS = 4;

export function createEvidence(start: Analysis, shipped: string, offered: Vocabulary) {
  /** Address of the table that is read: the site's, or the reader's own once the page has looked. */
  let table = shipped;
  /** True while the reader's own table is wanted and the site's is still shown. */
  const foreign = signal(false);
  const vocabulary = signal<Vocabulary>(offered);
  const settings = signal<Settings>(start.settings);
  const analysis = signal<Analysis>(start);
  const checks = signal<BandsChecks | null>(null);
  const sweep = signal<Sweep | null>(null);
  const sweepProgress = signal<SweepProgress | null>(null);
  const problem = signal<string | null>(null);
  const notice = signal<string | null>(null);
  /** True until the picture shows the settings as they stand. */
  const pending = computed(
    () =>
      foreign.value || (analysis.value.settings !== settings.value && !isSame(analysis.value.settings, settings.value)),
  );
  const change = (by: Change) => {
    settings.value = by(settings.value);
  };
  const reset = () => {
    settings.value = defaultSettings;
    notice.value = null;
  };
  /** The guided sequence: which step, and the analysis it started from; null while it is closed. */
  const guide = signal<{ readonly index: number; readonly start: Analysis } | null>(null);
  const goToStep = (index: number) => {
    const begun = guide.value?.start ?? analysis.value;
    const step = GUIDE_STEPS[index];
    if (!step) throw new Error(`invalid step; there are ${GUIDE_STEPS.length}: ${index}`);
    guide.value = { index, start: begun };
    settings.value = step.apply(begun.settings, begun);
  };
  const endGuide = () => {
    if (guide.value) settings.value = guide.value.start.settings;
    guide.value = null;
  };
  let fitter: Worker | null = null;
  let checker: Worker | null = null;
  /** Ending of the file that is being made for download. */
  let wanted: string | null = null;
  const download = (ending: string) => {
    wanted = ending;
    if (fitter) post(fitter, { kind: 'take home', id: 0, table, settings: settings.value });
  };
  let sweepId = 0;
  const startSweep = () => {
    sweep.value = null;
    sweepProgress.value = { done: 0, total: 1 };
    post(openChecker(), { kind: 'sweep', id: ++sweepId, table, settings: settings.value });
  };
  const stopSweep = () => {
    sweepId++;
    sweepProgress.value = null;
    if (checker) post(checker, { kind: 'stop sweep' });
  };

  let checkId = 0;
  /** True while the checks of some settings are being made. */
  let checking = false;
  const fail = () => {
    problem.value = 'the calculation could not be started in this browser';
  };
  /** The worker for the slower work, started when there is some. */
  const openChecker = (): Worker => {
    if (checker) return checker;
    const worker = startWorker(fail);
    checker = worker;
    worker.addEventListener('message', ({ data }: MessageEvent<WorkerReply>) => {
      if (data.kind === 'checks' && data.id === checkId) {
        checking = false;
        checks.value = data.checks;
      }
      if (data.kind === 'sweep progress' && data.id === sweepId) sweepProgress.value = data.progress;
      if (data.kind === 'sweep' && data.id === sweepId) {
        sweepProgress.value = null;
        sweep.value = data.sweep;
      }
      if (data.kind === 'problem') problem.value = data.problem;
    });
    return worker;
  };
  /** Ends what is worked out for settings that have changed, so that it does not slow the next fit. */
  const giveUp = () => {
    if (!checking) return;
    checking = false;
    checker?.terminate();
    checker = null;
  };
  const check = (now: Settings) => {
    checks.value = null;
    sweep.value = null;
    checking = true;
    post(openChecker(), { kind: 'check', id: ++checkId, table, settings: now });
  };

  const connect = () => {
    table = addressOfTable(shipped);
    const worker = startWorker(fail);
    fitter = worker;
    if (table !== shipped) {
      foreign.value = true;
      post(worker, { kind: 'vocabulary', id: 0, table, settings: settings.value });
    }
    let busy = false;
    let asked = 0;
    let lastFit = 0;
    const take = () => {
      const read = readSettings(location.search);
      notice.value = read.notice;
      settings.value = read.settings;
    };
    take();
    const ask = () => {
      busy = true;
      asked = performance.now();
      post(worker, { kind: 'analyse', id: 0, table, settings: settings.value });
    };
    worker.addEventListener('message', ({ data }: MessageEvent<WorkerReply>) => {
      if (data.kind === 'files') {
        const file = data.files.find(({ name }) => wanted !== null && name.endsWith(wanted));
        if (file) saveFile(file);
        return;
      }
      if (data.kind === 'vocabulary') {
        vocabulary.value = data.vocabulary;
        return;
      }
      busy = false;
      lastFit = performance.now() - asked;
      problem.value = data.kind === 'problem' ? data.problem : null;
      if (data.kind === 'analysis') {
        analysis.value = data.analysis;
        foreign.value = false;
      }
      // While one fit was made the controls may have moved on; only the newest is fitted.
      if (data.kind === 'analysis' && !isSame(data.analysis.settings, settings.value)) ask();
    });
    let rest: ReturnType<typeof setTimeout> | undefined;
    const stop = effect(() => {
      const now = settings.value;
      stopSweep();
      giveUp();
      if (!busy) ask();
      clearTimeout(rest);
      rest = setTimeout(
        () => {
          check(now);
          const address = `${location.pathname}${writeSettings(now)}${location.hash}`;
          if (address !== `${location.pathname}${location.search}${location.hash}`)
            history.pushState(null, '', address);
        },
        Math.max(REST, REST_IN_FITS * lastFit),
      );
    });
    addEventListener('popstate', take);
    return () => {
      clearTimeout(rest);
      stop();
      removeEventListener('popstate', take);
      worker.terminate();
      fitter = null;
      checker?.terminate();
      checker = null;
    };
  };
  return {
    settings,
    analysis,
    checks,
    sweep,
    sweepProgress,
    problem,
    notice,
    pending,
    foreign,
    vocabulary,
    change,
    reset,
    guide,
    goToStep,
    endGuide,
    download,
    startSweep,
    stopSweep,
    connect,
  };
}

export type EvidenceState = ReturnType<typeof createEvidence>;

/** @param fail what to do where the worker cannot run at all */
function startWorker(fail: () => void): Worker {
  const worker = new Worker(new URL('./analysisWorker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('error', fail);
  return worker;
}

function post(worker: Worker, request: WorkerRequest): void {
  worker.postMessage(request);
}

function isSame(a: Settings, b: Settings): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
