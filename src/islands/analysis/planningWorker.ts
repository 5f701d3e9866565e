/**
 * The worker that says what one more study would do: over the evidence map, and the best one. Apart from the worker of
 * the analysis, so that neither waits for the other, and fetched by no page that asks nothing of it.
 */
import { findNextStudy, type NextStudy } from '../../model/plan/nextStudy.ts';
import { answerCalls } from '../../ui/workerAnswers.ts';
import type { Operation } from '../../ui/workerCalls.ts';
import { type GainsView, viewGains } from './gainsView.ts';
import type { Asked } from './loadArms.ts';
import { loadPlanning } from './loadPlanning.ts';

export type PlanningOperations = {
  /** With null people as many as a study of the table usually has. */
  readonly gains: Operation<Asked & { readonly people: number | null }, GainsView>;
  readonly 'next study': Operation<Asked, NextStudy>;
};

answerCalls<PlanningOperations>({
  gains: async ({ people, ...asked }, { signal }) => {
    const steps = viewGains((await loadPlanning(asked)).planning, people);
    let step = steps.next();
    while (!step.done) {
      // Lets other requests, and the wish to stop, come in between.
      await new Promise((resolve) => setTimeout(resolve));
      signal.throwIfAborted();
      step = steps.next();
    }
    return step.value;
  },
  'next study': async (asked) => findNextStudy((await loadPlanning(asked)).planning),
});
