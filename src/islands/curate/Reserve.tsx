/** Reserve that the paper does not report, estimated for an arm in two ways, each with its spread. */
import { useSignal } from '@preact/signals';
import type { CuratingState } from './curate.state.ts';
import { CurateField } from './Field.tsx';
import { RESERVE_COLUMNS, type ReserveAnswer, type ReserveColumn } from './reserveEstimate.ts';
import { explainColumn, nameOfArm } from './words.ts';

const LABELS: Readonly<Record<ReserveColumn, string>> = {
  relation: 'Nearest exercise',
  share_pct: 'Share done, %',
  maximum: 'Repetitions possible',
  maximum_sd: 'SD of the repetitions possible',
};

export function CurateReserve({ state }: { readonly state: CuratingState }) {
  const { arms } = state.draft.value;
  const chosen = useSignal<number | null>(null);
  const arm = arms.find(({ id }) => id === chosen.value)?.id ?? arms[0].id;
  const load = state.factOf(arm, 'load_pct_1rm');
  const repetitions = state.factOf(arm, 'reps_per_set');
  return (
    <details>
      <summary>Estimate a reserve that the paper does not report</summary>
      <div class="control">
        <label for="reserve-arm">For which arm</label>
        <select
          id="reserve-arm"
          value={String(arm)}
          onChange={(event) => {
            chosen.value = Number(event.currentTarget.value);
          }}
        >
          {arms.map(({ id }) => (
            <option key={id} value={String(id)}>
              {nameOfArm(state.draft.value, id)}
            </option>
          ))}
        </select>
      </div>
      <div class="pair">
        <section aria-labelledby="reserve-from-load">
          <h3 id="reserve-from-load">From load and repetitions</h3>
          <p class="small">
            Repetitions possible at the arm’s load ({load || 'not entered'}&nbsp;% of 1RM) minus those done (
            {repetitions || 'not entered'}). The spread is that between people; the mean of a group is surer.
          </p>
          <Asked state={state} names={['relation']} />
          <Answer state={state} arm={arm} answer={state.fromLoad(arm)} label="from load and repetitions" />
        </section>
        <section aria-labelledby="reserve-from-share">
          <h3 id="reserve-from-share">From a share of the maximum</h3>
          <Asked state={state} names={['share_pct', 'maximum', 'maximum_sd']} />
          <Answer state={state} arm={arm} answer={state.fromShare()} label="from a share of the maximum" />
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
        const id = `reserve-${name}`;
        return (
          <CurateField
            key={name}
            id={id}
            label={LABELS[name]}
            column={column}
            help={explainColumn(column.description, column)}
            value={value}
            problems={isWrong ? [problem] : []}
            isEdited={state.edited.value === id}
            onTake={() => state.takeReserveName(id)}
            onEnter={(text) => state.askReserve(name, text)}
          />
        );
      })}
    </div>
  );
}

interface AnswerProps {
  readonly state: CuratingState;
  readonly arm: number;
  readonly answer: ReserveAnswer;
  readonly label: string;
}

function Answer({ state, arm, answer, label }: AnswerProps) {
  const { found, how, reason } = answer;
  if (!found) return <p class="small">No estimate: {reason}.</p>;
  const text = `Use it for ${nameOfArm(state.draft.value, arm)}`;
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
        <button type="button" onClick={() => state.useReserve(arm, found)} aria-label={`${text}: reserve ${label}`}>
          {text}
        </button>
      </p>
    </>
  );
}
