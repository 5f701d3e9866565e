/**
 * What a planned study does where no curve is fitted today: there is nothing to draw it from, so that no interval is
 * foreseen; but whether a fit could then be made is a matter of what is counted (carriedFit.ts), and is said.
 */
import { countStudies } from '../../numerics/countOf.ts';
import { fitEffects } from '../bandFit.ts';
import { countDistinctStudies } from '../counts.ts';
import type { Settings } from '../settings.ts';
import { LEAST_TARGET_STUDIES } from '../target.ts';
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
