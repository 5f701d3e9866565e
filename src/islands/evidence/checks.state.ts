/**
 * State of what takes longer than a fit on the Evidence page: the checks of the settings and the sweep.
 * A worker of their own makes them, started when there is something to do.
 */
import { signal } from '@preact/signals';
import type { Sweep, SweepProgress } from '../../model/checks/sweep.ts';
import type { BandsChecks } from '../../model/full.ts';
import type { Settings } from '../../model/settings.ts';
import type { WorkerReply } from '../analysis/analysisWorker.ts';
import { type Calculation, startCalculation } from '../analysis/calculation.ts';

/** @param tableNow address of the table that is read */
export function createChecks(tableNow: () => string) {
  const checks = signal<BandsChecks | null>(null);
  /** Why there are no checks; null while there may be some. */
  const checkProblem = signal<string | null>(null);
  const sweep = signal<Sweep | null>(null);
  const sweepProgress = signal<SweepProgress | null>(null);
  const sweepProblem = signal<string | null>(null);

  let calculation: Calculation | null = null;
  /** Numbers of the requests whose replies are wanted; 0 for none. */
  let checkId = 0;
  let sweepId = 0;
  let lastId = 0;
  let isChecking = false;

  const take = (reply: WorkerReply) => {
    if (reply.id === checkId) {
      isChecking = false;
      if (reply.kind === 'checks') checks.value = reply.checks;
      if (reply.kind === 'problem') checkProblem.value = reply.problem;
    }
    if (reply.id !== sweepId) return;
    if (reply.kind === 'sweep progress') sweepProgress.value = reply.progress;
    if (reply.kind === 'sweep') {
      sweepProgress.value = null;
      sweep.value = reply.sweep;
    }
    if (reply.kind === 'problem') {
      sweepProgress.value = null;
      sweepProblem.value = reply.problem;
    }
  };
  const fail = (reason: string) => {
    isChecking = false;
    checkProblem.value = reason;
    if (sweepProgress.value !== null) sweepProblem.value = reason;
    sweepProgress.value = null;
  };
  const open = (): Calculation => {
    calculation ??= startCalculation(take, fail);
    return calculation;
  };

  const check = (settings: Settings) => {
    checks.value = null;
    checkProblem.value = null;
    sweep.value = null;
    isChecking = true;
    checkId = ++lastId;
    open().ask({ kind: 'check', id: checkId, table: tableNow(), settings });
  };
  const startSweep = (settings: Settings) => {
    sweep.value = null;
    sweepProblem.value = null;
    sweepProgress.value = { done: 0, total: 1 };
    sweepId = ++lastId;
    open().ask({ kind: 'sweep', id: sweepId, table: tableNow(), settings });
  };
  const stopSweep = () => {
    sweepId = 0;
    sweepProgress.value = null;
    calculation?.ask({ kind: 'stop sweep' });
  };
  const end = () => {
    isChecking = false;
    calculation?.end();
    calculation = null;
  };
  /** Ends what is worked out for settings that have changed, so that it does not slow the next fit. */
  const giveUp = () => {
    stopSweep();
    sweepProblem.value = null;
    if (isChecking) end();
  };
  return { checks, checkProblem, sweep, sweepProgress, sweepProblem, check, startSweep, stopSweep, giveUp, end };
}
