/**
 * The evidence map's numbers: what one more study of so many people would do to the target, with an arm at failure and
 * the other in a cell.
 *
 * Inside a band the load does not matter to the fit, unless load is adjusted for: cells of one band and reserve are
 * then one plan.
 */
import { loadLines, reserveLines } from '../emptyRegions.ts';
import { bandOfLoad } from '../loads.ts';
import type { BandName } from '../result.ts';
import { OUTCOMES } from './bandOutcomes.ts';
import type { ExpectedTarget } from './expectedTarget.ts';
import { expectTargetWith, refuseAdded } from './expectPlan.ts';
import { assume, makePlannedRows } from './plannedRows.ts';
import { checkPlan, LEAST_PEOPLE, type PlannedDesign, planStudy } from './plannedStudy.ts';
import { bandNamed, type Planning } from './planningBase.ts';

/**
 * Outcomes of a cell where each has its own load: a quarter of what a plan is worked out with, so that 80 cells take no
 * longer than ten plans and a half; 19 of 20 widths are then within 2.5 % of those of 1,024
 * outcomes, all within 8 %.
 */
const OUTCOMES_BY_LOAD = 32;

export interface MapGains {
  readonly band: BandName;
  readonly people: number;
  readonly design: PlannedDesign;
  /** The target today. */
  readonly before: ExpectedTarget;
  /** Every cell of the band, by load and then reserve; none with a reason. */
  readonly cells: readonly CellGain[];
  readonly reason: string | null;
}

export interface CellGain {
  /** Lines that bound the cell, per cent of 1RM and repetitions, as the evidence map has them. */
  readonly load: readonly [low: number, high: number];
  readonly reserve: readonly [low: number, high: number];
  /** null where no fit would be made. */
  readonly after: ExpectedTarget | null;
  /** Repetitions by which the interval gets narrower; below 0 wider; null where a width is missing. */
  readonly narrowing: number | null;
  /** The same as a share of the width today. */
  readonly share: number | null;
  readonly reason: string | null;
}

/**
 * @param people of the study: half of them in each arm where the design is parallel, all in both within persons; an
 * arm in the cell
 * stands at its lower line of reserve, in the first cell both arms are at failure
 */
export function mapGains(
  planning: Planning,
  name: BandName,
  people: number,
  design: PlannedDesign = 'parallel',
): MapGains {
  const band = bandNamed(planning, name);
  const { settings } = planning;
  const before = expectTargetWith(planning, band, []);
  const nothing = (reason: string): MapGains => ({ band: name, people, design, before, cells: [], reason });
  const each = design === 'parallel' ? Math.floor(people / 2) : people;
  if (!(each >= LEAST_PEOPLE)) return nothing(`${people} people are too few for two arms of ${LEAST_PEOPLE} at least`);
  if (!band.scatter) return nothing('no curve is fitted today, so that no interval can be foreseen');
  const planOf = (reserve: number, load: number) =>
    planStudy(design, [
      { reserve: 0, load, people: each },
      { reserve, load, people: each },
    ]);
  const loads = loadLines(settings.split);
  const reserves = reserveLines();
  const isByLoad = settings.adjust.includes('load');
  const outcomes = isByLoad ? OUTCOMES_BY_LOAD : OUTCOMES;
  const known = new Map<string, Pick<CellGain, 'after' | 'narrowing' | 'share' | 'reason'>>();
  const gainAt = (reserve: number, load: number) => {
    const key = isByLoad ? `${reserve} ${load}` : `${reserve}`;
    const found = known.get(key) ?? work(reserve, load);
    known.set(key, found);
    return found;
  };
  const work = (reserve: number, load: number): Pick<CellGain, 'after' | 'narrowing' | 'share' | 'reason'> => {
    const plan = planOf(reserve, load);
    const assumptions = assume(planning, plan);
    const rows = typeof assumptions === 'string' ? assumptions : makePlannedRows(planning, band, plan, assumptions);
    const refusal =
      typeof rows === 'string' ? rows : (checkPlan(plan, planning.bands)[0] ?? refuseAdded(planning, band, rows));
    if (typeof rows === 'string' || refusal) return { after: null, narrowing: null, share: null, reason: refusal };
    const after = expectTargetWith(planning, band, rows, outcomes);
    const narrowing = before.width === null || after.width === null ? null : before.width - after.width;
    return {
      after,
      narrowing,
      share: narrowing === null || !before.width ? null : narrowing / before.width,
      reason: null,
    };
  };
  const cells = loads.slice(1).flatMap((high, l): CellGain[] => {
    const middle = (loads[l] + high) / 2;
    if (bandOfLoad(middle, settings.split) !== name) return [];
    return reserves
      .slice(1)
      .map((most, r) => ({ load: [loads[l], high], reserve: [reserves[r], most], ...gainAt(reserves[r], middle) }));
  });
  return { band: name, people, design, before, cells, reason: null };
}
