/** What a table offers to choose by: the words of its columns, and its years. */
import type { Arm } from '../../evidence/schema.ts';
import { rangeOf } from '../../model/bandFit.ts';
import type { Settings } from '../../model/settings.ts';

/** Filters that are lists of words. */
export type FilterKey = Exclude<keyof Settings['include'], 'yearFrom' | 'yearTo' | 'withoutStudies'>;

/** What of the table the filters can choose between. */
export type FilterOptions = Readonly<Record<FilterKey, readonly string[]>>;

export interface Vocabulary {
  readonly options: FilterOptions;
  readonly years: { readonly low: number; readonly high: number };
}

const COLUMN_OF = {
  trainingStatus: 'training_status',
  sex: 'sex',
  joints: 'joints',
  muscle: 'muscle',
  measure: 'measure',
  concerns: 'concerns',
  design: 'design',
  failureDefinition: 'failure_definition',
  reserveBasis: 'reserve_basis',
} as const satisfies Readonly<Record<FilterKey, keyof Arm>>;

/** Fatigue has no dose-response to filter, so its words are not offered. */
export function listVocabulary(arms: readonly Arm[]): Vocabulary {
  const rows = arms.filter(({ outcome }) => outcome !== 'fatigue');
  const wordsOf = (column: keyof Arm) => [...new Set(rows.flatMap((arm) => arm[column] ?? []))].sort();
  return {
    options: Object.fromEntries(Object.entries(COLUMN_OF).map(([key, column]) => [key, wordsOf(column)])) as Record<
      FilterKey,
      string[]
    >,
    years: rangeOf(arms.map(({ year }) => year)) ?? { low: 0, high: 0 },
  };
}
