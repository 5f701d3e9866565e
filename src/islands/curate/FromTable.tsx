/** Takes a study of the reader's own table into the form, to be corrected and put back. */
import { useSignal } from '@preact/signals';
import { countOf } from '../../numerics/countOf.ts';
import { focusOn } from '../../ui/focusOn.ts';
import type { TakingState } from './fromTable.state.ts';

export function FromTable({ state, tablePage }: { readonly state: TakingState; readonly tablePage: string }) {
  const now = state.taking.value;
  const chosen = useSignal('');
  const study = now.step === 'choosing' ? chosen.value || (now.studies[0]?.study ?? '') : '';
  return (
    <details
      class="from-table"
      aria-busy={now.step === 'working'}
      onToggle={(event) => {
        if (event.currentTarget.open && now.step !== 'choosing') void state.start();
      }}
    >
      <summary>Take up a study of your table</summary>
      <div role="status">
        {now.step === 'working' && <p>Reading your table…</p>}
        {now.step === 'no table' && (
          <p>
            No table of yours is in use. <a href={tablePage}>Open one</a> first.
          </p>
        )}
        {now.step === 'failed' && <p class="problem">Nothing was taken up: {now.reason}.</p>}
      </div>
      {now.step === 'choosing' && (
        <div class="row-of-controls">
          <div class="control">
            <label for="take-study">Study of {now.table}</label>
            <select
              id="take-study"
              value={study}
              onChange={(event) => {
                chosen.value = event.currentTarget.value;
              }}
            >
              {now.studies.map(({ study: name, rows }) => (
                <option key={name} value={name}>
                  {name}, {countOf(rows, 'row')}
                </option>
              ))}
            </select>
          </div>
          <p class="buttons">
            <button
              type="button"
              onClick={() => {
                chosen.value = '';
                void state.choose(study).then(() => focusOn('entry-study'));
              }}
            >
              Take it up
            </button>
          </p>
        </div>
      )}
    </details>
  );
}
