/** Reserve that the paper does not report, estimated in two ways, each with its spread. */

import type { CuratingState } from './curate.state.ts';
import { CurateField } from './Field.tsx';
import { RESERVE_COLUMNS, type ReserveAnswer, type ReserveColumn } from './reserveEstimate.ts';

export function CurateReserve({ state }: { readonly state: CuratingState }) {
  const { load_pct_1rm: load, reps_per_set: repetitions } = state.draft.value;
  return (
    <details>
      <summary>Estimate a reserve that the paper does not report</summary>
      <div class="pair">
        <section aria-labelledby="reserve-from-load">
          <h3 id="reserve-from-load">From load and repetitions</h3>
          <p class="small">
            Repetitions possible at the row’s load ({load || 'not entered'}&nbsp;% of 1RM) minus those done (
            {repetitions || 'not entered'}). The spread is that between people; the mean of a group is surer.
          </p>
          <Asked state={state} names={['relation']} />
          <Answer state={state} answer={state.fromLoad.value} label="from load and repetitions" />
        </section>
        <section aria-labelledby="reserve-from-share">
          <h3 id="reserve-from-share">From a share of the maximum</h3>
          <Asked state={state} names={['share_pct', 'maximum', 'maximum_sd']} />
          <Answer state={state} answer={state.fromShare.value} label="from a share of the maximum" />
        </section>
      </div>
    </details>
  );
}

function Asked({ state, names }: { readonly state: CuratingState; readonly names: readonly ReserveColumn[] }) {
  return (
    <div class="fields">
      {names.map((name) => {
        const column = RESERVE_COLUMNS[name];
        const value = state.curating.value.reserve[name];
        const isWrong = value.trim() !== '' && !column.cell.safeParse(value.trim()).success;
        const problem = { value, expected: column.expected, remedy: null };
        return (
          <CurateField
            key={name}
            id={`reserve-${name}`}
            name={name}
            column={column}
            value={value}
            problems={isWrong ? [problem] : []}
            known={[]}
            isEdited={state.edited.value === name}
            onTake={() => state.take(name)}
            onEnter={(text) => state.askReserve(name, text)}
          />
        );
      })}
    </div>
  );
}

interface AnswerProps {
  readonly state: CuratingState;
  readonly answer: ReserveAnswer;
  readonly label: string;
}

function Answer({ state, answer, label }: AnswerProps) {
  const { found, how, reason } = answer;
  if (!found) return <p class="small">No estimate: {reason}.</p>;
  return (
    <>
      <p>
        <strong>
          {found.reserve_reps} in reserve, SD {found.reserve_sd}
        </strong>
        <br />
        <span class="small">{how}.</span>
      </p>
      <p>
        <button type="button" onClick={() => state.takeReserve(found)} aria-label={`Use it: reserve ${label}`}>
          Use it
        </button>
      </p>
    </>
  );
}
