/** Which studies the Evidence page fits, as data: the filters with their words, and what ticking one changes. */
import type { Settings } from '../../model/settings.ts';
import type { FilterKey, FilterOptions, Vocabulary } from '../analysis/filterOptions.ts';
import type { Change } from './controlList.ts';

export interface ListControl {
  readonly kind: 'list';
  readonly id: string;
  readonly label: string;
  readonly help: string;
  readonly key: FilterKey;
  readonly options: readonly string[];
}

const FILTERS: readonly Omit<ListControl, 'options' | 'kind' | 'id'>[] = [
  {
    key: 'trainingStatus',
    label: 'Training status',
    help: 'Trained people grow less, whatever the reserve; the slope may differ too.',
  },
  { key: 'sex', label: 'Sex', help: 'Fewer studies, wider bands; differences are rarely larger than that.' },
  { key: 'joints', label: 'Joints moved', help: 'Single-joint exercise is easier to take to failure.' },
  { key: 'muscle', label: 'Muscle', help: 'One muscle is often left with too few studies to fit.' },
  { key: 'measure', label: 'Measure', help: 'Thickness and area need not change by the same share.' },
  {
    key: 'concerns',
    label: 'Concerns about bias',
    help: "The curator's judgement. Leaving out high concerns should not turn the slope round.",
  },
  { key: 'design', label: 'Design', help: 'Within-person designs compare limbs of one person and are more precise.' },
  {
    key: 'failureDefinition',
    label: 'Failure meant',
    help: 'A stricter definition calls the same set closer to failure.',
  },
  {
    key: 'reserveBasis',
    label: 'Reserve known from',
    help: 'Prescriptions are not always followed; measured reserve usually steepens the slope.',
  },
];

export function listFilters(options: FilterOptions): readonly ListControl[] {
  return FILTERS.map((filter) => ({ ...filter, kind: 'list', id: filter.key, options: options[filter.key] }));
}

/** Words of a filter that are ticked: all of them where none is chosen, since an empty list keeps every row. */
export function tickedWords(filter: ListControl, { include }: Settings): readonly string[] {
  const chosen: readonly string[] = include[filter.key];
  return chosen.length === 0 ? filter.options : filter.options.filter((word) => chosen.includes(word));
}

/** A filter with one word ticked or not; the last one stays, since an empty list would keep every row. */
export function toggleFilter(filter: ListControl, word: string): Change {
  return (settings) => {
    const ticked = tickedWords(filter, settings);
    const next = filter.options.filter((one) => ticked.includes(one) !== (one === word));
    if (next.length === 0) return settings;
    const list = next.length === filter.options.length ? [] : next;
    return { ...settings, include: { ...settings.include, [filter.key]: list } };
  };
}

/** The first or last year of publication kept; at the end of the table's own years there is no limit. */
export function limitYears(key: 'yearFrom' | 'yearTo', year: number, years: Vocabulary['years']): Change {
  const isNoLimit = year === (key === 'yearFrom' ? years.low : years.high);
  return (settings) => ({ ...settings, include: { ...settings.include, [key]: isNoLimit ? null : year } });
}
