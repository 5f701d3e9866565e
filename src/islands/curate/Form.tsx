/** The row in hand, group by group of the schema, with the reserve helper and the choice of what is reported. */
import { ARM_COLUMNS, type ArmColumn } from '../../evidence/schema.ts';
import { formatChange } from '../../figures/format.ts';
import { countOf } from '../../numerics/countOf.ts';
import { ARM_NAMES, REPORTS } from './cells.ts';
import type { CuratingState } from './curate.state.ts';
import { CurateField } from './Field.tsx';
import { CurateReserve } from './Reserve.tsx';
import { lineOf } from './readCells.ts';
import { focusEntry, focusOn, outlineReading } from './words.ts';

/** Headings of the schema's groups, where a curator has other words for them. */
const HEADINGS: Readonly<Record<string, string>> = {
  study: 'The study',
  arm: 'The arm and its people',
  training: 'How the arm trained',
  'proximity to failure': 'How near to failure',
  outcome: 'What was measured',
  statistics: 'What the paper reports for this measure',
  provenance: 'Where it stands',
};
const GROUPS = [...new Set(ARM_NAMES.map((name) => ARM_COLUMNS[name].group))];

interface FormProps {
  readonly state: CuratingState;
  readonly known: Readonly<Record<string, readonly string[]>>;
}

export function CurateForm({ state, known }: FormProps) {
  const at = state.at.value;
  const { carried } = state.placed.value;
  const { problems, needed } = state.reading.value;
  const submit = () => {
    if (state.keep()) {
      focusEntry('arm');
      return;
    }
    const first = [...problems, ...needed].flatMap(({ column }) => ARM_NAMES.filter((name) => name === column))[0];
    if (!first) {
      // What is wrong is with the row as a whole: the status says how much, and the list below it what.
      focusOn('curate-status');
      return;
    }
    state.reveal(first);
    focusEntry(first);
  };
  const empty = () => {
    state.empty();
    focusEntry('study');
  };
  return (
    <form
      aria-labelledby="curate-form"
      class={state.curating.value.isExplained ? '' : 'terse'}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <h2 id="curate-form">{at === null ? 'A new row' : `Line ${lineOf(at)}`}</h2>
      <p>
        <label class="choice plain">
          <input
            type="checkbox"
            checked={state.curating.value.isExplained}
            onChange={(event) => state.explain(event.currentTarget.checked)}
          />
          Explain every entry, not only the one in hand
        </label>
      </p>
      {GROUPS.map((group) => (
        <fieldset key={group}>
          <legend>{HEADINGS[group] ?? group}</legend>
          {group === 'statistics' && <Reports state={state} />}
          <div class={group === 'statistics' ? 'fields by-twos' : 'fields'}>
            {columnsOf(group, state).map((name) => (
              <Entry key={name} name={name} state={state} known={known[name] ?? []} />
            ))}
          </div>
          {group === 'proximity to failure' && <CurateReserve state={state} />}
        </fieldset>
      ))}
      {carried.rows > 0 && (
        <p class="small">
          Saving also changes {carried.columns.join(', ')} in {countOf(carried.rows, 'other row')}.
        </p>
      )}
      <p class="buttons">
        <button type="submit">{at === null ? 'Add the row' : `Save line ${lineOf(at)}`}</button>
        <button type="button" disabled={state.isEmpty.value} onClick={empty}>
          Empty the form
        </button>
      </p>
      <p class="readback" aria-hidden="true">
        {headline(state)}
        {outlineReading(state.reading.value, state.isEmpty.value)}
      </p>
    </form>
  );
}

function Entry({ name, state, known }: { name: ArmColumn; state: CuratingState; known: readonly string[] }) {
  return (
    <CurateField
      id={`curate-${name}`}
      name={name}
      column={ARM_COLUMNS[name]}
      value={state.draft.value[name]}
      problems={state.reading.value.problems.filter(({ column }) => column === name)}
      known={known}
      isEdited={state.edited.value === name}
      onTake={() => state.take(name)}
      onEnter={(text) => state.enter(name, text)}
    />
  );
}

function Reports({ state }: { readonly state: CuratingState }) {
  const shown = state.reports.value;
  return (
    <fieldset class="reports">
      <legend class="small">
        Tick what is printed, and nothing that you worked out. Two means are needed, or one and the change; and an SD
        before, or how much the change varied.
      </legend>
      {REPORTS.map(({ name, label }) => (
        <label key={name} class="choice plain">
          <input
            type="checkbox"
            checked={shown.includes(name)}
            onChange={(event) => state.report(name, event.currentTarget.checked)}
          />
          {label}
        </label>
      ))}
    </fieldset>
  );
}

/** Columns of a group that are shown: of the statistics, those that the paper reports. */
function columnsOf(group: string, state: CuratingState): readonly ArmColumn[] {
  const names = ARM_NAMES.filter((name) => ARM_COLUMNS[name].group === group);
  if (group !== 'statistics') return names;
  const shown = REPORTS.filter(({ name }) => state.reports.value.includes(name));
  // A column that no kind of report names is always shown.
  return names.filter(
    (column) =>
      shown.some(({ columns }) => columns.some((name) => name === column)) ||
      !REPORTS.some(({ columns }) => columns.some((name) => name === column)),
  );
}

function headline(state: CuratingState) {
  const change = state.reading.value.numbers?.effects[0];
  if (!change?.effect || !change.interval) return null;
  return (
    <>
      <strong>{formatChange({ estimate: change.effect.y, ...change.interval }, change.metric)}</strong>{' '}
    </>
  );
}
