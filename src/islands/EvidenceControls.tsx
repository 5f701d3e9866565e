/** Settings and filters of the Evidence page, each with the sentence that says what it does. */
import type { Control, FilterOptions, ListControl } from './evidence.controls.ts';
import { listFilters, SETTING_CONTROLS, toggleFilter } from './evidence.controls.ts';
import type { EvidenceState } from './evidence.state.ts';

interface Props {
  readonly state: EvidenceState;
  readonly options: FilterOptions;
  readonly years: { readonly low: number; readonly high: number };
}

export function EvidenceControls({ state, options, years }: Props) {
  return (
    <form class="controls" aria-label="Choices" onSubmit={(event) => event.preventDefault()}>
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
        <button type="button" onClick={() => navigator.clipboard.writeText(location.href)}>
          Copy the link to this
        </button>
      </div>
    </form>
  );
}

function OneControl({ control, state }: { readonly control: Control; readonly state: EvidenceState }) {
  const { id, label, help } = control;
  const field = `evidence-${id}`;
  const value = control.read(state.settings.value);
  return (
    <div class="control">
      <label for={field}>
        {label}
        {control.kind === 'number' && (
          <span class="value">
            : {value} {control.unit}
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
          value={value}
          aria-valuetext={`${value} ${control.unit}`}
          aria-describedby={`${field}-help`}
          onInput={(event) => state.change(control.write(event.currentTarget.valueAsNumber))}
        />
      ) : (
        <select
          id={field}
          value={value}
          aria-describedby={`${field}-help`}
          onChange={(event) => state.change(control.write(event.currentTarget.value))}
        >
          {control.options.map((option) => (
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
  const chosen: readonly string[] = state.settings.value.include[key];
  return (
    <fieldset class="control">
      <legend class="label">{label}</legend>
      {options.map((word) => (
        <label key={word} class="choice plain">
          <input
            type="checkbox"
            checked={chosen.length === 0 || chosen.includes(word)}
            onChange={() => state.change(toggleFilter(key, word, options))}
          />
          <span>{word}</span>
        </label>
      ))}
      <span class="help">{help}</span>
    </fieldset>
  );
}

function Years({ state, years }: Pick<Props, 'state' | 'years'>) {
  const { yearFrom, yearTo } = state.settings.value.include;
  const setYear = (key: 'yearFrom' | 'yearTo', value: number, whole: number) =>
    state.change((settings) => ({
      ...settings,
      include: { ...settings.include, [key]: value === whole ? null : value },
    }));
  const slider = (key: 'yearFrom' | 'yearTo', label: string, value: number, whole: number) => (
    <div class="control">
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
        onInput={(event) => setYear(key, event.currentTarget.valueAsNumber, whole)}
      />
    </div>
  );
  return (
    <>
      {slider('yearFrom', 'Published from', yearFrom ?? years.low, years.low)}
      {slider('yearTo', 'Published to', yearTo ?? years.high, years.high)}
    </>
  );
}
