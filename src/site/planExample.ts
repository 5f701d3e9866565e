/** What the page that plans a study begins with: the site's table, its first plan, and the best placement in it. */
import { bandFigures } from '../islands/plan/bandFigures.ts';
import { type Built, START } from '../islands/plan/plan.state.ts';
import type { PlaceAsked } from '../islands/plan/planAddress.ts';
import { listPlans } from '../islands/plan/plans.ts';
import { findBestPlacement } from '../model/plan/bestPlacement.ts';
import { answerPlan } from '../model/plan/planAnswer.ts';
import { planStudy } from '../model/plan/plannedStudy.ts';
import { describePlanning } from '../model/plan/planningFacts.ts';
import { planAgreement } from './planAgreement.ts';
import { planning } from './planning.ts';
import { site } from './site.ts';

/** As many people as the first plan has, in both bands. */
const place: PlaceAsked = { design: 'parallel', arms: 2, people: 40, band: null };

export const builtPlan: Built = {
  opened: { facts: describePlanning(planning, site.arms), dataVersion: site.dataVersion },
  answers: Object.fromEntries(listPlans(START.plans).map(([name, plan]) => [name, answerPlan(planning, plan)])),
  place,
  search: findBestPlacement(planning, { ...place, study: planStudy(place.design, []), furthest: null }),
  agreement: { both: planAgreement.both, most: planAgreement.most },
};

export const builtFigures = bandFigures(builtPlan.opened.facts, builtPlan.answers);
