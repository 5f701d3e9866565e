/**
 * State of the Evidence page: settings, and what is made of them. One worker answers each move of a
 * control with a new fit; another does the slower checks, once the controls have rested.
 */
import { effect, signal } from '@preact/signals';
import type { Analysis } from '../../model/result.ts';
import { defaultSettings, type Settings } from '../../model/settings.ts';
import { saveFile } from '../../ui/saveFile.ts';
import type { Vocabulary } from '../analysis/filterOptions.ts';
import { createAddress } from './address.state.ts';
import { createChecks } from './checks.state.ts';
import { createComparison } from './comparison.state.ts';
import type { Change } from './controlList.ts';
import { createFitting } from './fitting.state.ts';
import { createGuide } from './guide.state.ts';
import { createMoves } from './moves.state.ts';
import { openFits } from './openFits.ts';

/** Milliseconds without a move after which the checks are made and the address gets an entry. */
const REST = 400;
/** A large table waits longer, by this multiple of its last fit, so that checks do not slow the next move. */
const REST_IN_FITS = 4;

/** @param table address of the table that is read */
export function createEvidence(start: Analysis, table: string, offered: Vocabulary) {
  const settings = signal<Settings>(start.settings);
  const calculation = openFits();
  const fitting = createFitting({ start, offered, table, settings, calculation });
  const moving = createMoves(table, settings);
  const comparison = createComparison({ table, settings, fitting, moves: moving.moves, calculation });
  const address = createAddress({ settings, ...comparison }, moving.arrive);
  const guide = createGuide(table, settings, fitting, moving.rest);
  const checking = createChecks(table, settings);
  /** Why the last file could not be made. */
  const fileProblem = signal<string | null>(null);
  /** True while a slider is held: however long it stands still, its move goes on. */
  const isHeld = signal(false);

  const change = (by: Change) => {
    settings.value = by(settings.value);
  };
  const hold = (now: boolean) => {
    isHeld.value = now;
  };
  const reset = () => {
    settings.value = defaultSettings;
    address.notice.value = null;
  };
  /** Compares what follows with the settings as they stand, or with nothing. */
  const pin = (isWanted: boolean) => {
    comparison.pinned.value = isWanted ? settings.value : null;
    address.write();
  };
  const showNewStudy = (isWanted: boolean) => {
    comparison.showsNewStudy.value = isWanted;
    address.write();
  };
  /** @param ending of the file that is wanted */
  const download = (ending: string) => {
    fileProblem.value = null;
    const asked = { table, settings: settings.value };
    calculation.ask('take home', asked, {
      take: (files) => {
        const file = files.find(({ name }) => name.endsWith(ending));
        if (file) saveFile(file);
      },
      fail: (reason) => {
        fileProblem.value = reason;
      },
    });
  };
  const connect = () => {
    fitting.connect();
    const stopReading = address.connect();
    const stopGuiding = guide.connect();
    let timer: ReturnType<typeof setTimeout> | undefined;
    const rest = () => {
      moving.rest();
      checking.check();
      address.write();
    };
    const wait = () => {
      clearTimeout(timer);
      if (!isHeld.peek()) timer = setTimeout(rest, Math.max(REST, REST_IN_FITS * fitting.lastFit()));
    };
    const stops = [
      effect(() => {
        moving.follow(settings.value);
        checking.giveUp();
        fitting.fit();
        wait();
      }),
      effect(() => {
        if (!isHeld.value && moving.moves.peek().isGoing) wait();
      }),
    ];
    const stopComparing = comparison.connect();
    return () => {
      clearTimeout(timer);
      // What was moved last is kept too, by whoever reads the address next.
      moving.rest();
      address.write();
      for (const stop of stops) stop();
      stopComparing();
      stopReading();
      stopGuiding();
      calculation.end();
      checking.end();
    };
  };
  return {
    start,
    settings,
    fitting,
    moving,
    comparison,
    address,
    guide,
    checking,
    fileProblem,
    change,
    hold,
    reset,
    pin,
    showNewStudy,
    download,
    connect,
  };
}

export type EvidenceState = ReturnType<typeof createEvidence>;
