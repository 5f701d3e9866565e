/** What a table offers to choose by: the words of its columns, and its years. */
import { computeEffect, type Effect } from '../../evidence/effects.ts';
import type { Arm } from '../../evidence/schema.ts';
import { rangeOf } from '../../model/bandFit.ts';
import { FILTERS_OF_EFFECTS, type FilterKey, mapFilters, wordOf } from '../../model/filters.ts';
import { defaultSettings } from '../../model/settings.ts';

/** What of the table each filter can choose between. */
export type FilterOptions = Readonly<Record<FilterKey, readonly string[]>>;

export interface Vocabulary {
  readonly options: FilterOptions;
  readonly years: { readonly low: number; readonly high: number };
}

/** Fatigue has no dose-response to filter, so its words are not offered. */
export function listVocabulary(arms: readonly Arm[]): Vocabulary {
  const rows = arms.filter(({ outcome }) => outcome !== 'fatigue');
  const effects = rows.flatMap((arm): Effect | [] => {
    const { metric, assumedCorrelation } = defaultSettings;
    const effect = computeEffect(arm, { metric, assumedCorrelation: assumedCorrelation[arm.outcome] });
    return typeof effect === 'string' ? [] : effect;
  });
  const wordsOf = (key: FilterKey) =>
    (FILTERS_OF_EFFECTS.includes(key) ? effects : rows).flatMap((row) => wordOf(row, key) ?? []);
  return {
    options: mapFilters((key) => [...new Set(wordsOf(key))].sort()),
    years: rangeOf(arms.map(({ year }) => year)) ?? { low: 0, high: 0 },
  };
}
