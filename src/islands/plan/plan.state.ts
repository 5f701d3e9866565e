/** State of the page that plans a study: plans, settings and questions, kept in the address, and what a worker says of them. */
import { computed, effect, signal } from '@preact/signals';
import type { FileContext, NamedAnswer } from '../../figures/plan/planFiles.ts';
import type { PlanName } from '../../figures/plan/planWords.ts';
import type { PlacementQuestion, PlacementSearch } from '../../model/plan/bestPlacement.ts';
import type { PeopleNeeded } from '../../model/plan/peopleNeeded.ts';
import type { PlannedStudy } from '../../model/plan/plannedStudy.ts';
import type { BandSimulation } from '../../model/plan/simulatePlan.ts';
import type { BandName } from '../../model/result.ts';
import { defaultSettings } from '../../model/settings.ts';
import { saveFile } from '../../ui/saveFile.ts';
import { type BuiltAnswers, createAnswers } from './answers.state.ts';
import { settleNeed } from './need.ts';
import { openPlanner } from './openPlanner.ts';
import { type PlaceAsked, type PlanPage, readPage, writePage } from './planAddress.ts';
import { defaultPlans, listPlans, type Plans, withoutPlan, withPlan } from './plans.ts';
import { createQuestion } from './question.state.ts';

/** Milliseconds without a change after which the address gets an entry. */
const REST = 400;
/** Studies that a check draws: the median width is then known to 2 % or so, in some seconds. */
export const SIMULATED = 300;
/** The same studies are drawn each time. */
export const SIMULATION_SEED = 1;

export interface Built extends BuiltAnswers {
  /** The best placement in the site's table, and what was asked for it. */
  readonly place: PlaceAsked;
  readonly search: PlacementSearch;
  readonly agreement: MeasuredAgreement;
}

/** How far expected widths were from simulated ones, as it was measured (`npm run agreement`). */
export interface MeasuredAgreement {
  /** Planned studies with a width by both ways. */
  readonly both: number;
  /** The largest difference: “3.7 %” of the simulated width. */
  readonly most: string;
}

export const START: PlanPage = {
  settings: defaultSettings,
  plans: defaultPlans(defaultSettings),
  need: null,
  place: null,
};

/** @param table address of the table that is read */
export function createPlanPage(built: Built, table: string) {
  const page = signal<PlanPage>(START);
  const notice = signal<string | null>(null);
  /** Entries that were not taken, as they were written, by the control's id. */
  const refused = signal<Readonly<Record<string, string>>>({});
  const planner = openPlanner();
  const answers = createAnswers(built, table, page, planner);
  const settings = () => page.peek().settings;
  const people = createQuestion<NeedRequest, PeopleNeeded>(({ plan, band, width }, waiting) =>
    planner.ask('people', { table, settings: settings(), plan, band, width }, waiting),
  );
  const placement = createQuestion<PlaceRequest, PlacementSearch>(({ study, place }, waiting) =>
    planner.ask('place', { table, settings: settings(), question: { ...place, study, furthest: null } }, waiting),
  );
  const share = signal(0);
  const simulation = createQuestion<SimulationRequest, readonly BandSimulation[]>(({ plan }, waiting) => {
    share.value = 0;
    const progress = (done: number) => {
      share.value = done;
    };
    const asked = { table, settings: settings(), plan, tables: SIMULATED, seed: SIMULATION_SEED };
    return planner.ask('simulate', asked, { ...waiting, progress });
  });

  /** Scheme and host; empty until a browser says. */
  const origin = signal('');
  /** Address of the page as it stands, for who takes it elsewhere. */
  const link = computed(() => (origin.value ? `${origin.value}${location.pathname}${writePage(page.value)}` : ''));
  /** Why the last file could not be made. */
  const fileProblem = signal<string | null>(null);
  /** @param ending of the script that is wanted */
  const saveScript = (ending: string, named: readonly NamedAnswer[], context: FileContext) => {
    fileProblem.value = null;
    planner.ask(
      'scripts',
      { table, settings: settings(), answers: named, context },
      {
        take: (files) => {
          const file = files.find(({ name }) => name.endsWith(ending));
          if (file) saveFile(file);
        },
        fail: (reason) => {
          fileProblem.value = reason;
        },
      },
    );
  };

  /** The plan that was last given the arms of a search; null once anything else was changed. */
  const used = signal<PlanName | null>(null);

  const change = (part: Partial<PlanPage>) => {
    page.value = { ...page.value, ...part };
    refused.value = {};
    used.value = null;
  };
  const setPlan = (name: PlanName, plan: PlannedStudy) => change({ plans: withPlan(page.value.plans, name, plan) });
  const take = (name: PlanName, plan: PlannedStudy) => {
    setPlan(name, plan);
    used.value = name;
  };
  const removePlan = (name: PlanName) => change({ plans: withoutPlan(page.value.plans, name) });
  const refuse = (id: string, written: string) => {
    refused.value = { ...refused.value, [id]: written };
  };
  const simulate = (name: PlanName) => {
    const plan = page.value.plans[name];
    if (plan) simulation.put({ name, plan }, true);
  };
  const connect = () => {
    let addressed: PlanPage | null = null;
    /** The query as it was last read or written. */
    let known: string | null = null;
    const read = () => {
      // A link within the page moves the hash alone: what is not yet written stays.
      if (location.search === known) return;
      known = location.search;
      const { notice: said, ...found } = readPage(location.search);
      notice.value = said;
      addressed = found;
      refused.value = {};
      page.value = found;
    };
    const write = (now: PlanPage) => {
      const address = `${location.pathname}${writePage(now)}${location.hash}`;
      if (address === `${location.pathname}${location.search}${location.hash}`) return;
      // What was only read is put right in its place: an entry more would lead “back” to itself.
      if (now === addressed) history.replaceState(null, '', address);
      else history.pushState(null, '', address);
      addressed = null;
      known = location.search;
    };
    origin.value = location.origin;
    read();
    addEventListener('popstate', read);
    const disconnect = answers.connect();
    let rest: ReturnType<typeof setTimeout> | undefined;
    let asked = page.peek().settings;
    const stops = [
      effect(() => {
        const now = page.value;
        clearTimeout(rest);
        rest = setTimeout(() => write(now), REST);
      }),
      effect(() => {
        const { plans, need, place, settings: chosen } = page.value;
        const isAgain = chosen !== asked;
        asked = chosen;
        const target = need ? settleNeed(page.value) : null;
        const plan = target ? plans[target.plan] : undefined;
        people.put(need && target && plan ? { plan, band: target.band, width: need.width } : null, isAgain);
        placement.put(place ? { study: assumedOfFirst(plans), place } : null, isAgain);
        const simulated = simulation.asked.peek()?.request;
        // What was drawn of another plan, or under other settings, is no check of this one.
        if (simulated && (isAgain || JSON.stringify(plans[simulated.name]) !== JSON.stringify(simulated.plan)))
          simulation.stop();
      }),
    ];
    return () => {
      clearTimeout(rest);
      // What was moved last is kept too, by whoever reads the address next.
      write(page.peek());
      removeEventListener('popstate', read);
      for (const stop of stops) stop();
      disconnect();
      planner.end();
    };
  };
  return {
    table,
    built,
    page,
    notice,
    refused,
    answers,
    people,
    placement,
    simulation: { ...simulation, share, start: simulate },
    change,
    setPlan,
    take,
    used,
    removePlan,
    refuse,
    link,
    fileProblem,
    saveScript,
    connect,
  };
}

export type PlanState = ReturnType<typeof createPlanPage>;

/** What the search takes over from the first plan. */
function assumedOfFirst(plans: Plans): PlaceRequest['study'] {
  const [[, { weeks, measure, coefficientOfVariation, correlation }]] = listPlans(plans);
  return { weeks, measure, coefficientOfVariation, correlation };
}

interface PlaceRequest {
  readonly study: PlacementQuestion['study'];
  readonly place: PlaceAsked;
}
interface NeedRequest {
  readonly plan: PlannedStudy;
  readonly band: BandName;
  readonly width: number;
}
interface SimulationRequest {
  readonly name: PlanName;
  readonly plan: PlannedStudy;
}
