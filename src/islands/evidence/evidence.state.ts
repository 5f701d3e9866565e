/**
 * State of the Evidence page: settings, kept in the address, and what workers made of them. One answers
 * each move of a control with a new fit; another does the slower checks, once the controls have rested.
 */
import { computed, effect, signal } from '@preact/signals';
import type { Analysis } from '../../model/result.ts';
import { defaultSettings, type Settings } from '../../model/settings.ts';
import { addressOfTable } from '../../ownTable/ownTable.ts';
import { copyText } from '../../ui/copyText.ts';
import { saveFile } from '../../ui/saveFile.ts';
import type { WorkerReply } from '../analysis/analysisWorker.ts';
import { type Calculation, startCalculation } from '../analysis/calculation.ts';
import type { Vocabulary } from '../analysis/filterOptions.ts';
import { readSettings, writeSettings } from '../analysis/settingsAddress.ts';
import { createChecks } from './checks.state.ts';
import type { Change } from './controlList.ts';
import { GUIDE_STEPS } from './guideSteps.ts';

/** Milliseconds without a move after which the checks are made and the address gets an entry. */
const REST = 400;
/** A large table waits longer, by this multiple of its last fit, so that checks do not slow the next move. */
const REST_IN_FITS = 4;

/** The guided sequence: which step, and the settings and analysis that it started from. */
interface Guide {
  readonly index: number;
  readonly settings: Settings;
  readonly analysis: Analysis;
}

export function createEvidence(start: Analysis, shipped: string, offered: Vocabulary) {
  /** Address of the table that is read: the site's, or the reader's own once the page has looked. */
  let table = shipped;
  /** True while the reader's own table is wanted and the site's is still shown. */
  const foreign = signal(false);
  const vocabulary = signal<Vocabulary>(offered);
  const settings = signal<Settings>(start.settings);
  const analysis = signal<Analysis>(start);
  const problem = signal<string | null>(null);
  /** What of the address was not taken. */
  const notice = signal<string | null>(null);
  /** What became of the wish to copy the link. */
  const copied = signal('');
  /** True until the picture shows the settings as they stand, or it is known why it cannot. */
  const pending = computed(
    () => problem.value === null && (foreign.value || !isSame(analysis.value.settings, settings.value)),
  );
  const guide = signal<Guide | null>(null);
  const { startSweep, ...checking } = createChecks(() => table);

  const change = (by: Change) => {
    settings.value = by(settings.value);
  };
  const reset = () => {
    settings.value = defaultSettings;
    notice.value = null;
  };
  const goToStep = (index: number) => {
    const step = GUIDE_STEPS[index];
    if (!step) throw new Error(`invalid step; there are ${GUIDE_STEPS.length}: ${index}`);
    const from = guide.value ?? { settings: settings.value, analysis: analysis.value };
    guide.value = { ...from, index };
    settings.value = step.apply(from.settings, from.analysis);
  };
  const endGuide = () => {
    if (guide.value) settings.value = guide.value.settings;
    guide.value = null;
  };
  const copyLink = async () => {
    copied.value = '';
    const link = `${location.origin}${location.pathname}${writeSettings(settings.value)}${location.hash}`;
    copied.value = (await copyText(link))
      ? 'The link is copied.'
      : 'This browser does not let a page copy; take the link from the address bar.';
  };

  let fitter: Calculation | null = null;
  let lastId = 0;
  /** Endings of the files that are being made for download, by request. */
  const downloads = new Map<number, string>();
  const download = (ending: string) => {
    downloads.set(++lastId, ending);
    fitter?.ask({ kind: 'take home', id: lastId, table, settings: settings.value });
  };
  const takeDownload = (reply: WorkerReply, ending: string) => {
    downloads.delete(reply.id);
    if (reply.kind === 'problem') problem.value = reply.problem;
    const file = reply.kind === 'files' && reply.files.find(({ name }) => name.endsWith(ending));
    if (file) saveFile(file);
  };

  const connect = () => {
    table = addressOfTable(shipped);
    /** Settings that are being fitted, and the request for it; null while none are. */
    let fitting: { readonly id: number; readonly settings: Settings; readonly since: number } | null = null;
    /** How long the last fit took, milliseconds. */
    let lastFit = 0;
    const ask = () => {
      fitting = { id: ++lastId, settings: settings.value, since: performance.now() };
      calculation.ask({ kind: 'analyse', id: fitting.id, table, settings: fitting.settings });
    };
    const take = (reply: WorkerReply) => {
      const ending = downloads.get(reply.id);
      if (ending !== undefined) takeDownload(reply, ending);
      if (reply.kind === 'vocabulary') vocabulary.value = reply.vocabulary;
      if (fitting === null || reply.id !== fitting.id) return;
      const { settings: fitted, since } = fitting;
      fitting = null;
      lastFit = performance.now() - since;
      problem.value = reply.kind === 'problem' ? reply.problem : null;
      if (reply.kind === 'analysis') {
        analysis.value = reply.analysis;
        foreign.value = false;
      }
      // While one fit was made the controls may have moved on; only the newest is fitted.
      if (!isSame(fitted, settings.value)) ask();
    };
    const calculation = startCalculation(take, (reason) => {
      problem.value = reason;
    });
    fitter = calculation;
    if (table !== shipped) {
      foreign.value = true;
      calculation.ask({ kind: 'vocabulary', id: ++lastId, table, settings: settings.value });
    }

    /** Settings as the address gave them, until they are changed. */
    let addressed: Settings | null = null;
    const readAddress = () => {
      const read = readSettings(location.search);
      notice.value = read.notice;
      addressed = read.settings;
      settings.value = read.settings;
    };
    const writeAddress = (now: Settings) => {
      const address = `${location.pathname}${writeSettings(now)}${location.hash}`;
      if (address === `${location.pathname}${location.search}${location.hash}`) return;
      // What was only read is put right in its place: an entry more would lead “back” to itself.
      if (now === addressed) history.replaceState(null, '', address);
      else history.pushState(null, '', address);
      addressed = null;
    };
    readAddress();
    let rest: ReturnType<typeof setTimeout> | undefined;
    const stop = effect(() => {
      const now = settings.value;
      checking.giveUp();
      if (fitting === null) ask();
      clearTimeout(rest);
      rest = setTimeout(
        () => {
          checking.check(now);
          writeAddress(now);
        },
        Math.max(REST, REST_IN_FITS * lastFit),
      );
    });
    addEventListener('popstate', readAddress);
    return () => {
      clearTimeout(rest);
      stop();
      removeEventListener('popstate', readAddress);
      calculation.end();
      fitter = null;
      downloads.clear();
      checking.end();
    };
  };
  return {
    ...{ settings, analysis, problem, notice, pending, foreign, vocabulary, change, reset, copied, copyLink },
    ...{ guide, goToStep, endGuide, download, connect },
    ...checking,
    startSweep: () => startSweep(settings.value),
  };
}

export type EvidenceState = ReturnType<typeof createEvidence>;

function isSame(a: Settings, b: Settings): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b);
}
