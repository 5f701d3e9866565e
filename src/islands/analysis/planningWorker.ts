/**
 * The worker that says what one more study would do: over the evidence map, and the best one. Apart from the worker of
 * the analysis, so that neither waits for the other, and fetched by no page that asks nothing of it.
 */
import type { Arm } from '../../evidence/schema.ts';
import { findNextStudy, type NextStudy } from '../../model/plan/nextStudy.ts';
import { openPlanning, type Planning } from '../../model/plan/planningBase.ts';
import type { Settings } from '../../model/settings.ts';
import { answerCalls } from '../../ui/workerAnswers.ts';
import type { Operation } from '../../ui/workerCalls.ts';
import { type GainsView, viewGains } from './gainsView.ts';
import { type Asked, loadArms } from './loadArms.ts';

export type PlanningOperations = {
  /** With null people as many as a study of the table usually has. */
  readonly gains: Operation<Asked & { readonly people: number | null }, GainsView>;
  readonly 'next study': Operation<Asked, NextStudy>;
};

answerCalls<PlanningOperations>({
  gains: async ({ table, settings, people }, { signal }) => {
    const steps = viewGains(await plan(table, settings), people);
    let step = steps.next();
    while (!step.done) {
      // Lets other requests, and the wish to stop, come in between.
      await new Promise((resolve) => setTimeout(resolve));
      signal.throwIfAborted();
      step = steps.next();
    }
    return step.value;
  },
  'next study': async ({ table, settings }) => findNextStudy(await plan(table, settings)),
});

/** The last table that was asked about, fitted once. */
let opened: { readonly arms: readonly Arm[]; readonly key: string; readonly planning: Planning } | null = null;

async function plan(table: string, settings: Settings): Promise<Planning> {
  const arms = await loadArms(table);
  const key = JSON.stringify(settings);
  if (opened?.arms !== arms || opened.key !== key) opened = { arms, key, planning: openPlanning(arms, settings) };
  return opened.planning;
}
