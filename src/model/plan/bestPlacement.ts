/**
 * Where the arms of one study should stand: every way to place two or three arms on whole reserves and in the bands is
 * tried, with the same people in all, shared equally (an optimal design by exhaustion; Kiefer & Wolfowitz 1959, Ann
 * Math Stat 30:271, Fedorov 1972, for the theory).
 *
 * Bands are fitted apart, so that a study's arms in one do nothing to the other: each band's part is worked out once,
 * and ways across both are put together from the parts.
 */

import { rangeOf } from '../bandFit.ts';
import type { BandName } from '../result.ts';
import type { ExpectedTarget } from './expectedTarget.ts';
import { expectTargetWith, refuseAdded } from './expectPlan.ts';
import { assume, makePlannedRows } from './plannedRows.ts';
import { checkPlan, countPlanned, LEAST_PEOPLE, type PlannedDesign, type PlannedStudy } from './plannedStudy.ts';
import { bandNamed, type Planning } from './planningBase.ts';

export interface PlacementQuestion {
  readonly design: PlannedDesign;
  /** Arms of the study, 1 to 3. */
  readonly arms: 1 | 2 | 3;
  /** People of the whole study, shared equally; what does not divide is left over and told. */
  readonly people: number;
  /** Whose interval should be narrowest, or null for those of all bands: the product of what is left of each. */
  readonly band: BandName | null;
  /** Largest reserve tried, repetitions; null for the largest that the band has been studied at. */
  readonly furthest: number | null;
  /** What else the plan says. */
  readonly study: Pick<PlannedStudy, 'weeks' | 'measure' | 'coefficientOfVariation' | 'correlation'>;
}

export interface Placement {
  readonly plan: PlannedStudy;
  readonly people: number;
  /** The target of each band with it; those without an arm stay as they are today. */
  readonly bands: readonly {
    readonly band: BandName;
    readonly before: ExpectedTarget;
    readonly after: ExpectedTarget;
  }[];
  /** Width after as a share of the width before, multiplied over the bands asked about; below 1 is narrower. */
  readonly left: number;
  /** Repetitions by which the intervals asked about get narrower, together, and for each person. */
  readonly narrowing: number;
  readonly narrowingPerPerson: number;
}

export interface PlacementSearch {
  /** The best first, at most as many as asked for; none with a reason. */
  readonly best: readonly Placement[];
  /** Ways that were tried, and those whose width could not be said. */
  readonly tried: number;
  readonly unsaid: number;
  readonly reason: string | null;
}

/** Outcomes that a way is first judged by, within 4 % of more; the best are judged again by all (bandOutcomes.ts). */
const FIRST_OUTCOMES = 16;
/** Ways that are judged again for each that is told. */
const AGAIN = 6;

type Place = { readonly band: BandName; readonly reserve: number };

/** @param count ways to tell, the best ones */
export function findBestPlacement(planning: Planning, question: PlacementQuestion, count = 3): PlacementSearch {
  const nothing = (reason: string): PlacementSearch => ({ best: [], tried: 0, unsaid: 0, reason });
  const each = question.design === 'parallel' ? Math.floor(question.people / question.arms) : question.people;
  if (!(each >= LEAST_PEOPLE))
    return nothing(`${question.people} people are too few for ${question.arms} arms of ${LEAST_PEOPLE} at least`);
  const asked = planning.bands.filter(
    ({ name, scatter }) => scatter && (question.band === null || name === question.band),
  );
  if (asked.length === 0)
    return nothing('no curve is fitted today in the bands asked about, so that no interval can be foreseen');
  const planOf = (places: readonly Place[]): PlannedStudy => ({
    weeks: question.study.weeks,
    measure: question.study.measure,
    coefficientOfVariation: question.study.coefficientOfVariation,
    correlation: question.study.correlation,
    design: question.design,
    arms: places.map(({ band, reserve }) => ({ load: band, reserve, people: each })),
  });
  const places = asked.flatMap(({ name, fit }) => {
    const furthest = question.furthest ?? rangeOf(fit.reserves)?.high ?? 0;
    return Array.from({ length: Math.floor(furthest) + 1 }, (_, reserve): Place => ({ band: name, reserve }));
  });
  const problems = checkPlan(planOf([...places.slice(0, 1), ...places.slice(-1)]), planning.bands);
  const assumptions = assume(planning, planOf(places));
  if (problems.length > 0) return nothing(problems.join('; '));
  if (typeof assumptions === 'string') return nothing(assumptions);
  const rowsOf = (name: BandName, ways: readonly Place[]) => {
    const rows = makePlannedRows(planning, bandNamed(planning, name), planOf(ways), assumptions);
    return typeof rows === 'string' ? [] : rows;
  };
  const known = new Map<string, ExpectedTarget>();
  const expect = (name: BandName, way: readonly Place[], outcomes?: number): ExpectedTarget => {
    const here = way.filter(({ band }) => band === name);
    const key = JSON.stringify([name, here.map(({ reserve }) => reserve), outcomes]);
    const found = known.get(key) ?? expectTargetWith(planning, bandNamed(planning, name), rowsOf(name, here), outcomes);
    known.set(key, found);
    return found;
  };
  const leftOf = (way: readonly Place[], outcomes?: number) =>
    asked.reduce((product, { name }) => product * shareLeft(expect(name, []), expect(name, way, outcomes)), 1);
  const judge = (ways: readonly (readonly Place[])[], outcomes?: number) =>
    ways
      .map((way) => ({ way, left: leftOf(way, outcomes) }))
      .filter(({ left }) => Number.isFinite(left))
      .sort((a, b) => a.left - b.left);
  const all = multisets(places, question.arms);
  const first = judge(all, FIRST_OUTCOMES);
  const again = judge(first.slice(0, AGAIN * count).map(({ way }) => way));
  const isRefused = (name: BandName, way: readonly Place[]) => {
    const rows = rowsOf(name, way);
    return rows.length > 0 && refuseAdded(planning, bandNamed(planning, name), rows) !== null;
  };
  const best = again
    .filter(({ way }) => !asked.some(({ name }) => isRefused(name, way)))
    .slice(0, count)
    .map(({ way, left }): Placement => {
      const plan = planOf(way);
      const people = countPlanned(plan);
      const bands = asked.map(({ name }) => ({ band: name, before: expect(name, []), after: expect(name, way) }));
      const narrowing = bands.reduce((sum, { before, after }) => sum + (before.width ?? 0) - (after.width ?? 0), 0);
      return { plan, people, bands, left, narrowing, narrowingPerPerson: narrowing / people };
    });
  const reason =
    best.length > 0
      ? null
      : 'no way of placing the arms gives an interval with an upper end that could be set beside that of today';
  return { best, tried: all.length, unsaid: all.length - first.length, reason };
}

/** What is left of a width; NaN where one of them cannot be said. */
function shareLeft({ width: before }: ExpectedTarget, { width: after }: ExpectedTarget): number {
  return before === null || after === null ? Number.NaN : after / before;
}

/** Every way to take `size` of the places, with repetition, in their order. */
function multisets<One>(places: readonly One[], size: number): readonly (readonly One[])[] {
  if (size === 0) return [[]];
  return places.flatMap((place, i) => multisets(places.slice(i), size - 1).map((rest) => [place, ...rest]));
}
