/** The figure of each band: today, and with the plans that are worked out. */
import type { Figure } from '../../figures/figure.ts';
import { plannedIntervals } from '../../figures/plan/plannedIntervals.ts';
import { PLAN_NAMES } from '../../figures/plan/planWords.ts';
import type { PlanningFacts } from '../../model/plan/planningFacts.ts';
import type { BandName } from '../../model/result.ts';
import type { Answers } from './answers.state.ts';

/** Of bands in which some plan has an arm and there is an interval to draw; of others each plan says why. */
export function bandFigures(
  { bands, settings }: PlanningFacts,
  answers: Answers,
): readonly { readonly band: BandName; readonly figure: Figure }[] {
  return bands.flatMap(({ name, furthest }) => {
    const plans = PLAN_NAMES.flatMap((plan) => {
      const found = answers[plan]?.expectation;
      const expectation = found?.bands.find(({ band }) => band === name);
      return found && expectation && expectation.arms > 0 ? [{ plan, people: found.people, expectation }] : [];
    });
    const isDrawn = plans.some(
      ({ expectation: { before, after } }) => before.point !== null || (after !== null && after.point !== null),
    );
    return !isDrawn
      ? []
      : [
          {
            band: name,
            figure: plannedIntervals(plans[0].expectation.before, plans, { band: name, settings, furthest }),
          },
        ];
  });
}
