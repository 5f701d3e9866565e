/**
 * Which rows an analysis reads. Every row it does not read is listed with the reason, the first
 * that applies; included and excluded together are the whole table.
 */
import { computeEffects, type Effect } from '../evidence/effects.ts';
import type { Arm } from '../evidence/schema.ts';
import { wentBeyondFailure } from '../evidence/vocabulary.ts';
import { sortCanonically } from './canonicalOrder.ts';
import { FILTER_KEYS, FILTERS, wordOf } from './filters.ts';
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
  if (arm.later) {
    return `was measured after ${arm.weeks} weeks; line ${arm.later.line} has the same after ${arm.later.weeks}, the end of the training`;
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
  for (const key of FILTER_KEYS) {
    const wanted: readonly string[] = include[key];
    const word = wordOf(arm, key);
    if (wanted.length > 0 && (word === null || !wanted.includes(word))) {
      return `filtered out by ${FILTERS[key].name}: ${word ?? 'not reported'}`;
    }
  }
  if (include.yearFrom !== null && arm.year < include.yearFrom) return `filtered out: published ${arm.year}`;
  if (include.yearTo !== null && arm.year > include.yearTo) return `filtered out: published ${arm.year}`;
  if (include.withoutStudies.includes(arm.study)) return `filtered out: study ${arm.study} is left out by name`;
  return null;
}
