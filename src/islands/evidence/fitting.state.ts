/** State of the fit on the Evidence page: what a worker made of the settings, one fit at a time and the newest last. */
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Analysis } from '../../model/result.ts';
import type { Settings } from '../../model/settings.ts';
import { ownVersionOf } from '../../ownTable/tableInUse.ts';
import type { Vocabulary } from '../analysis/filterOptions.ts';
import { isSame } from './moves.ts';
import type { Fits } from './openFits.ts';

interface Fitted {
  /** Of the site's table, as the page was built. */
  readonly start: Analysis;
  readonly offered: Vocabulary;
  /** Address of the table that is read. */
  readonly table: string;
  readonly settings: ReadonlySignal<Settings>;
  readonly calculation: Fits;
}

export function createFitting({ start, offered, table, settings, calculation }: Fitted) {
  const isOwn = ownVersionOf(table) !== null;
  const analysis = signal<Analysis>(start);
  const vocabulary = signal<Vocabulary>(offered);
  /** True while the reader's own table is meant and what is at hand is the site's. */
  const awaitsOwn = signal(isOwn);
  const problem = signal<string | null>(null);
  /** True until the picture shows the settings as they stand, or it is known why it cannot. */
  const pending = computed(
    () => problem.value === null && (awaitsOwn.value || !isSame(analysis.value.settings, settings.value)),
  );
  /** True where what is at hand may be shown: of the table that is read, and not of settings that could not be fitted. */
  const isShown = computed(() => problem.value === null && !awaitsOwn.value);

  let isFitting = false;
  /** How long the last fit took, milliseconds. */
  let lastFit = 0;
  /** Fits the settings as they stand, unless that will be done after the fit that is being made. */
  const fit = () => {
    if (isFitting) return;
    isFitting = true;
    const asked = settings.peek();
    const since = performance.now();
    const finish = (reason: string | null) => {
      isFitting = false;
      lastFit = performance.now() - since;
      problem.value = reason;
      // While one fit was made the controls may have moved on; only the newest is fitted.
      if (!isSame(asked, settings.peek())) fit();
    };
    calculation.ask(
      'analyse',
      { table, settings: asked },
      {
        take: (made) => {
          // Of the same settings it is what is at hand, and nothing need be drawn anew.
          if (awaitsOwn.peek() || !isSame(made.settings, analysis.peek().settings)) analysis.value = made;
          awaitsOwn.value = false;
          finish(null);
        },
        fail: finish,
      },
    );
  };
  const retry = () => {
    problem.value = null;
    fit();
  };
  const connect = () => {
    isFitting = false;
    if (!isOwn) return;
    const asked = { table, settings: settings.peek() };
    calculation.ask('vocabulary', asked, {
      take: (found) => {
        vocabulary.value = found;
      },
      // The fit, which is asked for at the same time, says what is wrong with the table.
      fail: () => undefined,
    });
  };
  return { analysis, vocabulary, awaitsOwn, problem, pending, isShown, fit, retry, connect, lastFit: () => lastFit };
}

export type FittingState = ReturnType<typeof createFitting>;
