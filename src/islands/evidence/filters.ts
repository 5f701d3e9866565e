/** Which studies the Evidence page fits, as data: the filters with their words, and what ticking one changes. */
import { upperFirst } from '../../figures/firstLetter.ts';
import { FILTER_KEYS, FILTERS, type FilterKey } from '../../model/filters.ts';
import type { Settings } from '../../model/settings.ts';
import type { FilterOptions, Vocabulary } from '../analysis/filterOptions.ts';
import type { Change } from './controlList.ts';

export interface ListControl {
  readonly kind: 'list';
  readonly id: string;
  readonly label: string;
  readonly help: string;
  readonly key: FilterKey;
  readonly options: readonly string[];
}

/** The filters between whose words a table leaves a choice; one whose column is empty in all rows is not shown. */
export function listFilters(options: FilterOptions): readonly ListControl[] {
  return FILTER_KEYS.filter((key) => options[key].length > 0).map((key) => ({
    kind: 'list',
    id: key,
    key,
    label: upperFirst(FILTERS[key].name),
    help: FILTERS[key].effect,
    options: options[key],
  }));
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
