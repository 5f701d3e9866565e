/** What is done with all lifters: opening, saving, forgetting, going back; and whether this browser keeps them. */
import { Step } from '../Step.tsx';
import type { LiftersState } from './lifters.state.ts';
import type { LiftersOpening } from './opening.state.ts';

interface Props {
  readonly state: LiftersState;
  readonly opening: LiftersOpening;
}

export function LiftersBar({ state, opening }: Props) {
  const { past, future } = state.history.value;
  const isEmpty = state.lifters.value.all.length === 0;
  return (
    <>
      <p class="buttons">
        <button type="button" aria-expanded={opening.isOpen.value} onClick={opening.start}>
          Paste or open lifters
        </button>
        <button type="button" aria-disabled={isEmpty} onClick={() => !isEmpty && state.save()}>
          Save lifters to a file
        </button>
        <button type="button" aria-disabled={isEmpty} onClick={() => !isEmpty && state.forget()}>
          Forget all lifters
        </button>
        <Step word="Undo" of=" for the lifters" label={past.at(-1)?.label} onClick={state.undo} />
        <Step word="Redo" of=" for the lifters" label={future.at(-1)?.label} onClick={state.redo} />
      </p>
      <p class="small" role="status" id="lifters-done">
        {state.said.value}
      </p>
      <Trouble state={state} />
    </>
  );
}

function Trouble({ state }: { readonly state: LiftersState }) {
  const { unread, notKept, lifters } = state;
  if (unread.value) {
    return (
      <div class="problem" role="alert">
        <p>
          What this browser kept of lifters cannot be read: {unread.value.problem}. It stays as it is, and nothing that
          you change here is kept, until you remove it.
        </p>
        <p class="buttons">
          <button type="button" onClick={state.saveUnread}>
            Save it as it is to a file
          </button>
          <button type="button" onClick={state.dropUnread}>
            Remove it
          </button>
        </p>
      </div>
    );
  }
  if (notKept.value === null || lifters.value.all.length === 0) return null;
  return (
    <p class="problem" role="alert">
      These lifters are gone once this page is left: {notKept.value}. Save them to a file.
    </p>
  );
}
