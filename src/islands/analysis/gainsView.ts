/** What one more study would do over the evidence map, worked out in one go: for the build, and for a page's worker. */
import { type GainTile, tileGains } from '../../figures/gainTiles.ts';
import { mapGains } from '../../model/plan/mapGains.ts';
import { assume, type PlanAssumptions } from '../../model/plan/plannedRows.ts';
import { planStudy } from '../../model/plan/plannedStudy.ts';
import type { Planning } from '../../model/plan/planningBase.ts';
import { findUsualPeople, type UsualPeople } from '../../model/plan/usualPeople.ts';

export interface GainsView {
  /** People of the study. */
  readonly people: number;
  readonly usual: UsualPeople;
  readonly tiles: readonly GainTile[];
  /** What the study is taken to measure and how that scatters, or why it cannot be said. */
  readonly assumptions: PlanAssumptions | string;
}

/**
 * A band at a time, for who must stay answerable between them.
 *
 * @param asked people of the study; null for as many as a study of the table usually has
 */
export function* viewGains(planning: Planning, asked: number | null): Generator<null, GainsView> {
  const usual = findUsualPeople(planning);
  const people = asked ?? usual.people;
  const tiles: GainTile[] = [];
  for (const { name } of planning.bands) {
    tiles.push(...tileGains(mapGains(planning, name, people), planning.settings.split));
    yield null;
  }
  return { people, usual, tiles, assumptions: assume(planning, planStudy('parallel', [])) };
}
