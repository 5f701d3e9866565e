/** The study in hand: its facts, its arms, its measures. */

import { formatChange } from '../../figures/format.ts';
import { countOf } from '../../numerics/countOf.ts';
import { focusOn } from '../../ui/focusOn.ts';
import { Arms } from './Arms.tsx';
import { type CuratingState, nameStudy } from './curate.state.ts';
import { EntryField } from './Field.tsx';
import { listStudyFacts } from './grids.ts';
import { Measure } from './Measure.tsx';
import { findRow } from './Reading.tsx';
import { CurateReserve } from './Reserve.tsx';
import { idOf } from './studyDraft.ts';
import { nameOfArm, nameOfMeasure, outlineReading } from './words.ts';

interface FormProps {
  readonly state: CuratingState;
  readonly known: Readonly<Record<string, readonly string[]>>;
}

export function CurateForm({ state, known }: FormProps) {
  const draft = state.draft.value;
  const { isExplained } = state.curating.value;
  const next = () => {
    state.startNext();
    focusOn('entry-study');
  };
  return (
    <form
      aria-labelledby="curate-form"
      class={isExplained ? '' : 'terse'}
      noValidate
      onSubmit={(event) => event.preventDefault()}
    >
      <h2 id="curate-form">{draft.cells.study?.trim() ? nameStudy(draft) : 'A study'}</h2>
      <p>
        <label class="choice plain">
          <input
            type="checkbox"
            checked={isExplained}
            onChange={(event) => state.explain(event.currentTarget.checked)}
          />
          Explain every entry, not only the one in hand
        </label>
      </p>
      <fieldset>
        <legend>The study</legend>
        <div class="fields">
          {listStudyFacts(draft).map((column) => (
            <EntryField key={column} state={state} place={{ of: 'study', column }} />
          ))}
        </div>
      </fieldset>
      <Arms state={state} known={known} />
      <CurateReserve state={state} />
      {draft.measures.map((measure) => (
        <Measure key={measure.id} state={state} measure={measure} known={known} />
      ))}
      <p class="buttons">
        <button
          type="button"
          id="add-measure"
          onClick={() => focusOn(idOf({ of: 'measure', measure: state.addMeasure(), column: 'outcome' }))}
        >
          Add a measure
        </button>
        <button type="button" disabled={state.isEmpty.value} onClick={next}>
          Next study
        </button>
      </p>
      <p class="small">{sayRows(state)}</p>
      <p class="readback" aria-hidden="true">
        {headline(state)}
        {outlineReading(state.reading.value, state.isEmpty.value)}
      </p>
    </form>
  );
}

/** The change that follows from the result in hand. */
function headline(state: CuratingState) {
  const change = findRow(state)?.reading.numbers?.effects[0];
  if (!change?.effect || !change.interval) return null;
  return (
    <>
      <strong>{formatChange({ estimate: change.effect.y, ...change.interval }, change.metric)}</strong>{' '}
    </>
  );
}

/** How many rows the study makes, and which results make none. */
function sayRows(state: CuratingState): string {
  const draft = state.draft.value;
  const { rows, empty } = state.reading.value;
  const made = `The study makes ${countOf(rows.length, 'row')}.`;
  if (empty.length === 0) return made;
  const none = empty.map(({ arm, measure }) => `${nameOfArm(draft, arm)} in ${nameOfMeasure(draft, measure)}`);
  return `${made} Nothing is entered, so that there is no row, for ${none.join('; ')}.`;
}
