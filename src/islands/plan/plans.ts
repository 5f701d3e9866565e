/** The plans that stand side by side, and how a reader changes them: pure functions. */
import { PLAN_NAMES, type PlanName } from '../../figures/plan/planWords.ts';
import { type PlannedArm, type PlannedDesign, type PlannedStudy, planStudy } from '../../model/plan/plannedStudy.ts';
import type { BandName } from '../../model/result.ts';
import type { Settings } from '../../model/settings.ts';

/** One at least. */
export type Plans = Readonly<Partial<Record<PlanName, PlannedStudy>>>;

/** People of an arm that nobody has said yet. */
const USUAL_PEOPLE = 20;
/** Reserves of the plan that the page begins with: one at failure, one near. */
const FIRST_RESERVES = [0, 2] as const;

/** The plan that the page begins with, whatever the table. */
export function defaultPlans({ split }: Pick<Settings, 'split'>): Plans {
  const load: BandName = split === null ? 'all' : 'light';
  return {
    A: planStudy(
      'parallel',
      FIRST_RESERVES.map((reserve) => ({ load, reserve, people: USUAL_PEOPLE })),
    ),
  };
}

/** Plans by name, in order. */
export function listPlans(plans: Plans): readonly (readonly [name: PlanName, plan: PlannedStudy])[] {
  return PLAN_NAMES.flatMap((name) => {
    const plan = plans[name];
    return plan ? [[name, plan] as const] : [];
  });
}

export function withPlan(plans: Plans, name: PlanName, plan: PlannedStudy): Plans {
  return Object.fromEntries(listPlans({ ...plans, [name]: plan }));
}

/** Without one of them; the last stays. */
export function withoutPlan(plans: Plans, name: PlanName): Plans {
  const left = listPlans(plans).filter(([one]) => one !== name);
  return left.length > 0 ? Object.fromEntries(left) : plans;
}

/** The first name that is free, or null. */
export function nextName(plans: Plans): PlanName | null {
  return PLAN_NAMES.find((name) => !plans[name]) ?? null;
}

/** An arm more, like the last one. */
export function addArm(plan: PlannedStudy, load: BandName): PlannedStudy {
  const last = plan.arms.at(-1) ?? { load, reserve: 0, people: USUAL_PEOPLE };
  return { ...plan, arms: [...plan.arms, last] };
}

export function changeArm(plan: PlannedStudy, place: number, part: Partial<PlannedArm>): PlannedStudy {
  return { ...plan, arms: plan.arms.map((arm, i) => (i === place ? { ...arm, ...part } : arm)) };
}

export function removeArm(plan: PlannedStudy, place: number): PlannedStudy {
  return { ...plan, arms: plan.arms.filter((_, i) => i !== place) };
}

/** Within persons everybody trains in every arm: as many people as the largest arm had. */
export function changeDesign(plan: PlannedStudy, design: PlannedDesign): PlannedStudy {
  const most = Math.max(0, ...plan.arms.map(({ people }) => people));
  const arms = design === 'within-person' ? plan.arms.map((arm) => ({ ...arm, people: most })) : plan.arms;
  return { ...plan, design, arms };
}

/** The people of every arm at once. */
export function changePeople(plan: PlannedStudy, people: number): PlannedStudy {
  return { ...plan, arms: plan.arms.map((arm) => ({ ...arm, people })) };
}
