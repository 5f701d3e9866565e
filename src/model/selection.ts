/**
 * Which rows an analysis reads. Every row it does not read is listed with the reason, the first
 * that applies; included and excluded together are the whole table.
 */
import { type ComputedEffects, computeEffects, type Effect } from '../evidence/effects.ts';
import { type PooledSpread, poolSpreads } from '../evidence/pooledSpread.ts';
import type { Arm } from '../evidence/schema.ts';
import { wentBeyondFailure } from '../evidence/vocabulary.ts';
import { sortCanonically } from './canonicalOrder.ts';
import { FILTERS, FILTERS_OF_EFFECTS, FILTERS_OF_ROWS, type FilterKey, wordOf } from './filters.ts';
import type { ExcludedRow } from './result.ts';
import type { Adjustment, Settings } from './settings.ts';

export interface Selection {
  readonly effects: readonly Effect[];
  readonly excluded: readonly ExcludedRow[];
}

/** Value of a covariate in a row; null where the row does not report it. */
export const COVARIATES: Readonly<
  Record<
    Adjustment,
    {
      readonly name: string;
      /** What is not known where it has no value, where that is not its name. */
      readonly what?: string;
      readonly of: (arm: Arm) => number | null;
    }
  >
> = {
  load: { name: 'load', of: (arm) => arm.load_pct_1rm },
  'weekly-sets': {
    name: 'weekly sets',
    of: (arm) => (arm.sets === null || arm.sessions_per_week === null ? null : arm.sets * arm.sessions_per_week),
  },
  weeks: { name: 'weeks', of: (arm) => arm.weeks },
  'training-status': {
    name: 'trained',
    what: 'training status',
    of: ({ training_status: status }) => (status === null ? null : status === 'trained' ? 1 : 0),
  },
};

/** Effects of the rows that the settings keep, in one order whatever the table's (canonicalOrder.ts), and the others with their reasons, by line. */
export function selectRows(arms: readonly Arm[], settings: Settings): Selection {
  const excluded: ExcludedRow[] = [];
  const kept = arms.filter((arm) => {
    const reason = reasonToLeaveOut(arm, settings);
    if (reason) excluded.push({ line: arm.line, reason });
    return reason === null;
  });
  const computed = computeKeptEffects(kept, arms, settings, settings.outcome);
  return {
    effects: sortCanonically(computed.effects),
    excluded: [...excluded, ...computed.excluded].sort((a, b) => a.line - b.line),
  };
}

/**
 * Effects of rows that were kept, and of those only what the filters of effects keep.
 *
 * @param arms all rows of the table, whose spread may stand in for a missing one
 */
export function computeKeptEffects(
  kept: readonly Arm[],
  arms: readonly Arm[],
  settings: Settings,
  outcome: Settings['outcome'],
): ComputedEffects {
  const { effects, excluded } = computeEffects(kept, {
    outcome,
    metric: settings.metric,
    assumedCorrelation: settings.assumedCorrelation[outcome],
    pooled: poolFor(arms, settings),
  });
  const left: { line: number; reason: string }[] = [];
  const chosen = effects.filter((effect) => {
    const reason = reasonOfWords(effect, FILTERS_OF_EFFECTS, settings.include);
    if (reason) left.push({ line: effect.arm.line, reason });
    return reason === null;
  });
  return { effects: chosen, excluded: [...excluded, ...left] };
}

/** What stands in for SDs that rows do not print, as the settings ask for it. */
export function poolFor(arms: readonly Arm[], { missingSds }: Pick<Settings, 'missingSds'>): PooledSpread | null {
  return missingSds === 'off' ? null : poolSpreads(arms, missingSds);
}

function reasonToLeaveOut(arm: Arm, settings: Settings): string | null {
  if (arm.outcome !== settings.outcome) return `measures ${arm.outcome}; this analysis is of ${settings.outcome}`;
  if (wentBeyondFailure(arm)) {
    return `went beyond failure (${arm.beyond_failure}), which is kept apart from the dose-response`;
  }
  if (arm.later) {
    return `was measured after ${arm.weeks} weeks; line ${arm.later.line} has the same after ${arm.later.weeks}, the end of the training`;
  }
  if (arm.reserve_reps === null) {
    return arm.velocity_loss_pct === null
      ? 'reserve is not known (`reserve_reps` is empty)'
      : `reserve is not known: a velocity loss of ${arm.velocity_loss_pct} % is printed, and no reserve is made of it`;
  }
  if (settings.split !== null && arm.load_pct_1rm === null) {
    return 'load is not known (`load_pct_1rm` is empty), so it is neither light nor heavy';
  }
  const missing = settings.adjust.find((name) => COVARIATES[name].of(arm) === null);
  if (missing) {
    const { name, what = name } = COVARIATES[missing];
    return `${what} is not known, which the adjustment needs`;
  }
  return reasonOfFilter(arm, settings.include);
}

/** Why the reader's filters leave a row out; null where they keep it. */
export function reasonOfFilter(arm: Arm, include: Settings['include']): string | null {
  const ofWords = reasonOfWords(arm, FILTERS_OF_ROWS, include);
  if (ofWords) return ofWords;
  if (include.yearFrom !== null && arm.year < include.yearFrom) return `filtered out: published ${arm.year}`;
  if (include.yearTo !== null && arm.year > include.yearTo) return `filtered out: published ${arm.year}`;
  if (include.withoutStudies.includes(arm.study)) return `filtered out: study ${arm.study} is left out by name`;
  return null;
}

function reasonOfWords(row: Arm | Effect, keys: readonly FilterKey[], include: Settings['include']): string | null {
  for (const key of keys) {
    const wanted: readonly string[] = include[key];
    const word = wordOf(row, key);
    if (wanted.length > 0 && (word === null || !wanted.includes(word))) {
      return `filtered out by ${FILTERS[key].name}: ${word ?? 'not reported'}`;
    }
  }
  return null;
}
