/** What is known of the table and expected of each plan: as the page was built, or from a worker. */
import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import { PLAN_NAMES, type PlanName } from '../../figures/plan/planWords.ts';
import type { PlanAnswer } from '../../model/plan/planAnswer.ts';
import type { PlannedStudy } from '../../model/plan/plannedStudy.ts';
import type { Settings } from '../../model/settings.ts';
import { ownVersionOf } from '../../ownTable/tableInUse.ts';
import type { Planner } from './openPlanner.ts';
import type { PlanPage } from './planAddress.ts';
import { listPlans } from './plans.ts';
import type { OpenedTable } from './planWorker.ts';
import { isSame } from './same.ts';

/** As the page was built, from the site's table with the default settings. */
export interface BuiltAnswers {
  readonly opened: OpenedTable;
  readonly answers: Answers;
}
export type Answers = Readonly<Partial<Record<PlanName, PlanAnswer>>>;

/** What came of a plan: an answer, or why there is none. */
interface Known {
  readonly plan: PlannedStudy;
  readonly settings: Settings;
  readonly found: { readonly answer: PlanAnswer } | { readonly problem: string };
}

/** @param table address of the table that is read */
export function createAnswers(built: BuiltAnswers, table: string, page: ReadonlySignal<PlanPage>, planner: Planner) {
  const isOwn = ownVersionOf(table) !== null;
  /** True while the reader's own table is meant and what is at hand is the site's. */
  const awaitsOwn = signal(isOwn);
  const opened = signal<OpenedTable>(built.opened);
  const facts = computed(() => opened.value.facts);
  const known = signal<Readonly<Partial<Record<PlanName, Known>>>>(isOwn ? {} : fromBuilt(built));
  /** Why nothing is known of the table; of a plan that failed, `failed` says so. */
  const problem = signal<string | null>(null);
  /** Raised to have everything asked for again. */
  const tries = signal(0);
  const cancels = new Map<PlanName, () => void>();
  let cancelFacts = () => {};

  const answers = computed<Answers>(() =>
    Object.fromEntries(
      listPlans(page.value.plans).flatMap(([name]) => {
        const found = known.value[name]?.found;
        return found && 'answer' in found ? [[name, found.answer]] : [];
      }),
    ),
  );
  /** Why a plan could not be worked out, by its name. */
  const failed = computed<Readonly<Partial<Record<PlanName, string>>>>(() =>
    Object.fromEntries(
      listPlans(page.value.plans).flatMap(([name]) => {
        const found = known.value[name]?.found;
        return found && 'problem' in found ? [[name, found.problem]] : [];
      }),
    ),
  );
  const isShown = computed(() => problem.value === null && !awaitsOwn.value);
  /** True until all that is shown is of the plans and settings as they stand, or it is known why it cannot be. */
  const pending = computed(
    () =>
      problem.value === null &&
      (awaitsOwn.value ||
        !isSame(facts.value.settings, page.value.settings) ||
        listPlans(page.value.plans).some(([name, plan]) => !isOf(known.value[name], plan, page.value.settings))),
  );

  const isBuilt = (settings: Settings) => !isOwn && isSame(settings, built.opened.facts.settings);
  const askFacts = (settings: Settings) => {
    cancelFacts();
    problem.value = null;
    if (isBuilt(settings)) {
      opened.value = built.opened;
      return;
    }
    cancelFacts = planner.ask(
      'open',
      { table, settings },
      {
        take: (found) => {
          opened.value = found;
          awaitsOwn.value = false;
        },
        fail: (reason) => {
          problem.value = reason;
        },
      },
    );
  };
  const keep = (name: PlanName, one: Known | undefined) => {
    const { [name]: _, ...others } = known.peek();
    known.value = one ? { ...others, [name]: one } : others;
  };
  const askAnswer = (name: PlanName, plan: PlannedStudy | undefined, settings: Settings) => {
    cancels.get(name)?.();
    const start = built.answers[name];
    const before = known.peek()[name];
    if (!plan) keep(name, undefined);
    else if (start && isBuilt(settings) && isSame(start.plan, plan)) {
      keep(name, { plan, settings, found: { answer: start } });
    } else if (!isOf(before, plan, settings) || (before && 'problem' in before.found)) {
      if (before && 'problem' in before.found) keep(name, undefined);
      const come = (found: Known['found']) => keep(name, { plan, settings, found });
      const waiting = {
        take: (answer: PlanAnswer) => come({ answer }),
        // What was known of the plan as it stood before goes, so that nothing old stands beside an error.
        fail: (reason: string) => come({ problem: reason }),
      };
      cancels.set(name, planner.ask('answer', { table, settings, plan }, waiting));
    }
  };
  const connect = () => {
    const settings = computed(() => page.value.settings);
    const stops = [
      effect(() => {
        void tries.value;
        askFacts(settings.value);
      }),
      ...PLAN_NAMES.map((name) => {
        const plan = computed(() => page.value.plans[name]);
        return effect(() => {
          void tries.value;
          askAnswer(name, plan.value, settings.value);
        });
      }),
    ];
    return () => {
      for (const stop of stops) stop();
    };
  };
  const retry = () => {
    tries.value++;
  };
  return { opened, facts, answers, failed, awaitsOwn, isShown, pending, problem, isBuilt, retry, connect };
}

export type AnswersState = ReturnType<typeof createAnswers>;

function isOf(known: Known | undefined, plan: PlannedStudy, settings: Settings): boolean {
  return known !== undefined && isSame(known.plan, plan) && isSame(known.settings, settings);
}

function fromBuilt({ opened: { facts }, answers }: BuiltAnswers) {
  return Object.fromEntries(
    Object.entries(answers).map(([name, answer]): [string, Known] => [
      name,
      { plan: answer.plan, settings: facts.settings, found: { answer } },
    ]),
  );
}
