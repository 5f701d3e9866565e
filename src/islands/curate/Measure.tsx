/** A measure: what was measured, which kinds of number the paper prints for it, and these for every arm. */
import { COLUMN_WORDS } from '../../evidence/columnWords.ts';
import type { ArmColumn } from '../../evidence/schema.ts';
import { focusOn } from '../../ui/focusOn.ts';
import type { CuratingState } from './curate.state.ts';
import { EntryField } from './Field.tsx';
import { listMeasureFacts } from './grids.ts';
import { REPORT_GROUPS, REPORTS } from './kinds.ts';
import { Results } from './Results.tsx';
import type { MeasureDraft } from './studyDraft.ts';
import { nameOfMeasure } from './words.ts';

/** What is offered to differ between the arms of a measure. */
const OFTEN_OWN: readonly ArmColumn[] = ['n', 'source_place', 'note'];

interface MeasureProps {
  readonly state: CuratingState;
  readonly measure: MeasureDraft;
  readonly known: Readonly<Record<string, readonly string[]>>;
}

export function Measure({ state, measure, known }: MeasureProps) {
  const { id } = measure;
  const draft = state.draft.value;
  return (
    <fieldset class="measure">
      <legend>
        Measure {draft.measures.indexOf(measure) + 1}
        {measure.cells.measure?.trim() ? `: ${nameOfMeasure(draft, id)}` : ''}
      </legend>
      <div class="fields">
        {listMeasureFacts(measure).map((column) => (
          <EntryField
            key={column}
            state={state}
            place={{ of: 'measure', measure: id, column }}
            known={known[column] ?? []}
          />
        ))}
      </div>
      <Reports state={state} measure={measure} />
      <Results state={state} measure={measure} />
      {draft.measures.length > 1 && (
        <p class="buttons">
          <button
            type="button"
            class="inline"
            aria-label={`Remove ${nameOfMeasure(draft, id)}`}
            onClick={() => {
              state.removeMeasure(id);
              focusOn('add-measure');
            }}
          >
            Remove this measure
          </button>
        </p>
      )}
    </fieldset>
  );
}

function Reports({ state, measure }: Pick<MeasureProps, 'state' | 'measure'>) {
  const { id, reports, own } = measure;
  const columns = [...OFTEN_OWN, ...own.filter((column) => !OFTEN_OWN.includes(column))];
  return (
    <div class="kinds">
      <p class="small">Tick what is printed, and nothing that you worked out. The numbers follow below.</p>
      {REPORT_GROUPS.map((group) => (
        <fieldset key={group} class="reports">
          <legend>{group}</legend>
          {REPORTS.filter((kind) => kind.group === group).map(({ name, label }) => (
            <label key={name} class="choice plain">
              <input
                type="checkbox"
                checked={reports.includes(name)}
                onChange={(event) => state.setReport(id, name, event.currentTarget.checked)}
              />
              {label}
            </label>
          ))}
        </fieldset>
      ))}
      <fieldset class="reports">
        <legend>Entered for every result here</legend>
        {columns.map((column) => (
          <label key={column} class="choice plain">
            <input
              type="checkbox"
              checked={own.includes(column)}
              onChange={(event) => state.setOwn(id, column, event.currentTarget.checked)}
            />
            {COLUMN_WORDS[column].label}
          </label>
        ))}
      </fieldset>
    </div>
  );
}
