/** The grid of a measure: arms down, printed numbers across, and what follows from them at the end of each row. */
import { Fragment } from 'preact';
import { COLUMN_WORDS } from '../../evidence/columnWords.ts';
import { formatChange } from '../../figures/format.ts';
import { Scroll } from '../../ui/Scroll.tsx';
import type { CuratingState } from './curate.state.ts';
import { hasRow } from './draftRows.ts';
import { GridCell, pasteInto, RowProblems } from './GridCell.tsx';
import { moveByEnter } from './gridKeys.ts';
import { gridOfResults, listNumbers } from './grids.ts';
import { type MeasureDraft, placeAbove, readPlace } from './studyDraft.ts';
import { explain, nameOfArm, nameOfMeasure } from './words.ts';

interface ResultsProps {
  readonly state: CuratingState;
  readonly measure: MeasureDraft;
}

export function Results({ state, measure }: ResultsProps) {
  const draft = state.draft.value;
  const columns = listNumbers(measure);
  const grid = gridOfResults(draft, measure);
  const name = nameOfMeasure(draft, measure.id);
  const helpId = (column: string) => `help-${measure.id}-${column}`;
  const { value: at } = state.place;
  const explained = at?.of === 'result' && at.measure === measure.id ? at.column : null;
  if (columns.length === 0) return <p class="small">No kind of number is ticked.</p>;
  return (
    <>
      <Scroll label={`Numbers of ${name}`}>
        <table class="entries numbers-grid" onKeyDown={moveByEnter} onPaste={(event) => pasteInto(state, grid, event)}>
          <thead>
            <tr>
              <th scope="col">Arm</th>
              {columns.map((column) => (
                <th key={column} scope="col">
                  {COLUMN_WORDS[column].label}
                  <code class="column">{column}</code>
                  <span hidden id={helpId(column)}>
                    {explain(column)}
                  </span>
                </th>
              ))}
              <th scope="col">Change</th>
            </tr>
          </thead>
          <tbody>
            {draft.arms.map(({ id: arm }, row) => (
              <Fragment key={arm}>
                <tr>
                  <th scope="row">{nameOfArm(draft, arm)}</th>
                  {grid[row].map((place, cell) => (
                    <td key={place.column}>
                      <GridCell
                        state={state}
                        place={place}
                        label={`${COLUMN_WORDS[place.column].label}, ${nameOfArm(draft, arm)}`}
                        at={[row, cell]}
                        helpId={helpId(place.column)}
                        placeholder={
                          measure.own.includes(place.column)
                            ? readPlace(draft, placeAbove(draft, { arm, measure: measure.id }, place.column))
                            : ''
                        }
                      />
                    </td>
                  ))}
                  <td class="follows">{sayChange(state, arm, measure.id)}</td>
                </tr>
                <RowProblems
                  state={state}
                  places={grid[row]}
                  span={columns.length + 2}
                  nameOf={({ column }) => COLUMN_WORDS[column].label}
                />
              </Fragment>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="help" aria-hidden="true">
        {explained
          ? `${COLUMN_WORDS[explained].label}: ${explain(explained)}`
          : 'Enter goes down, Tab across; a block copied from a spreadsheet goes in from the cell in hand on.'}
      </p>
    </>
  );
}

/** What follows from a result, or why nothing does. */
function sayChange(state: CuratingState, arm: number, measure: number): string {
  if (!hasRow(state.draft.value, { arm, measure })) return 'no row';
  const row = state.reading.value.rows.find((one) => one.arm === arm && one.measure === measure);
  const change = row?.reading.numbers?.effects.find(({ effect }) => effect !== null);
  if (!change?.effect) return '–';
  return change.interval
    ? formatChange({ estimate: change.effect.y, ...change.interval }, change.metric)
    : 'no interval';
}
