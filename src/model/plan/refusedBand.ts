/**
 * What a planned study does where there is nothing to draw it from, so that no interval is foreseen: where no curve is
 * fitted today (whether a fit could then be made is a matter of what is counted, carriedFit.ts, and is said), and
 * nearer to failure than anybody trained.
 */
import { countStudies } from '../../numerics/countOf.ts';
import { fitEffects, rangeOf } from '../bandFit.ts';
import { countDistinctStudies } from '../counts.ts';
import type { Settings } from '../settings.ts';
import { LEAST_TARGET_STUDIES, NEAR_FAILURE } from '../target.ts';
import type { PlannedRow } from './plannedRows.ts';
import type { PlanningBand } from './planningBase.ts';

/** @param rows of the plan in this band, one at least, as if they showed the mean effect of the others */
export function explainOpening({ fit: today }: PlanningBand, rows: readonly PlannedRow[], settings: Settings): string {
  const effects = [...today.effects, ...rows.map(({ effect }) => effect)];
  const { failure } = fitEffects(effects, { ...settings, answerOnly: true }).outcome;
  const now = today.outcome.failure?.reason ?? 'no row is left to fit';
  const unforeseen = `no interval can be foreseen, since no curve is fitted today: ${now}`;
  if (failure) return `${unforeseen}. With this study no fit is made either: ${failure.reason}`;
  const studies = countDistinctStudies(effects);
  const target =
    studies < LEAST_TARGET_STUDIES
      ? `; a target needs ${LEAST_TARGET_STUDIES} studies and there would be ${countStudies(studies)}`
      : '';
  return `${unforeseen}. With this study a fit may be made${target}`;
}

/**
 * Why what an arm nearer to failure than any here would find cannot be foreseen; null where it can. It would be drawn
 * from the curve continued to where nobody trained, and growth at reserve 0, which every target is a share of, would be
 * that one guess.
 *
 * @param rows of the plan in this band
 */
export function refuseContinued({ fit: { reserves } }: PlanningBand, rows: readonly PlannedRow[]): string | null {
  const studied = rangeOf(reserves);
  const planned = rangeOf(rows.flatMap(({ effect: { arm } }) => arm.reserve_reps ?? []));
  if (!studied || !planned || studied.low <= NEAR_FAILURE || planned.low >= studied.low) return null;
  return `what an arm with ${planned.low} in reserve would find cannot be foreseen: nobody here trained to reserve 0, and the curve says nothing below ${studied.low}, the least reserve studied`;
}
