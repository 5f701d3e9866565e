/** The rows of all studies as text: to copy, to download, to look at. */
import { useSignal } from '@preact/signals';
import { copyText } from '../../ui/copyText.ts';
import { focusOn } from '../../ui/focusOn.ts';
import { type CuratingState, FILE_NAME } from './curate.state.ts';
import { STUDIES_HEADING } from './words.ts';

export function TakeAway({ state }: { readonly state: CuratingState }) {
  const withHeader = useSignal(true);
  const message = useSignal('');
  const text = state.csvOf(withHeader.value);
  const isUnready = [...state.readings.value.values()].some(
    ({ problems, needed }) => problems.length + needed.length > 0,
  );
  const copy = async () => {
    message.value = (await copyText(text))
      ? `Copied ${withHeader.value ? 'with' : 'without'} the header row.`
      : 'The browser did not allow it; open the text below and copy it from there.';
  };
  const removeAll = () => {
    state.removeAll();
    focusOn(STUDIES_HEADING);
  };
  return (
    <>
      {isUnready && (
        <p class="small">
          Something is still to be mended or needed; the rows are given as they stand, and a table is refused with them.
        </p>
      )}
      <p class="buttons">
        <button type="button" onClick={() => void copy()}>
          Copy as CSV
        </button>
        <label class="choice plain">
          <input
            type="checkbox"
            checked={withHeader.value}
            onChange={(event) => {
              withHeader.value = event.currentTarget.checked;
            }}
          />
          with the header row
        </label>
        <button type="button" onClick={state.download}>
          Download {FILE_NAME}
        </button>
        <button type="button" onClick={removeAll}>
          Remove all studies
        </button>
      </p>
      <p class="small" role="status">
        {message.value}
      </p>
      <details>
        <summary>The rows as text</summary>
        <textarea readOnly rows={6} wrap="off" aria-label="The rows as CSV" value={text} />
      </details>
    </>
  );
}
