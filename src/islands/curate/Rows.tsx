/** The rows made so far: what follows from each, what to do with it, and all of them as a file. */
import { useSignal } from '@preact/signals';
import { formatChange } from '../../figures/format.ts';
import { copyText } from '../../ui/copyText.ts';
import { ProblemList } from '../../ui/ProblemList.tsx';
import { Scroll } from '../../ui/Scroll.tsx';
import { TableHead } from '../../ui/TableHead.tsx';
import type { Cells } from './cells.ts';
import { type CuratingState, FILE_NAME } from './curate.state.ts';
import { lineOf, type RowReading } from './readCells.ts';
import { focusEntry, focusOn, outlineReading } from './words.ts';

const HEADING = 'curate-rows';

export function CurateRows({ state }: { readonly state: CuratingState }) {
  const rows = state.rows.value;
  const problems = state.readings.value.flatMap((reading) => [...reading.problems, ...reading.needed]);
  return (
    <section aria-labelledby={HEADING}>
      <h2 id={HEADING} tabIndex={-1}>
        Rows made so far
      </h2>
      {rows.length === 0 ? (
        <p class="small">None yet. A row that is added stays here, in this browser, until you remove it.</p>
      ) : (
        <>
          <Scroll label="Table of the rows">
            <table class="wide">
              <TableHead
                columns={[
                  ['Line', 'number'],
                  'Study',
                  'Arm',
                  'Measured',
                  ['n', 'number'],
                  ['Reserve', 'number'],
                  'Change',
                  'State',
                  'What to do',
                ]}
              />
              <tbody>
                {rows.map((cells, place) => (
                  <Row key={place} cells={cells} place={place} reading={state.readings.value[place]} state={state} />
                ))}
              </tbody>
            </table>
          </Scroll>
          {problems.length > 0 && <ProblemList heading="These rows do not go together yet" problems={problems} />}
          <TakeAway state={state} />
        </>
      )}
    </section>
  );
}

interface RowProps {
  readonly cells: Cells;
  readonly place: number;
  readonly reading: RowReading;
  readonly state: CuratingState;
}

function Row({ cells, place, reading, state }: RowProps) {
  const line = lineOf(place);
  const change = reading.numbers?.effects.find(({ effect }) => effect !== null);
  const isEdited = state.at.value === place;
  const remove = () => {
    state.remove(place);
    // The button is gone, or another row's by now.
    focusOn(HEADING);
  };
  const actions = [
    { name: 'Edit', label: `Edit line ${line}`, run: () => state.edit(place), focus: 'study' },
    { name: 'Next arm', label: `Next arm after line ${line}`, run: () => state.nextArm(place), focus: 'arm' },
    {
      name: 'Next measure',
      label: `Next measure after line ${line}`,
      run: () => state.nextMeasure(place),
      focus: 'outcome',
    },
  ] as const;
  return (
    <tr aria-current={isEdited ? 'true' : undefined}>
      <td class="number">{line}</td>
      <th scope="row">{cells.study}</th>
      <td>{cells.arm}</td>
      <td>
        {[cells.measure, cells.muscle, cells.hours_after && `${cells.hours_after} h after`].filter(Boolean).join(', ')}
      </td>
      <td class="number">{cells.n}</td>
      <td class="number">{cells.reserve_reps || '–'}</td>
      <td>
        {change?.effect && change.interval
          ? formatChange({ estimate: change.effect.y, ...change.interval }, change.metric)
          : 'none'}
      </td>
      <td>{isEdited ? 'in the form' : outlineReading(reading, false)}</td>
      <td>
        <span class="buttons">
          {actions.map(({ name, label, run, focus }) => (
            <button
              key={name}
              type="button"
              class="inline"
              aria-label={label}
              onClick={() => {
                run();
                focusEntry(focus);
              }}
            >
              {name}
            </button>
          ))}
          <button type="button" class="inline" aria-label={`Remove line ${line}`} onClick={remove}>
            Remove
          </button>
        </span>
      </td>
    </tr>
  );
}

function TakeAway({ state }: { readonly state: CuratingState }) {
  const withHeader = useSignal(true);
  const message = useSignal('');
  const text = state.csvOf(withHeader.value);
  const copy = async () => {
    message.value = (await copyText(text))
      ? `Copied ${withHeader.value ? 'with' : 'without'} the header row.`
      : 'The browser did not allow it; open the text below and copy it from there.';
  };
  const removeAll = () => {
    state.removeAll();
    focusOn(HEADING);
  };
  return (
    <>
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
          Remove all rows
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
