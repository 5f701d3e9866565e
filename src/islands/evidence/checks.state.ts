/**
 * State of what takes longer than a fit on the Evidence page: the checks of the settings and the sweep.
 * A worker of their own makes them, started when there is something to do.
 */
import { type ReadonlySignal, signal } from '@preact/signals';
import type { Sweep, SweepProgress } from '../../model/checks/sweep.ts';
import type { BandsChecks } from '../../model/full.ts';
import type { Settings } from '../../model/settings.ts';
import { openFits } from './openFits.ts';

/** @param table address of the table that is read */
export function createChecks(table: string, settings: ReadonlySignal<Settings>) {
  const checks = signal<BandsChecks | null>(null);
  /** Why there are no checks; null while there may be some. */
  const checkProblem = signal<string | null>(null);
  const sweep = signal<Sweep | null>(null);
  const sweepProgress = signal<SweepProgress | null>(null);
  const sweepProblem = signal<string | null>(null);
  const calculation = openFits();
  let isChecking = false;
  let cancelSweep = () => {};

  const check = () => {
    checks.value = null;
    checkProblem.value = null;
    sweep.value = null;
    isChecking = true;
    const asked = { table, settings: settings.peek() };
    calculation.ask('check', asked, {
      take: (made) => {
        isChecking = false;
        checks.value = made;
      },
      fail: (reason) => {
        isChecking = false;
        checkProblem.value = reason;
      },
    });
  };
  const startSweep = () => {
    stopSweep();
    sweep.value = null;
    sweepProblem.value = null;
    sweepProgress.value = { done: 0, total: 1 };
    const asked = { table, settings: settings.peek() };
    cancelSweep = calculation.ask('sweep', asked, {
      progress: (step) => {
        sweepProgress.value = step;
      },
      take: (made) => {
        sweepProgress.value = null;
        sweep.value = made;
      },
      fail: (reason) => {
        sweepProgress.value = null;
        sweepProblem.value = reason;
      },
    });
  };
  const stopSweep = () => {
    cancelSweep();
    sweepProgress.value = null;
  };
  const end = () => {
    isChecking = false;
    calculation.end();
  };
  /** Ends what is worked out for settings that have changed, so that it does not slow the next fit. */
  const giveUp = () => {
    stopSweep();
    sweepProblem.value = null;
    if (isChecking) end();
  };
  return { checks, checkProblem, sweep, sweepProgress, sweepProblem, check, startSweep, stopSweep, giveUp, end };
}
