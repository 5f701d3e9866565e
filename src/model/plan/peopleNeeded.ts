/**
 * How many people a study needs for an interval no wider than asked. With ever more people the sampling errors vanish
 * and what the study still differs by, τ² and ω², stays: so one study narrows an interval to a limit and no further,
 * and the limit is told.
 */
import type { BandName } from '../result.ts';
import type { ExpectedTarget } from './expectedTarget.ts';
import { expectTargetWith, refuseAdded } from './expectPlan.ts';
import { assume, makePlannedRows } from './plannedRows.ts';
import { checkPlan, countPlanned, LEAST_PEOPLE, type PlannedStudy } from './plannedStudy.ts';
import { bandNamed, type Planning } from './planningBase.ts';

/**
 * The people of an arm from which on more are as good as without end: a hundredth of a usual τ² is left of the errors
 * at some hundred.
 */
export const WITHOUT_END = 100_000;

export interface PeopleNeeded {
  readonly band: BandName;
  /** Width asked for, repetitions. */
  readonly width: number;
  /**
   * Fewest people an arm, and of the study; 0 where the interval is as narrow today; null where no number is enough.
   */
  readonly perArm: number | null;
  readonly people: number | null;
  /** The target expected with so many; null with `perArm`. */
  readonly after: ExpectedTarget | null;
  /**
   * The target expected with people without end: what one such study can do at most; null where no fit would be made.
   */
  readonly limit: ExpectedTarget | null;
  /** Why no number is enough; null where one is. */
  readonly reason: string | null;
}

/**
 * @param plan its arms are taken with equally many people, whatever they say
 * @param width repetitions, above 0
 */
export function findPeople(planning: Planning, plan: PlannedStudy, name: BandName, width: number): PeopleNeeded {
  const band = bandNamed(planning, name);
  const nothing = (reason: string, limit: ExpectedTarget | null = null): PeopleNeeded => ({
    band: name,
    width,
    perArm: null,
    people: null,
    after: null,
    limit,
    reason,
  });
  const withPeople = (people: number): PlannedStudy => ({
    ...plan,
    arms: plan.arms.map((arm) => ({ ...arm, people })),
  });
  const problems = checkPlan(withPeople(LEAST_PEOPLE), planning.bands);
  const assumptions = assume(planning, plan);
  if (typeof assumptions === 'string') return nothing(assumptions);
  if (problems.length > 0) return nothing(problems.join('; '));
  const rowsOf = (people: number) => {
    const rows = makePlannedRows(planning, band, withPeople(people), assumptions);
    return typeof rows === 'string' ? [] : rows;
  };
  if (!band.scatter) return nothing('no curve is fitted today, so that no interval can be foreseen');
  if (rowsOf(LEAST_PEOPLE).length === 0) return nothing('the plan has no arm in this band');
  const known = new Map<number, ExpectedTarget>();
  const expect = (people: number): ExpectedTarget => {
    const found = known.get(people) ?? expectTargetWith(planning, band, people === 0 ? [] : rowsOf(people));
    known.set(people, found);
    return found;
  };
  const isEnough = (people: number) => (expect(people).width ?? Number.POSITIVE_INFINITY) <= width;
  const found = (perArm: number): PeopleNeeded => ({
    band: name,
    width,
    perArm,
    people: countPlanned(withPeople(perArm)),
    after: expect(perArm),
    limit: refuseAdded(planning, band, rowsOf(WITHOUT_END)) ? null : expect(WITHOUT_END),
    reason: null,
  });
  if (isEnough(0)) return found(0);
  // Doubled until it is enough; then the least between the last two.
  let enough = LEAST_PEOPLE;
  while (!isEnough(enough)) {
    if (enough >= WITHOUT_END) return tooFew(nothing, expect(WITHOUT_END), width);
    enough = Math.min(2 * enough, WITHOUT_END);
  }
  let less = enough === LEAST_PEOPLE ? 0 : Math.floor(enough / 2);
  while (enough - less > 1 && enough > LEAST_PEOPLE) {
    const middle = Math.max(LEAST_PEOPLE, Math.floor((less + enough) / 2));
    if (isEnough(middle)) enough = middle;
    else less = middle;
  }
  const refusal = refuseAdded(planning, band, rowsOf(enough));
  return refusal ? nothing(refusal) : found(enough);
}

function tooFew(
  nothing: (reason: string, limit: ExpectedTarget) => PeopleNeeded,
  limit: ExpectedTarget,
  width: number,
): PeopleNeeded {
  const reaches =
    limit.width === null ? 'gives no interval with an upper end' : `leaves it about ${limit.width.toFixed(2)} wide`;
  return nothing(
    `no number of people is enough for ${width} in one such study: even without end it ${reaches}, since people take away neither how studies and their rows differ otherwise nor what is unsure where the study has no arm`,
    limit,
  );
}
