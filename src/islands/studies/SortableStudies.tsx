/** Sorts and filters the table of studies that the page already has; without JavaScript the table stands as it is. */
import { effect } from '@preact/signals';
import { useEffect, useRef, useState } from 'preact/hooks';
import { addSortButtons, bodyRowsOf, readTable, showRows } from './sorting.rows.ts';
import { createStudyTable, type StudyTableState } from './sorting.state.ts';

interface Fact {
  /** Name of the data attribute of a row. */
  readonly name: string;
  readonly label: string;
  readonly options: readonly string[];
}

interface Props {
  /** Id of the table on the page. */
  readonly table: string;
  readonly facts: readonly Fact[];
}

export function StudyTable({ table: id, facts }: Props) {
  const [state, setState] = useState<StudyTableState | null>(null);
  const before = useRef<StudyTableState | null>(null);
  // A long page may begin before its table is there to the last row.
  const [isWhole, setWhole] = useState(() => globalThis.document?.readyState !== 'loading');
  useEffect(() => {
    if (isWhole) return;
    const begin = () => setWhole(true);
    // It may have come whole since it was drawn.
    if (document.readyState !== 'loading') begin();
    document.addEventListener('DOMContentLoaded', begin);
    return () => document.removeEventListener('DOMContentLoaded', begin);
  }, [isWhole]);
  // The facts are new where the page has another table under the same id.
  useEffect(() => {
    if (!isWhole) return;
    const table = document.getElementById(id);
    if (!(table instanceof HTMLTableElement)) throw new Error(`no table on the page has the id ${id}`);
    const { rows, columns } = readTable(
      table,
      facts.map(({ name }) => name),
    );
    const original = bodyRowsOf(table);
    const made = createStudyTable(rows, columns, before.current?.choicesNow());
    before.current = made;
    setState(made);
    const removeButtons = addSortButtons(table, made);
    const stop = effect(() => showRows(table, original, made.shown.value, made.sorting.value));
    return () => {
      stop();
      removeButtons();
    };
  }, [id, facts, isWhole]);
  return state && <Filter state={state} facts={facts} table={id} />;
}

function Filter({ state, facts, table }: { readonly state: StudyTableState } & Props) {
  const { sought, chosen, status, changed } = state;
  const search = useRef<HTMLInputElement>(null);
  const reset = () => {
    // The button cannot be pressed again, and would lose the focus.
    search.current?.focus();
    state.reset();
  };
  return (
    <form class="study-filter" onSubmit={(event) => event.preventDefault()} aria-label="Sort and filter the studies">
      <div class="control sought">
        <label for={`${table}-sought`}>Find a study, exercise, muscle or measure</label>
        <input
          id={`${table}-sought`}
          ref={search}
          type="search"
          value={sought.value}
          onInput={(event) => {
            sought.value = event.currentTarget.value;
          }}
          autocomplete="off"
        />
      </div>
      {facts.map(({ name, label, options }) => (
        <div class="control" key={name}>
          <label for={`${table}-${name}`}>{label}</label>
          <select
            id={`${table}-${name}`}
            value={chosen.value[name] ?? ''}
            onChange={(event) => state.choose(name, event.currentTarget.value)}
          >
            <option value="">all</option>
            {options.map((option) => (
              <option key={option} value={option}>
                {option}
              </option>
            ))}
          </select>
        </div>
      ))}
      <p class="small status">
        <span role="status">{status.value}</span>{' '}
        <button type="button" disabled={!changed.value} onClick={reset}>
          Show all as at first
        </button>
      </p>
    </form>
  );
}
