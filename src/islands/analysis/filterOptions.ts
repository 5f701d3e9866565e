/** What a table offers to choose by: the words of its columns, and its years. */
import type { Arm } from '../../evidence/schema.ts';
import { rangeOf } from '../../model/bandFit.ts';
import { type FilterKey, mapFilters, wordOf } from '../../model/filters.ts';

/** What of the table each filter can choose between. */
export type FilterOptions = Readonly<Record<FilterKey, readonly string[]>>;

export interface Vocabulary {
  readonly options: FilterOptions;
  readonly years: { readonly low: number; readonly high: number };
}

/** Fatigue has no dose-response to filter, so its words are not offered. */
export function listVocabulary(arms: readonly Arm[]): Vocabulary {
  const rows = arms.filter(({ outcome }) => outcome !== 'fatigue');
  return {
    options: mapFilters((key) => [...new Set(rows.flatMap((arm) => wordOf(arm, key) ?? []))].sort()),
    years: rangeOf(arms.map(({ year }) => year)) ?? { low: 0, high: 0 },
  };
}
