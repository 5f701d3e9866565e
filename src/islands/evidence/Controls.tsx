/** Settings and filters of the Evidence page, each with the sentence that says what it does. */

import { useEffect, useMemo } from 'preact/hooks';
import { Asleep } from '../../ui/Asleep.tsx';
import type { Vocabulary } from '../analysis/filterOptions.ts';
import { type Control, optionsWith, SETTING_CONTROLS } from './controlList.ts';
import type { EvidenceState } from './evidence.state.ts';
import { type ListControl, limitYears, listFilters, tickedWords, toggleFilter } from './filters.ts';

export function EvidenceControls({ state }: { readonly state: EvidenceState }) {
  // Wherever on the page a slider is let go; a touch that turns into scrolling lets go, too.
  useEffect(() => {
    const release = () => state.hold(false);
    const ends = ['pointerup', 'pointercancel', 'blur'];
    for (const end of ends) addEventListener(end, release);
    return () => {
      for (const end of ends) removeEventListener(end, release);
    };
  }, [state]);
  // One and the same as long as the state is.
  const choices = useMemo(() => <Choices state={state} />, [state]);
  return (
    <form
      class="controls"
      aria-label="Choices"
      onSubmit={(event) => event.preventDefault()}
      onPointerDown={({ target }) => state.hold(target instanceof HTMLInputElement && target.type === 'range')}
    >
      <Asleep>{choices}</Asleep>
    </form>
  );
}

function Choices({ state }: { readonly state: EvidenceState }) {
  const { options, years } = state.fitting.vocabulary.value;
  return (
    <>
      <details open>
        <summary>Settings</summary>
        <div class="controls">
          {SETTING_CONTROLS.filter(({ id }) => id !== 'split' || state.settings.value.split !== null).map((control) => (
            <OneControl key={control.id} control={control} state={state} />
          ))}
        </div>
      </details>
      <details>
        <summary>Which studies</summary>
        <div class="controls">
          {listFilters(options).map((filter) => (
            <Filter key={filter.key} filter={filter} state={state} />
          ))}
          <Years state={state} years={years} />
        </div>
      </details>
      <div class="buttons">
        <button type="button" onClick={state.reset}>
          Back to the defaults
        </button>
        <button type="button" onClick={() => void state.address.copyLink()}>
          Copy the link to this
        </button>
        <span class="small" role="status">
          {state.address.copied.value}
        </span>
      </div>
    </>
  );
}

function OneControl({ control, state }: { readonly control: Control; readonly state: EvidenceState }) {
  const { id, label, help } = control;
  const field = `evidence-${id}`;
  return (
    <div class="control">
      <label for={field}>
        {label}
        {control.kind === 'number' && (
          <span class="value">
            : {control.read(state.settings.value)} {control.unit}
          </span>
        )}
      </label>
      {control.kind === 'number' ? (
        <input
          id={field}
          type="range"
          min={control.min}
          max={control.max}
          step={control.step}
          value={control.read(state.settings.value)}
          aria-valuetext={`${control.read(state.settings.value)} ${control.unit}`.trim()}
          aria-describedby={`${field}-help`}
          onInput={(event) => state.change(control.write(event.currentTarget.valueAsNumber))}
        />
      ) : (
        <select
          id={field}
          value={control.read(state.settings.value)}
          aria-describedby={`${field}-help`}
          onChange={(event) => state.change(control.write(event.currentTarget.value))}
        >
          {optionsWith(control.options, control.read(state.settings.value)).map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
      <span class="help" id={`${field}-help`}>
        {help}
      </span>
    </div>
  );
}

function Filter({ filter, state }: { readonly filter: ListControl; readonly state: EvidenceState }) {
  const { key, label, help, options } = filter;
  const ticked = tickedWords(filter, state.settings.value);
  return (
    <fieldset class="control" aria-describedby={`evidence-${key}-help`}>
      <legend class="label">{label}</legend>
      {options.length === 0 && <p class="small">No row of this table says.</p>}
      {options.map((word) => (
        <label key={word} class="choice plain">
          <input
            type="checkbox"
            checked={ticked.includes(word)}
            // The last one cannot be taken away.
            disabled={ticked.length === 1 && ticked[0] === word}
            onChange={() => state.change(toggleFilter(filter, word))}
          />
          <span>{word}</span>
        </label>
      ))}
      <span class="help" id={`evidence-${key}-help`}>
        {help}
      </span>
    </fieldset>
  );
}

function Years({ state, years }: { readonly state: EvidenceState } & Pick<Vocabulary, 'years'>) {
  const { yearFrom, yearTo } = state.settings.value.include;
  const ends = [
    { key: 'yearFrom', label: 'Published from', value: yearFrom ?? years.low },
    { key: 'yearTo', label: 'Published to', value: yearTo ?? years.high },
  ] as const;
  return (
    <>
      {ends.map(({ key, label, value }) => (
        <div key={key} class="control">
          <label for={`evidence-${key}`}>
            {label}: <span class="value">{value}</span>
          </label>
          <input
            id={`evidence-${key}`}
            type="range"
            min={years.low}
            max={years.high}
            step="1"
            value={value}
            onInput={(event) => state.change(limitYears(key, event.currentTarget.valueAsNumber, years))}
          />
        </div>
      ))}
    </>
  );
}
