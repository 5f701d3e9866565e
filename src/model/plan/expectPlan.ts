/**
 * What a planned study is expected to do to the answer of each band: its interval, growth kept, and whole repetitions,
 * before and after.
 *
 * Everything stands on the table as it is: its rows stay, the new ones are drawn from the fitted curve with the robust
 * error of its coefficients, the study's deviation from τ², the rows' from ω² and their sampling errors, and the
 * interval is the one the site would then show, τ² and ω² held as fitted (`simulatePlan` estimates them anew).
 */
import { fitEffects, rangeOf } from '../bandFit.ts';
import { inferKeptShare } from '../keptShare.ts';
import { NEAR_FAILURE } from '../target.ts';
import { type AddedStudy, addStudy } from './addedStudy.ts';
import { KEPT_RESERVES, listInferences, listKept, listTargets } from './bandOutcomes.ts';
import { chanceOfMove, type ExpectedTarget, expectKept, expectTarget, shareWholes } from './expectedTarget.ts';
import { measureModelError } from './modelError.ts';
import type { BandExpectation, PlanExpectation } from './planExpectation.ts';
import { assume, makePlannedRows, type PlannedRow } from './plannedRows.ts';
import { checkPlan, countPlanned, type PlannedStudy } from './plannedStudy.ts';
import type { Planning, PlanningBand } from './planningBase.ts';
import { explainOpening, refuseContinued } from './refusedBand.ts';

/** @returns problems of the plan in words, or what it is expected to do in every band; nothing is thrown for data */
export function expectPlan(planning: Planning, plan: PlannedStudy): PlanExpectation {
  const people = countPlanned(plan);
  const nothing = (problems: readonly string[]): PlanExpectation => ({
    problems,
    assumptions: null,
    people,
    bands: [],
  });
  const problems = checkPlan(plan, planning.bands);
  if (problems.length > 0) return nothing(problems);
  const assumptions = assume(planning, plan);
  if (typeof assumptions === 'string') return nothing([assumptions]);
  const bands: BandExpectation[] = [];
  for (const band of planning.bands) {
    const rows = makePlannedRows(planning, band, plan, assumptions);
    if (typeof rows === 'string') return nothing([rows]);
    bands.push(expectBand(planning, band, rows, people));
  }
  return { problems, assumptions, people, bands };
}

/** The expected target of a band with these rows added: for callers that ask of many plans. */
export function expectTargetWith(
  { settings }: Planning,
  band: PlanningBand,
  rows: readonly PlannedRow[],
  outcomes?: number,
): ExpectedTarget {
  if (rows.length === 0) return expectTarget([band.target]);
  const added = addStudy(band, rows, settings);
  return expectTarget(listTargets(added, listInferences(added, outcomes), settings));
}

/** Why nothing can be foreseen with these rows in a band that has a fit; null where it can. */
export function refuseAdded({ settings }: Planning, band: PlanningBand, rows: readonly PlannedRow[]): string | null {
  const continued = refuseContinued(band, rows);
  if (continued) return continued;
  const { failure } = fitEffects([...band.fit.effects, ...rows.map(({ effect }) => effect)], {
    ...settings,
    answerOnly: true,
  }).outcome;
  return failure ? `with this study no fit would be made: ${failure.reason}` : null;
}

function expectBand(
  planning: Planning,
  band: PlanningBand,
  rows: readonly PlannedRow[],
  people: number,
): BandExpectation {
  const { settings } = planning;
  const before = expectTarget([band.target]);
  const common = {
    band: band.name,
    arms: rows.length,
    variances: rows.map(({ effect: { arm, v } }) => ({
      reserve: arm.reserve_reps ?? 0,
      load: arm.load_pct_1rm,
      variance: v,
    })),
    tau2: band.scatter?.tau2 ?? null,
    omega2: band.scatter?.omega2 ?? null,
    today: band.target,
    before,
  };
  const unsaid = {
    after: null,
    narrowing: null,
    narrowingPerPerson: null,
    kept: [],
    chanceOfMove: null,
    wholes: [],
    modelError: null,
  };
  if (!band.fit.outcome.fit || !band.scatter) {
    const reason = rows.length > 0 ? explainOpening(band, rows, settings) : band.target.reason;
    return { ...common, ...unsaid, reason };
  }
  const refusal = rows.length > 0 ? refuseAdded(planning, band, rows) : null;
  if (refusal) return { ...common, ...unsaid, reason: refusal };
  const added = rows.length > 0 ? addStudy(band, rows, settings) : null;
  const inferences = added ? listInferences(added) : [];
  const targets = added ? listTargets(added, inferences, settings) : [band.target];
  const after = expectTarget(targets);
  const wholes = shareWholes(targets);
  const narrowing = before.width === null || after.width === null ? null : before.width - after.width;
  return {
    ...common,
    after,
    narrowing,
    narrowingPerPerson: narrowing === null || people === 0 ? null : narrowing / people,
    kept: expectKeptShares(band, added, inferences, settings.confidence),
    chanceOfMove: chanceOfMove(band.target.whole, wholes),
    wholes,
    modelError: measureModelError(band, added, settings),
    reason: explainAfter(before, after) ?? band.target.reason,
  };
}

function expectKeptShares(
  { fit: today }: PlanningBand,
  added: AddedStudy | null,
  inferences: ReturnType<typeof listInferences>,
  confidence: number,
): BandExpectation['kept'] {
  const studied = rangeOf(today.reserves);
  const { fit } = today.outcome;
  // Where nobody trained to reserve 0 there is nothing that a share could be of.
  if (!fit || !studied || studied.low > NEAR_FAILURE) return [];
  return KEPT_RESERVES.filter((reserve) => reserve <= studied.high).map((reserve) => {
    const before = expectKept(reserve, [inferKeptShare(fit.inference, today.at(reserve), today.at(0), confidence)]);
    return { before, after: added ? expectKept(reserve, listKept(added, inferences, reserve, confidence)) : before };
  });
}

function explainAfter(before: ExpectedTarget, { refused, width, widthMissing }: ExpectedTarget): string | null {
  const chance = `${Math.round(100 * (1 - refused))} of 100 outcomes`;
  if (before.widthMissing === 'no-target' && refused < 1)
    return `there is no target today; with this study there is one in ${chance}`;
  if (before.widthMissing === 'no-upper-end' && width !== null)
    return 'the interval has no upper end today; with this study it has one in most outcomes';
  if (widthMissing === 'no-target') return `with this study there is a target in ${chance} only`;
  if (widthMissing === 'no-upper-end')
    return 'with this study too the interval has no upper end in at least half of the outcomes';
  return null;
}
