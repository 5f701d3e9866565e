/** An entry of a grid, which its row and its column name; what is wrong with it stands below its row. */
import { ARM_COLUMNS } from '../../evidence/schema.ts';
import type { CuratingState } from './curate.state.ts';
import { EntryInput } from './EntryInput.tsx';
import { placeIn } from './gridKeys.ts';
import { type Grid, needsHelp, readBlock } from './pasteBlock.ts';
import { idOf, type Place, readPlace } from './studyDraft.ts';
import { sayProblem } from './words.ts';

interface CellProps {
  readonly state: CuratingState;
  readonly place: Place;
  readonly label: string;
  readonly at: readonly [row: number, cell: number];
  /** Id of the text that explains the column. */
  readonly helpId: string;
  readonly list?: string | undefined;
  readonly placeholder?: string;
}

export function GridCell({ state, place, label, at, helpId, list, placeholder = '' }: CellProps) {
  const id = idOf(place);
  const isWrong = state.reading.value.problems.some((problem) => idOf(problem.place) === id);
  return (
    <EntryInput
      id={id}
      column={ARM_COLUMNS[place.column]}
      value={readPlace(state.draft.value, place)}
      isWrong={isWrong}
      describedBy={isWrong ? `${id}-problem ${helpId}` : helpId}
      label={label}
      placeholder={placeholder}
      list={list}
      at={at}
      onEnter={(text) => state.enter(place, text)}
      onTake={() => state.take(place)}
    />
  );
}

/** What is wrong with entries of a row, each named. @param nameOf place as the row's reader would call it */
export function RowProblems({
  state,
  places,
  span,
  nameOf,
}: {
  readonly state: CuratingState;
  readonly places: readonly Place[];
  readonly span: number;
  readonly nameOf: (place: Place) => string;
}) {
  const ids = places.map(idOf);
  const wrong = state.reading.value.problems.filter(({ place }) => ids.includes(idOf(place)));
  if (wrong.length === 0) return null;
  return (
    <tr class="wrongs">
      <td colSpan={span}>
        {places.map((place) => {
          const own = wrong.filter((problem) => idOf(problem.place) === idOf(place));
          if (own.length === 0) return null;
          return (
            <p key={idOf(place)} class="wrong" id={`${idOf(place)}-problem`}>
              {nameOf(place)}: {own.map(sayProblem).join(' ')}
            </p>
          );
        })}
      </td>
    </tr>
  );
}

/** Puts what was copied from a spreadsheet into a grid; a single text that can stand as it is is left to the browser. */
export function pasteInto(state: CuratingState, grid: Grid, event: ClipboardEvent): void {
  const at = placeIn(event.target);
  const text = event.clipboardData?.getData('text/plain') ?? '';
  if (!at || text === '') return;
  const [row, cell] = at;
  const block = readBlock(text);
  const place = grid[row]?.[cell];
  if (!place || !needsHelp(block, place.column)) return;
  event.preventDefault();
  state.paste(grid, row, cell, block);
}
