/** A plan with all that is told of it at once: what is expected, and what is with people without end. */
import type { BandName } from '../result.ts';
import type { ExpectedTarget } from './expectedTarget.ts';
import { expectPlan } from './expectPlan.ts';
import { WITHOUT_END } from './peopleNeeded.ts';
import type { PlanExpectation } from './planExpectation.ts';
import type { PlannedStudy } from './plannedStudy.ts';
import type { Planning } from './planningBase.ts';

export interface PlanAnswer {
  readonly plan: PlannedStudy;
  readonly expectation: PlanExpectation;
  /** Of the bands in which the plan has arms; none where the plan has problems. */
  readonly limits: readonly BandLimit[];
}

/** The target expected with people without end, which need not be the narrowest (`peopleNeeded.ts`). */
export interface BandLimit {
  readonly band: BandName;
  /** null where nothing can be said. */
  readonly target: ExpectedTarget | null;
}

export function answerPlan(planning: Planning, plan: PlannedStudy): PlanAnswer {
  const expectation = expectPlan(planning, plan);
  if (expectation.problems.length > 0) return { plan, expectation, limits: [] };
  const crowded = {
    ...plan,
    arms: plan.arms.map((arm) => ({ ...arm, people: arm.people === 0 ? 0 : WITHOUT_END })),
  };
  const limits = expectPlan(planning, crowded)
    .bands.filter(({ arms }) => arms > 0)
    .map(({ band, after }) => ({ band, target: after }));
  return { plan, expectation, limits };
}
