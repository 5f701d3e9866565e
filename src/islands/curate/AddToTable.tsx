/** Adds the rows to the reader's own table, or starts one with them, after asking what is to be asked. */
import { useRef } from 'preact/hooks';
import { countOf, countStudies } from '../../numerics/countOf.ts';
import { ProblemList } from '../../ui/ProblemList.tsx';
import type { AddingState } from './addToTable.state.ts';

interface AddProps {
  readonly state: AddingState;
  readonly shipped: { readonly studies: number; readonly demonstration: boolean };
  /** Addresses of pages that read the own table. */
  readonly pages: { readonly table: string; readonly evidence: string };
}

export function AddToTable({ state, shipped, pages }: AddProps) {
  const now = state.adding.value;
  const opener = useRef<HTMLButtonElement>(null);
  /** Answers a question: its buttons go, and the focus goes back to the one that began it. */
  const answer = (by: () => unknown) => () => {
    opener.current?.focus();
    by();
  };
  return (
    <section aria-labelledby="add-to-table" aria-busy={now.step === 'working'}>
      <h2 id="add-to-table">Add to your table</h2>
      <p>
        Your table is kept in this browser only. Once it is there the site reads it in place of its own, until you go
        back to the site’s.
      </p>
      <p class="buttons">
        <button ref={opener} type="button" onClick={() => void state.start()}>
          Add the rows to your table
        </button>
        <span role="status">{now.step === 'working' && 'Reading the whole table…'}</span>
      </p>
      <div role="status">
        {now.step === 'asking for a start' && (
          <>
            <p>There is no table of yours in this browser yet. Start it</p>
            <p class="buttons">
              <button type="button" onClick={answer(state.startWithRows)}>
                with these rows alone
              </button>
              <button type="button" onClick={answer(state.startWithCopy)}>
                with a copy of the site’s {countStudies(shipped.studies)}
              </button>
              <button type="button" onClick={answer(state.cancel)}>
                Not now
              </button>
            </p>
            {shipped.demonstration && (
              <p class="small">
                The site’s studies are invented for demonstration. With a copy of them your table stays a demonstration,
                and says so.
              </p>
            )}
          </>
        )}
        {now.step === 'asking about columns' && (
          <>
            <p>
              {now.joined.facts.name} has columns that the site does not read: {now.joined.unread.join(', ')}. They will
              not be in the table that is kept here; your file stays as it is.
            </p>
            <p class="buttons">
              <button type="button" onClick={answer(state.confirm)}>
                Add without them
              </button>
              <button type="button" onClick={answer(state.cancel)}>
                Not now
              </button>
            </p>
          </>
        )}
        {now.step === 'asking about another' && (
          <>
            <p>
              Nothing was added yet: since you began,{' '}
              {now.now ? `${now.now.name} was taken up in the place of the table before` : 'your table was put away'}.
            </p>
            <p class="buttons">
              <button type="button" onClick={answer(state.start)}>
                {now.now ? `Add the rows to ${now.now.name}` : 'Start another table'}
              </button>
              <button type="button" onClick={answer(state.cancel)}>
                Not now
              </button>
            </p>
          </>
        )}
        {now.step === 'added' && (
          <p>
            {sayAdded(now.joined)}: {now.joined.facts.name} now has {countOf(now.joined.facts.rows, 'row')} of{' '}
            {countStudies(now.joined.facts.studies)}. See <a href={pages.table}>your table</a> or{' '}
            <a href={pages.evidence}>the evidence</a>. The studies stay in the form too; added again, they take their
            own place there.
          </p>
        )}
      </div>
      {now.step === 'refused' && <ProblemList heading={`Nothing was added: ${now.reason}`} problems={now.problems} />}
      {now.step === 'failed' && (
        <p class="problem" role="alert">
          Nothing was added: {now.reason}.
        </p>
      )}
    </section>
  );
}

/** “Added 2 rows”, “put back 3 rows”, or both. */
function sayAdded({ added, putBack }: { readonly added: number; readonly putBack: number }): string {
  if (putBack === 0) return `Added ${countOf(added, 'row')}`;
  const back = `Put back ${countOf(putBack, 'row')}`;
  return added === 0 ? back : `${back} and added ${countOf(added, 'row')}`;
}
