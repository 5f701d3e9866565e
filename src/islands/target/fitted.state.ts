/**
 * What the calculator's answer is read from: the analysis of the page as built, or one that a worker made
 * of a reader's own table, of another share to keep or of another confidence.
 */
import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { PracticeAnalysis } from '../../model/full.ts';
import { settingsSchema } from '../../model/settings.ts';
import { ownVersionOf } from '../../ownTable/tableInUse.ts';
import { openCalculation } from '../analysis/calculation.ts';
import type { SharedTarget } from '../analysis/targetsByShare.ts';
import type { Choices } from './situationAddress.ts';

/** As the page was built, from the site's table. */
export interface Built {
  readonly analysis: PracticeAnalysis;
  /** Targets for common shares. */
  readonly shares: readonly SharedTarget[];
}

/** @param table address of the table that is read */
export function createFitted(built: Built, table: string, choices: ReadonlySignal<Choices>) {
  const isOwn = ownVersionOf(table) !== null;
  /** True while the reader's own table is meant and what is at hand is the site's. */
  const awaitsOwn = signal(isOwn);
  const analysis = signal<PracticeAnalysis>(built.analysis);
  const pending = signal(false);
  const problem = signal<string | null>(null);
  /** null while the reader's own table is read. */
  const shares = signal<readonly SharedTarget[] | null>(isOwn ? null : built.shares);
  const sharesProblem = signal<string | null>(null);
  /** True where the answer at hand is of the table that is read, and of the share and confidence that are asked for. */
  const isShown = computed(() => problem.value === null && !awaitsOwn.value);
  /** Raised to have everything asked for again. */
  const tries = signal(0);
  const calculation = openCalculation();
  let cancel = () => {};

  const ask = (keep: number, confidence: number) => {
    cancel();
    const settings = settingsSchema.parse({
      ...built.analysis.settings,
      keptShare: keep / 100,
      confidence: confidence / 100,
    });
    problem.value = null;
    const isNew = isOwn || JSON.stringify(settings) !== JSON.stringify(built.analysis.settings);
    pending.value = isNew;
    if (!isNew) {
      analysis.value = built.analysis;
      return;
    }
    cancel = calculation.ask(
      'practice',
      { table, settings },
      {
        take: (made) => {
          pending.value = false;
          analysis.value = made;
          awaitsOwn.value = false;
        },
        fail: (reason) => {
          pending.value = false;
          problem.value = reason;
        },
      },
    );
  };
  const askShares = () => {
    sharesProblem.value = null;
    const asked = { table, settings: built.analysis.settings };
    calculation.ask('shares', asked, {
      take: (made) => {
        shares.value = made;
      },
      fail: (reason) => {
        sharesProblem.value = reason;
      },
    });
  };
  const connect = () => {
    // Each by itself, so that a move of any other control asks for nothing.
    const keep = computed(() => choices.value.keep);
    const confidence = computed(() => choices.value.confidence);
    const stop = effect(() => {
      void tries.value;
      ask(keep.value, confidence.value);
    });
    const stopShares = effect(() => {
      void tries.value;
      if (isOwn && shares.peek() === null) askShares();
    });
    return () => {
      stop();
      stopShares();
      calculation.end();
    };
  };
  const retry = () => {
    tries.value++;
  };
  return { analysis, shares, sharesProblem, awaitsOwn, pending, problem, isShown, retry, connect };
}
