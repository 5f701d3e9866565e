/** Adds the rows to the reader's own table, or starts one with them, after asking what is to be asked. */
import type { AddingState } from './addToTable.state.ts';
import { ProblemList } from './ProblemList.tsx';

interface AddProps {
  readonly state: AddingState;
  readonly siteTable: { readonly studies: number; readonly rows: number; readonly demonstration: boolean };
  readonly pages: { readonly table: string; readonly evidence: string };
}

export function AddToTable({ state, siteTable, pages }: AddProps) {
  const now = state.adding.value;
  return (
    <section aria-labelledby="add-to-table" aria-busy={now.step === 'working'}>
      <h2 id="add-to-table">Add to your table</h2>
      <p>
        Your table is kept in this browser only. Once it is there the site reads it in place of its own, until you go
        back to the site’s.
      </p>
      <p class="buttons">
        <button type="button" disabled={now.step === 'working'} onClick={() => void state.start()}>
          Add the rows to your table
        </button>
        {now.step === 'working' && <span role="status">Reading the whole table…</span>}
      </p>
      {now.step === 'asking for a start' && (
        <div role="status">
          <p>There is no table of yours in this browser yet. Start it</p>
          <p class="buttons">
            <button type="button" onClick={() => void state.startWithRows()}>
              with these rows alone
            </button>
            <button type="button" onClick={() => void state.startWithCopy()}>
              with a copy of the site’s {siteTable.studies} studies
            </button>
            <button type="button" onClick={state.cancel}>
              Not now
            </button>
          </p>
          {siteTable.demonstration && (
            <p class="small">
              The site’s studies are invented for demonstration. With a copy of them your table stays a demonstration,
              and says so.
            </p>
          )}
        </div>
      )}
      {now.step === 'asking about columns' && (
        <div role="status">
          <p>
            {now.joined.table.name} has columns that the site does not read: {now.joined.unread.join(', ')}. They will
            not be in the table that is kept here; your file stays as it is.
          </p>
          <p class="buttons">
            <button type="button" onClick={() => void state.confirm()}>
              Add without them
            </button>
            <button type="button" onClick={state.cancel}>
              Not now
            </button>
          </p>
        </div>
      )}
      {now.step === 'added' && (
        <p role="status">
          Added {now.joined.added} {now.joined.added === 1 ? 'row' : 'rows'}: {now.joined.table.name} now has{' '}
          {now.joined.rows} rows of {now.joined.studies} {now.joined.studies === 1 ? 'study' : 'studies'}. See{' '}
          <a href={pages.table}>your table</a> or <a href={pages.evidence}>the evidence</a>. The rows stay listed above
          until you remove them.
        </p>
      )}
      {now.step === 'refused' && <ProblemList heading={`Nothing was added: ${now.reason}`} problems={now.problems} />}
      {now.step === 'failed' && (
        <p class="problem" role="alert">
          Nothing was added: {now.reason}.
        </p>
      )}
    </section>
  );
}
