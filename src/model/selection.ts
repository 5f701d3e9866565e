/**
 * Which rows an analysis reads. Every row it does not read is listed with the reason, the first
 * that applies; included and excluded together are the whole table.
 */
import { wentBeyondFailure } from '../evidence/beyondFailure.ts';
import { computeEffects, type Effect } from '../evidence/effects.ts';
import type { Arm } from '../evidence/schema.ts';
import { sortCanonically } from './canonicalOrder.ts';
import type { ExcludedRow } from './result.ts';
import type { Adjustment, Settings } from './settings.ts';

export interface Selection {
  readonly effects: readonly Effect[];
  readonly excluded: readonly ExcludedRow[];
}

/** Value of a covariate in a row; null where the row does not report it. */
export const COVARIATES: Readonly<
  Record<Adjustment, { readonly name: string; readonly of: (arm: Arm) => number | null }>
> = {
  load: { name: 'load', of: (arm) => arm.load_pct_1rm },
  'weekly-sets': {
    name: 'weekly sets',
    of: (arm) => (arm.sets === null || arm.sessions_per_week === null ? null : arm.sets * arm.sessions_per_week),
  },
  weeks: { name: 'weeks', of: (arm) => arm.weeks },
  'training-status': { name: 'trained', of: (arm) => (arm.training_status === 'trained' ? 1 : 0) },
};

/** Effects of the rows that the settings keep, in one order whatever the table's (canonicalOrder.ts), and the others with their reasons, by line. */
export function selectRows(arms: readonly Arm[], settings: Settings): Selection {
  const excluded: ExcludedRow[] = [];
  const kept = arms.filter((arm) => {
    const reason = reasonToLeaveOut(arm, settings);
    if (reason) excluded.push({ line: arm.line, reason });
    return reason === null;
  });
  const computed = computeEffects(kept, {
    outcome: settings.outcome,
    metric: settings.metric,
    assumedCorrelation: settings.assumedCorrelation[settings.outcome],
  });
  return {
    effects: sortCanonically(computed.effects),
    excluded: [...excluded, ...computed.excluded].sort((a, b) => a.line - b.line),
  };
}

function reasonToLeaveOut(arm: Arm, settings: Settings): string | null {
  if (arm.outcome !== settings.outcome) return `measures ${arm.outcome}; this analysis is of ${settings.outcome}`;
  if (wentBeyondFailure(arm)) {
    return `went beyond failure (${arm.beyond_failure}), which is kept apart from the dose-response`;
  }
  if (arm.reserve_reps === null) return 'reserve is not known (`reserve_reps` is empty)';
  if (settings.split !== null && arm.load_pct_1rm === null) {
    return 'load is not known (`load_pct_1rm` is empty), so it is neither light nor heavy';
  }
  const missing = settings.adjust.find((name) => COVARIATES[name].of(arm) === null);
  if (missing) return `${COVARIATES[missing].name} is not known, which the adjustment needs`;
  return reasonOfFilter(arm, settings.include);
}

/** Why the reader's filters leave a row out; null where they keep it. */
export function reasonOfFilter(arm: Arm, include: Settings['include']): string | null {
  const lists: readonly (readonly [string, readonly string[], string | null])[] = [
    ['training status', include.trainingStatus, arm.training_status],
    ['sex', include.sex, arm.sex],
    ['joints', include.joints, arm.joints],
    ['muscle', include.muscle, arm.muscle],
    ['measure', include.measure, arm.measure],
    ['concerns', include.concerns, arm.concerns],
    ['design', include.design, arm.design],
    ['failure definition', include.failureDefinition, arm.failure_definition],
    ['reserve basis', include.reserveBasis, arm.reserve_basis],
  ];
  for (const [name, wanted, value] of lists) {
    if (wanted.length > 0 && (value === null || !wanted.includes(value))) {
      return `filtered out: ${name} is ${value ?? 'not reported'}`;
    }
  }
  if (include.yearFrom !== null && arm.year < include.yearFrom) return `filtered out: published ${arm.year}`;
  if (include.yearTo !== null && arm.year > include.yearTo) return `filtered out: published ${arm.year}`;
  if (include.withoutStudies.includes(arm.study)) return `filtered out: study ${arm.study} is left out by name`;
  return null;
}
