/** State of the table of studies: by which column it is sorted, what is looked for, and which rows that shows. */
import { computed, signal } from '@preact/signals';
import { countStudies } from '../../numerics/countOf.ts';

/** A row as the page has it. */
export interface StudyRow {
  /** What a search looks through: study, exercises, muscles, measures. */
  readonly words: string;
  /** Words of each fact that can be chosen: design, concerns, … */
  readonly facts: Readonly<Record<string, readonly string[]>>;
  /** What each column is sorted by; null where the study has no such number. */
  readonly values: readonly (number | string | null)[];
}

export interface Sorting {
  /** Place of the column, from 0. */
  readonly column: number;
  readonly descending: boolean;
}

interface StudyTableChoices {
  /** null for the order of the page. */
  readonly sorting: Sorting | null;
  readonly sought: string;
  /** The chosen word of each fact; a fact without one shows all. */
  readonly chosen: Readonly<Record<string, string>>;
}

/**
 * @param rows in the order of the page
 * @param columns names of the columns, for the status line
 * @param choices that stand at first: those made in the table that this one takes the place of
 */
export function createStudyTable(
  rows: readonly StudyRow[],
  columns: readonly string[],
  choices: StudyTableChoices = { sorting: null, sought: '', chosen: {} },
) {
  const sorting = signal(choices.sorting);
  const sought = signal(choices.sought);
  const chosen = signal(choices.chosen);
  const searchable = rows.map(({ words }) => fold(words));

  /** Places of the rows that are shown, in the order in which they are. */
  const shown = computed(() => {
    const parts = fold(sought.value).split(/\s+/u).filter(Boolean);
    const facts = Object.entries(chosen.value).filter(([, word]) => word !== '');
    const kept = rows
      .map((_, place) => place)
      .filter(
        (place) =>
          parts.every((part) => searchable[place].includes(part)) &&
          facts.every(([name, word]) => rows[place].facts[name]?.includes(word)),
      );
    const by = sorting.value;
    if (!by) return kept;
    return kept.sort((a, b) => compare(rows[a].values[by.column], rows[b].values[by.column], by.descending) || a - b);
  });
  const status = computed(() => {
    const by = sorting.value;
    const order = by ? `, by ${columns[by.column]}, ${by.descending ? 'falling' : 'rising'}` : '';
    return `${shown.value.length} of ${countStudies(rows.length)}${order}`;
  });
  const changed = computed(
    () => sorting.value !== null || sought.value !== '' || Object.values(chosen.value).some((word) => word !== ''),
  );

  /** Rising first; the same column again turns the order round. */
  const sortBy = (column: number) => {
    const now = sorting.value;
    sorting.value = { column, descending: now?.column === column && !now.descending };
  };
  const choose = (fact: string, word: string) => {
    chosen.value = { ...chosen.value, [fact]: word };
  };
  const reset = () => {
    sorting.value = null;
    sought.value = '';
    chosen.value = {};
  };
  const choicesNow = (): StudyTableChoices => ({
    sorting: sorting.peek(),
    sought: sought.peek(),
    chosen: chosen.peek(),
  });
  return { choicesNow, sorting, sought, chosen, shown, status, changed, sortBy, choose, reset };
}

export type StudyTableState = ReturnType<typeof createStudyTable>;

/** What is missing stands last in both directions. */
function compare(a: number | string | null, b: number | string | null, descending: boolean): number {
  if (a === null || b === null) return (a === null ? 1 : 0) - (b === null ? 1 : 0);
  const order = typeof a === 'number' && typeof b === 'number' ? a - b : String(a).localeCompare(String(b), 'en');
  return descending ? -order : order;
}

/** Small letters without marks, so that “muller” finds “Müller”. */
function fold(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}
