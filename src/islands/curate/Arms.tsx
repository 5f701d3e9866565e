/** The arms side by side: a fact that all of them share is entered once, one that differs for each. */
import { COLUMN_WORDS } from '../../evidence/columnWords.ts';
import { ARM_COLUMNS } from '../../evidence/schema.ts';
import { focusOn } from '../../ui/focusOn.ts';
import { Scroll } from '../../ui/Scroll.tsx';
import { sharesPeople } from './cohorts.ts';
import type { CuratingState } from './curate.state.ts';
import { GridCell, pasteInto, RowProblems } from './GridCell.tsx';
import { moveByEnter } from './gridKeys.ts';
import { type FactRow, gridOfFacts, listFacts } from './grids.ts';
import { EXTRAS } from './kinds.ts';
import { idOf, type Place } from './studyDraft.ts';
import { explain, nameOfArm } from './words.ts';

interface ArmsProps {
  readonly state: CuratingState;
  readonly known: Readonly<Record<string, readonly string[]>>;
}

export function Arms({ state, known }: ArmsProps) {
  const draft = state.draft.value;
  const { arms } = draft;
  const grid = gridOfFacts(draft);
  /** Label, arms, and what can be done with the fact. */
  const span = arms.length + 2;
  let row = 0;
  return (
    <fieldset>
      <legend>The arms, side by side</legend>
      <Extras state={state} />
      <Scroll label="Arms and their facts">
        <table class="entries" onKeyDown={moveByEnter} onPaste={(event) => pasteInto(state, grid, event)}>
          <thead>
            <tr>
              <th scope="col">Arm</th>
              {arms.map(({ id }, i) => (
                <th key={id} scope="col">
                  Arm {i + 1}
                  {arms.length > 1 && (
                    <button
                      type="button"
                      class="inline"
                      aria-label={`Remove arm ${i + 1}`}
                      onClick={() => {
                        state.removeArm(id);
                        focusOn('add-arm');
                      }}
                    >
                      Remove
                    </button>
                  )}
                </th>
              ))}
              <th scope="col">For all arms</th>
            </tr>
          </thead>
          <tbody>
            <Fact
              state={state}
              fact={{ column: 'arm', isApart: true, places: grid[0] }}
              row={row++}
              span={span}
              known={[]}
            />
          </tbody>
          {listFacts(draft).map(({ heading, rows }) => (
            <tbody key={heading}>
              <tr class="group">
                <th scope="rowgroup" colSpan={span}>
                  <span>{heading}</span>
                </th>
              </tr>
              {heading === 'People' && draft.peopleByDesign && <PeopleRow state={state} />}
              {rows.map((fact) => (
                <Fact
                  key={fact.column}
                  state={state}
                  fact={fact}
                  row={row++}
                  span={span}
                  known={known[fact.column] ?? []}
                />
              ))}
            </tbody>
          ))}
        </table>
      </Scroll>
      <p class="buttons">
        <button
          type="button"
          id="add-arm"
          onClick={() => focusOn(idOf({ of: 'arm', arm: state.addArm(), column: 'arm' }))}
        >
          Add an arm
        </button>
      </p>
    </fieldset>
  );
}

interface FactProps {
  readonly state: CuratingState;
  readonly fact: FactRow;
  readonly row: number;
  readonly span: number;
  readonly known: readonly string[];
}

function Fact({ state, fact: { column, isApart, places }, row, span, known }: FactProps) {
  const draft = state.draft.value;
  const { label } = COLUMN_WORDS[column];
  const helpId = `help-${column}`;
  const list = known.length > 0 ? `known-${column}` : undefined;
  const isEdited = places.some((place) => idOf(place) === state.edited.value);
  const armOf = (place: Place) => (place.of === 'arm' ? nameOfArm(draft, place.arm) : 'all arms');
  return (
    <>
      <tr class={isEdited ? 'fact edited' : 'fact'}>
        <th scope="row">
          {label} <code class="column">{column}</code>
          {ARM_COLUMNS[column].required && <span class="small"> needed</span>}
          <span class="help" id={helpId}>
            {explain(column)}
          </span>
          {list && (
            <datalist id={list}>
              {known.map((word) => (
                <option key={word} value={word} />
              ))}
            </datalist>
          )}
        </th>
        {places.map((place, cell) => (
          <td key={idOf(place)} colSpan={isApart ? 1 : span - 2}>
            <GridCell
              state={state}
              place={place}
              label={`${label}, ${armOf(place)}`}
              at={[row, cell]}
              helpId={helpId}
              list={list}
            />
          </td>
        ))}
        <td>
          {column !== 'arm' && (
            <button
              type="button"
              class="inline"
              aria-label={isApart ? `${label}: the same for all arms` : `${label}: differs between arms`}
              onClick={() => {
                state.setApart(column, !isApart);
                state.edited.value = null;
              }}
            >
              {isApart ? 'Same' : 'Differs'}
            </button>
          )}
          {column === 'cohort' && (
            <button type="button" class="inline" onClick={() => state.setByDesign(true)}>
              By the design
            </button>
          )}
        </td>
      </tr>
      <RowProblems state={state} places={places} span={span} nameOf={armOf} />
    </>
  );
}

/** Who is the same people, as the design says it. */
function PeopleRow({ state }: { readonly state: CuratingState }) {
  const { cells, arms } = state.draft.value;
  const said = !cells.design
    ? 'It follows from who the arms are, once that is chosen.'
    : sharesPeople(cells.design)
      ? 'All arms are the same people.'
      : 'Each arm has people of its own.';
  return (
    <tr class="fact">
      <th scope="row">
        {COLUMN_WORDS.cohort.label} <code class="column">cohort</code>
      </th>
      <td colSpan={arms.length}>{said}</td>
      <td>
        <button type="button" class="inline" onClick={() => state.setByDesign(false)}>
          By hand
        </button>
      </td>
    </tr>
  );
}

function Extras({ state }: { readonly state: CuratingState }) {
  return (
    <fieldset class="reports">
      <legend class="small">A few papers print, too</legend>
      {EXTRAS.map(({ name, label }) => (
        <label key={name} class="choice plain">
          <input
            type="checkbox"
            checked={state.draft.value.extras.includes(name)}
            onChange={(event) => state.setExtra(name, event.currentTarget.checked)}
          />
          {label}
        </label>
      ))}
    </fieldset>
  );
}
