/** The worker that plans studies: a table is read and fitted once, then plans are asked of it. */
import ownStepsOfPython from '../../figures/plan/plan.py?url';
import ownStepsOfR from '../../figures/plan/plan.R?url';
import type { FileContext, NamedAnswer } from '../../figures/plan/planFiles.ts';
import { writePlanScripts } from '../../figures/plan/planScripts.ts';
import stepsOfPython from '../../figures/takeHome/steps.py?url';
import stepsOfR from '../../figures/takeHome/steps.R?url';
import type { TakeHomeFile } from '../../figures/takeHome/takeHome.ts';
import { findBestPlacement, type PlacementQuestion, type PlacementSearch } from '../../model/plan/bestPlacement.ts';
import { findPeople, type PeopleNeeded } from '../../model/plan/peopleNeeded.ts';
import { answerPlan, type PlanAnswer } from '../../model/plan/planAnswer.ts';
import type { PlannedStudy } from '../../model/plan/plannedStudy.ts';
import { describePlanning, type PlanningFacts } from '../../model/plan/planningFacts.ts';
import { type BandSimulation, simulateInSteps } from '../../model/plan/simulatePlan.ts';
import type { BandName } from '../../model/result.ts';
import { shownVersionOf } from '../../ownTable/shownVersion.ts';
import { answerCalls } from '../../ui/workerAnswers.ts';
import type { Operation } from '../../ui/workerCalls.ts';
import type { Asked } from '../analysis/loadArms.ts';
import { loadPlanning } from '../analysis/loadPlanning.ts';

type OfPlan = Asked & { readonly plan: PlannedStudy };

export type PlanOperations = {
  readonly open: Operation<Asked, OpenedTable>;
  readonly answer: Operation<OfPlan, PlanAnswer>;
  readonly people: Operation<OfPlan & { readonly band: BandName; readonly width: number }, PeopleNeeded>;
  readonly place: Operation<Asked & { readonly question: PlacementQuestion }, PlacementSearch>;
  /** Tells the share that is done, 0 to 1. */
  readonly simulate: Operation<
    OfPlan & { readonly tables: number; readonly seed: number },
    readonly BandSimulation[],
    number
  >;
  /** Scripts for R and Python. */
  readonly scripts: Operation<
    Asked & { readonly answers: readonly NamedAnswer[]; readonly context: FileContext },
    readonly TakeHomeFile[]
  >;
};

export interface OpenedTable {
  readonly facts: PlanningFacts;
  /** First characters of the table's SHA-256; “unknown” where that is not known. */
  readonly dataVersion: string;
}

/** Milliseconds between one telling and the next. */
const TELL = 80;

answerCalls<PlanOperations>({
  open: async (asked) => {
    const { planning, arms } = await loadPlanning(asked);
    return { facts: describePlanning(planning, arms), dataVersion: shownVersionOf(asked.table) };
  },
  answer: async ({ plan, ...asked }) => answerPlan((await loadPlanning(asked)).planning, plan),
  people: async ({ plan, band, width, ...asked }) =>
    findPeople((await loadPlanning(asked)).planning, plan, band, width),
  place: async ({ question, ...asked }) => findBestPlacement((await loadPlanning(asked)).planning, question),
  simulate: async ({ plan, tables, seed, ...asked }, { report, signal }) => {
    const steps = simulateInSteps((await loadPlanning(asked)).planning, plan, tables, seed);
    let told = performance.now();
    let step = steps.next();
    for (; !step.done; step = steps.next()) {
      if (performance.now() - told < TELL) continue;
      report(step.value);
      // Lets the wish to stop, and other questions, come in between.
      await new Promise((resolve) => setTimeout(resolve));
      signal.throwIfAborted();
      told = performance.now();
    }
    return step.value;
  },
  scripts: async ({ answers, context, ...asked }) => {
    const { planning } = await loadPlanning(asked);
    const [r, python, ownR, ownPython] = await Promise.all(
      [stepsOfR, stepsOfPython, ownStepsOfR, ownStepsOfPython].map(loadText),
    );
    return writePlanScripts(planning, answers, context, { r, python }, { r: ownR, python: ownPython });
  },
});

/** Files of the site that only this answer needs, so that no visit carries them. */
async function loadText(address: string): Promise<string> {
  const response = await fetch(address);
  if (!response.ok)
    throw new Error(`the script’s steps could not be loaded: ${response.status} ${response.statusText}`);
  return response.text();
}
