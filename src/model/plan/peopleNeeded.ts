/**
 * How many people a study needs for an interval no wider than asked. With ever more people the sampling errors vanish
 * and what the study still differs by, τ² and ω², stays: so one study narrows an interval to some width and no further.
 *
 * Widths need not fall all the way: the interval is made of residuals (CR2), weights may be none of the model, and a
 * median over outcomes has its grain (README.md). So numbers of people are tried from few to many, and what is said of
 * those that were not tried stands on the widths falling from each tried to the next.
 */
import type { BandName } from '../result.ts';
import type { ExpectedTarget } from './expectedTarget.ts';
import { expectTargetWith, refuseAdded } from './expectPlan.ts';
import { assume, makePlannedRows } from './plannedRows.ts';
import { checkPlan, countPlanned, LEAST_PEOPLE, type PlannedStudy } from './plannedStudy.ts';
import { bandNamed, type Planning } from './planningBase.ts';
import { explainTooFew } from './tooFewPeople.ts';

/**
 * The people of an arm from which on more are as good as without end: a hundredth of a usual τ² is left of the errors
 * at some hundred.
 */
export const WITHOUT_END = 100_000;
/** Each number up to here is tried, then every one √2 times the last: 35 in all, about a second. */
const EACH_TO = 10;
/** Relative rise of a width that is rounding. */
const ROUNDING = 1e-9;

export interface PeopleNeeded {
  readonly band: BandName;
  /** Width asked for, repetitions. */
  readonly width: number;
  /**
   * Fewest people an arm that were found to be enough, while one less is not; 0 where the interval is as narrow today;
   * null where none of those tried is enough.
   */
  readonly perArm: number | null;
  /** The same of the whole study. */
  readonly people: number | null;
  /** The target today. */
  readonly before: ExpectedTarget;
  /** The target expected with so many; null with `perArm`. */
  readonly after: ExpectedTarget | null;
  /** The target expected with people without end; null where no fit would be made. */
  readonly limit: ExpectedTarget | null;
  /** True where every larger number that was tried is enough too; null where none was looked for. */
  readonly isEnoughFromThere: boolean | null;
  /** Why no number is enough; null where one is. */
  readonly reason: string | null;
}

/**
 * @param plan its arms are taken with equally many people, whatever they say; the numbers that they say are tried too
 * @param width repetitions, above 0
 */
export function findPeople(planning: Planning, plan: PlannedStudy, name: BandName, width: number): PeopleNeeded {
  const band = bandNamed(planning, name);
  const rows = rowsByPeople(planning, plan, name);
  const known = new Map<number, ExpectedTarget>();
  const expect = (people: number): ExpectedTarget => {
    const found =
      known.get(people) ?? expectTargetWith(planning, band, people === 0 || !rows.of ? [] : rows.of(people));
    known.set(people, found);
    return found;
  };
  const nothing = (reason: string, limit: ExpectedTarget | null = null): PeopleNeeded => ({
    band: name,
    width,
    perArm: null,
    people: null,
    before: expect(0),
    after: null,
    limit,
    isEnoughFromThere: null,
    reason,
  });
  if (!rows.of) return nothing(rows.reason);
  const isEnough = (people: number) => (expect(people).width ?? Number.POSITIVE_INFINITY) <= width;
  const refuse = (people: number) => refuseAdded(planning, band, rows.of(people));
  const endless = refuse(WITHOUT_END);
  const limit = endless ? null : expect(WITHOUT_END);
  const found = (perArm: number, isEnoughFromThere: boolean | null): PeopleNeeded => ({
    ...nothing(''),
    perArm,
    people: countPlanned(withPeople(plan, perArm)),
    after: expect(perArm),
    limit,
    isEnoughFromThere,
    reason: null,
  });
  if (isEnough(0)) return found(0, null);
  // Of ever more people a fit may be refused, so that widths end before.
  const all = listTried(plan);
  const tried = endless ? all.slice(0, all.findLastIndex((people) => refuse(people) === null) + 1) : all;
  if (tried.length === 0) return nothing(refuse(LEAST_PEOPLE) ?? '');
  const at = tried.findIndex(isEnough);
  if (at < 0) {
    const widths = tried.map((people) => ({ people, width: expect(people).width }));
    return nothing(explainTooFew(widths, width, fallSteadily(widths), endless), limit);
  }
  // The least between the first that is enough and the one tried before it.
  let [less, enough] = [at === 0 ? LEAST_PEOPLE - 1 : tried[at - 1], tried[at]];
  while (enough - less > 1) {
    const middle = Math.floor((less + enough) / 2);
    if (isEnough(middle)) enough = middle;
    else less = middle;
  }
  const refusal = refuse(enough);
  return refusal ? nothing(refusal) : found(enough, endless === null && tried.slice(at).every(isEnough));
}

/** The plan's rows in the band with so many people in each arm, or why there are none. */
function rowsByPeople(planning: Planning, plan: PlannedStudy, name: BandName) {
  const band = bandNamed(planning, name);
  const not = (reason: string) => ({ of: null, reason });
  const assumptions = assume(planning, plan);
  if (typeof assumptions === 'string') return not(assumptions);
  const problems = checkPlan(withPeople(plan, LEAST_PEOPLE), planning.bands);
  if (problems.length > 0) return not(problems.join('; '));
  const of = (people: number) => {
    const rows = makePlannedRows(planning, band, withPeople(plan, people), assumptions);
    return typeof rows === 'string' ? [] : rows;
  };
  if (!band.scatter) return not('no curve is fitted today, so that no interval can be foreseen');
  return of(LEAST_PEOPLE).length === 0 ? not('the plan has no arm in this band') : { of, reason: null };
}

function withPeople(plan: PlannedStudy, people: number): PlannedStudy {
  return { ...plan, arms: plan.arms.map((arm) => ({ ...arm, people })) };
}

/** Numbers of people an arm, rising from the least to those without end. */
function listTried({ arms }: PlannedStudy): readonly number[] {
  const tried = new Set([WITHOUT_END]);
  for (let people = LEAST_PEOPLE; people <= EACH_TO; people++) tried.add(people);
  for (let people = EACH_TO; people < WITHOUT_END; people *= Math.SQRT2) tried.add(Math.round(people));
  for (const { people } of arms)
    if (Number.isInteger(people) && people >= LEAST_PEOPLE && people < WITHOUT_END) tried.add(people);
  return [...tried].sort((a, b) => a - b);
}

/** An interval without an upper end is wider than any other. */
function fallSteadily(widths: readonly { readonly width: number | null }[]): boolean {
  const wide = widths.map(({ width }) => width ?? Number.POSITIVE_INFINITY);
  return wide.every((width, i) => i === 0 || width <= wide[i - 1] * (1 + ROUNDING));
}
