/** The table of studies as it stands on the page: read into rows, given buttons, put in order. */
import type { Sorting, StudyRow, StudyTableState } from './sorting.state.ts';

interface Read {
  readonly rows: readonly StudyRow[];
  readonly columns: readonly string[];
}

/** @param facts names of the data attributes that hold what can be chosen */
export function readTable(table: HTMLTableElement, facts: readonly string[]): Read {
  const heads = headsOf(table);
  return {
    columns: heads.map((head) => labelOf(head)),
    rows: bodyRowsOf(table).map((row) => ({
      words: row.dataset.words ?? '',
      facts: Object.fromEntries(facts.map((name) => [name, splitWords(row.dataset[name] ?? '', name)])),
      values: heads.map((head, column) => {
        const cell = row.cells[column];
        if (head.dataset.sort === 'words') return cell.textContent?.trim() ?? null;
        return cell.dataset.value === undefined ? null : Number(cell.dataset.value);
      }),
    })),
  };
}

/** Puts a button into each column's head; what is undone at the end is returned. */
export function addSortButtons(table: HTMLTableElement, state: StudyTableState): () => void {
  const undo = headsOf(table).map((head, column) => {
    const text = labelOf(head);
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'sort';
    button.textContent = text;
    button.addEventListener('click', () => state.sortBy(column));
    head.replaceChildren(button);
    return () => head.replaceChildren(text);
  });
  return () => {
    for (const step of undo) step();
  };
}

/** @param original the rows in the order of the page, which places count in */
export function showRows(
  table: HTMLTableElement,
  original: readonly HTMLTableRowElement[],
  shown: readonly number[],
  sorting: Sorting | null,
): void {
  const visible = new Set(shown);
  const hidden = original.map((_, place) => place).filter((place) => !visible.has(place));
  for (const place of hidden) original[place].hidden = true;
  for (const place of shown) original[place].hidden = false;
  table.tBodies[0].append(...[...shown, ...hidden].map((place) => original[place]));
  headsOf(table).forEach((head, column) => {
    if (sorting?.column === column) head.setAttribute('aria-sort', sorting.descending ? 'descending' : 'ascending');
    else head.removeAttribute('aria-sort');
  });
}

export function bodyRowsOf(table: HTMLTableElement): HTMLTableRowElement[] {
  return [...table.tBodies[0].rows];
}

/** Heads of the columns in the order of the columns. */
function headsOf(table: HTMLTableElement): HTMLTableCellElement[] {
  return [...table.querySelectorAll<HTMLTableCellElement>('thead th[data-column]')].sort(
    (a, b) => Number(a.dataset.column) - Number(b.dataset.column),
  );
}

function labelOf(head: HTMLTableCellElement): string {
  return head.textContent?.trim() ?? '';
}

/** Only outcomes are several words; “not reported” is one. */
function splitWords(text: string, fact: string): string[] {
  return fact === 'outcomes' ? text.split(' ') : [text];
}
