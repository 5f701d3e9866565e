/**
 * Fits of other settings than those shown: what the last move left, and what is pinned. One that was made already is
 * taken from what is remembered; else the page's worker makes it, after what it is doing.
 */
import { effect, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { Analysis } from '../../model/result.ts';
import type { Settings } from '../../model/settings.ts';
import type { Fits } from './openFits.ts';

export interface OtherFit {
  readonly settings: Settings;
  /** null while it is made, and where it could not be. */
  readonly analysis: Analysis | null;
  /** Why it could not be made; null where it may be. */
  readonly problem: string | null;
}

/** Fits that are remembered: as many as a reader goes to and fro between. */
const MOST_REMEMBERED = 12;

/** @param table address of the table that is read */
export function createOtherFits(table: string, calculation: Fits) {
  const made = new Map<string, Analysis>();

  const remember = (analysis: Analysis) => {
    const name = JSON.stringify(analysis.settings);
    made.delete(name);
    made.set(name, analysis);
    const [oldest] = made.keys();
    if (made.size > MOST_REMEMBERED && oldest !== undefined) made.delete(oldest);
  };
  /** Keeps `found` at the fit of what is wanted; gives what ends that. */
  const follow = (wanted: ReadonlySignal<Settings | null>, found: Signal<OtherFit | null>) => {
    let cancel = () => {};
    const stop = effect(() => {
      const settings = wanted.value;
      cancel();
      cancel = () => {};
      const known = settings && made.get(JSON.stringify(settings));
      found.value = settings && { settings, analysis: known ?? null, problem: null };
      if (!settings || known) return;
      cancel = calculation.ask(
        'analyse',
        { table, settings },
        {
          take: (analysis) => {
            remember(analysis);
            found.value = { settings, analysis, problem: null };
          },
          fail: (problem) => {
            found.value = { settings, analysis: null, problem };
          },
        },
      );
    });
    return () => {
      stop();
      cancel();
    };
  };
  return { remember, follow, none: () => signal<OtherFit | null>(null) };
}
