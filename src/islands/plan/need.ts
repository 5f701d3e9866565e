/** Whose people are asked for: a plan that is there, and a band in which it has arms. */
import type { PlanName } from '../../figures/plan/planWords.ts';
import { placeLoads } from '../../model/plan/plannedBands.ts';
import type { BandName } from '../../model/result.ts';
import type { PlanPage } from './planAddress.ts';
import { listPlans } from './plans.ts';

export interface NeedTarget {
  readonly plan: PlanName;
  /** Bands of the plan's arms, in their order. */
  readonly bands: readonly BandName[];
  /** The one that is asked about. */
  readonly band: BandName;
}

/** What was asked, as far as it is there; else the first plan, and its first band. null where that has no arms. */
export function settleNeed({ need, plans, settings }: PlanPage): NeedTarget | null {
  const all = listPlans(plans);
  const [plan, study] = all.find(([name]) => name === need?.plan) ?? all[0];
  const bands = placeLoads(study.arms, settings.split);
  const band = bands.find((one) => one === need?.band) ?? bands.at(0);
  return band === undefined ? null : { plan, bands, band };
}
