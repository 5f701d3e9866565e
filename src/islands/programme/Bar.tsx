/** What is done with the programme as a whole: going back, opening, saving; and what was done last. */
import type { ProgrammeState } from './programme.state.ts';
import { Step } from './Step.tsx';

export function ProgrammeBar({ state }: { readonly state: ProgrammeState }) {
  const { isOpen } = state.opening;
  return (
    <div class="entry bar">
      <p class="buttons">
        <button type="button" onClick={state.startNew}>
          Start a week of your own
        </button>
        <button type="button" aria-expanded={isOpen.value} onClick={() => state.opening.start()}>
          Paste or open
        </button>
        <button type="button" onClick={state.showExample}>
          Show the worked example
        </button>
        <button type="button" onClick={state.save}>
          Save all to a file
        </button>
        <button type="button" onClick={state.askForLifters}>
          Lifters and gym sheets
        </button>
      </p>
    </div>
  );
}

/** Stays in sight: what was done last, and the way back from it. */
export function ProgrammeSteps({ state }: { readonly state: ProgrammeState }) {
  const { past, future } = state.history.value;
  return (
    <div class="entry going-back">
      <p class="buttons">
        <Step word="Undo" label={past.at(-1)?.label} onClick={state.undo} />
        <Step word="Redo" label={future.at(-1)?.label} onClick={state.redo} />
      </p>
      <p class="small" role="status" id="done">
        {state.said.value}
      </p>
    </div>
  );
}
