/** The lifters, each to be unfolded, and the entry of another one. */
import { useState } from 'preact/hooks';
import { formatExpectation } from '../../../evidence/problem.ts';
import { MOST_LIFTERS } from '../../../practice/lifters/lifter.ts';
import type { ProgrammeState } from '../programme.state.ts';
import { LifterCard } from './LifterCard.tsx';
import type { LiftersState } from './lifters.state.ts';
import type { SheetsState } from './sheets.state.ts';

interface Props {
  readonly programme: ProgrammeState;
  readonly state: LiftersState;
  readonly sheets: SheetsState;
}

export function LifterList({ programme, state, sheets }: Props) {
  const { all } = state.lifters.value;
  return (
    <>
      {all.length > 0 && (
        <ol class="lifter-list" aria-label="Lifters">
          {all.map((lifter) => (
            <LifterCard key={lifter.id} programme={programme} state={state} sheets={sheets} lifter={lifter} />
          ))}
        </ol>
      )}
      {all.length < MOST_LIFTERS && <AddLifter state={state} />}
    </>
  );
}

function AddLifter({ state }: { readonly state: LiftersState }) {
  const [name, setName] = useState('');
  const refused = state.refused.value?.where === 'new' ? state.refused.value.refusal : null;
  return (
    <form
      class="control add-lifter"
      onSubmit={(event) => {
        event.preventDefault();
        if (state.add(name)) setName('');
        else document.getElementById('lifter-name')?.focus();
      }}
    >
      <label for="lifter-name">Name of another lifter</label>
      <span class="with-button">
        <input
          id="lifter-name"
          type="text"
          dir="auto"
          autocomplete="off"
          spellcheck={false}
          value={name}
          aria-invalid={refused !== null}
          aria-describedby={refused ? 'lifter-name-refused' : 'lifter-name-help'}
          onInput={(event) => setName(event.currentTarget.value)}
        />
        <button type="submit">Add the lifter</button>
      </span>
      <span class="help" id="lifter-name-help">
        In words of your own, “Lifter A” for instance.
      </span>
      <span class="help refused" role="status" id="lifter-name-refused">
        {refused && formatExpectation(refused)}
      </span>
    </form>
  );
}
