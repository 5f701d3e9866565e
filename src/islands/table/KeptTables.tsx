/** The tables that this browser keeps: each with its size and date, to be read, exported or deleted. */
import { useEffect, useRef } from 'preact/hooks';
import { ENCODING_NAMES } from '../../evidence/opening/encoding.ts';
import { countOf, countStudies } from '../../numerics/countOf.ts';
import type { KeptTable } from '../../ownTable/keptTables.ts';
import type { YourTableState } from './yourTable.state.ts';

export function KeptTables({ state }: { readonly state: YourTableState }) {
  const kept = state.kept.value ?? [];
  const inUse = state.inUse.value;
  return (
    <section aria-labelledby="kept-tables">
      <h2 id="kept-tables" tabIndex={-1}>
        Your tables in this browser
      </h2>
      <p>
        A table that you open is kept in this browser only, until you delete it here or clear what the browser keeps of
        this site. Export what you do not have elsewhere.
      </p>
      <p role="status">{state.done.value}</p>
      <ul class="kept-tables">
        {kept.map((table) => (
          <Kept
            key={table.version}
            state={state}
            table={table}
            isRead={inUse.kind === 'own' && inUse.about.version === table.version}
          />
        ))}
      </ul>
    </section>
  );
}

interface KeptProps {
  readonly state: YourTableState;
  readonly table: KeptTable;
  readonly isRead: boolean;
}

function Kept({ state, table, isRead }: KeptProps) {
  const isAsked = state.asked.value === table.version;
  const wasAsked = useRef(false);
  const keep = useRef<HTMLButtonElement>(null);
  const remove = useRef<HTMLButtonElement>(null);
  // The button that was pressed gives way to others: the focus goes to the harmless one, and back.
  useEffect(() => {
    if (isAsked) keep.current?.focus();
    else if (wasAsked.current) remove.current?.focus();
    wasAsked.current = isAsked;
  }, [isAsked]);
  const { name, rows, studies, bytes, opened, demonstration, changes = [] } = table;
  return (
    <li aria-current={isRead ? 'true' : undefined}>
      <p>
        <strong>{name}</strong>
        {isRead && <span class="tag"> the site reads this one</span>}
        <br />
        <span class="small">
          {countOf(rows, 'row')} of {countStudies(studies)}
          {demonstration && ', invented for demonstration'} · {showBytes(bytes)} · opened {showTime(opened)}
          <br />
          {stateOrigin(table)}
          {changes.length > 0 ? ` Changed since: ${changes.join('; ')}.` : ' As it was opened.'}
        </span>
      </p>
      {isAsked ? (
        <p class="buttons">
          <span>Delete {name} for good? This browser has no other copy.</span>
          <button ref={keep} type="button" onClick={() => (state.asked.value = null)}>
            Keep it
          </button>
          <button
            type="button"
            onClick={() => {
              document.getElementById('kept-tables')?.focus();
              void state.confirmDeleting(table);
            }}
          >
            Delete it
          </button>
        </p>
      ) : (
        <p class="buttons">
          {/* One button for both, so that it keeps the focus. */}
          <button type="button" onClick={() => void (isRead ? state.goBack() : state.takeUp(table))}>
            {isRead ? 'Go back to the site’s table' : 'Read this one'}
          </button>
          <button type="button" onClick={() => state.download(table)}>
            Export as CSV
          </button>
          <button ref={remove} type="button" onClick={() => (state.asked.value = table.version)}>
            Delete …
          </button>
        </p>
      )}
    </li>
  );
}

/** What its file was, where that was not CSV as UTF-8. */
function stateOrigin({ sheet, encoding }: KeptTable): string {
  if (sheet !== undefined) return `From the sheet “${sheet}”.`;
  return encoding ? `In ${ENCODING_NAMES[encoding]}.` : '';
}

/** “12 kB”, “3.4 MB”: thousands, as file managers show them. */
function showBytes(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  return bytes < 1_000_000 ? `${(bytes / 1000).toFixed(0)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}

function showTime(time: number): string {
  return new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' }).format(time);
}
