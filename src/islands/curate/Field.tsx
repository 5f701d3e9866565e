/** One entry with its label, what the schema says of it, and what is wrong with it. */
import type { Column } from '../../evidence/column.ts';
import { COLUMN_WORDS } from '../../evidence/columnWords.ts';
import type { Problem } from '../../evidence/problem.ts';
import { ARM_COLUMNS } from '../../evidence/schema.ts';
import type { CuratingState } from './curate.state.ts';
import { EntryInput } from './EntryInput.tsx';
import { idOf, type Place, readPlace } from './studyDraft.ts';
import { explain, sayProblem } from './words.ts';

interface FieldProps {
  readonly id: string;
  readonly label: string;
  /** Name of the column, for those who know it from the file. */
  readonly name?: string;
  readonly column: Column<unknown>;
  readonly help: string;
  readonly value: string;
  /** What is wrong with what was entered; what is still missing is told elsewhere. */
  readonly problems: readonly Pick<Problem, 'value' | 'expected' | 'remedy'>[];
  /** Words to be offered. */
  readonly known?: readonly string[];
  /** Whether it was the last to have the focus. */
  readonly isEdited: boolean;
  readonly onEnter: (text: string) => void;
  readonly onTake: () => void;
}

export function CurateField(props: FieldProps) {
  const { id, label, name, column, help, value, problems, known = [], isEdited, onEnter, onTake } = props;
  return (
    <div class={isEdited ? 'control edited' : 'control'}>
      <label for={id}>
        {label}
        {name && <code class="column">{name}</code>}
        {column.required && <span class="small"> needed</span>}
      </label>
      <EntryInput
        id={id}
        column={column}
        value={value}
        isWrong={problems.length > 0}
        describedBy={`${id}-help${problems.length > 0 ? ` ${id}-problem` : ''}`}
        list={known.length > 0 ? `${id}-known` : undefined}
        onEnter={onEnter}
        onTake={onTake}
      />
      {known.length > 0 && (
        <datalist id={`${id}-known`}>
          {known.map((word) => (
            <option key={word} value={word} />
          ))}
        </datalist>
      )}
      {problems.length > 0 && (
        <span class="wrong" id={`${id}-problem`}>
          {problems.map(sayProblem).join(' ')}
        </span>
      )}
      <span class="help" id={`${id}-help`}>
        {help}
      </span>
    </div>
  );
}

interface EntryProps {
  readonly state: CuratingState;
  readonly place: Place;
  readonly known?: readonly string[];
}

/** The field of a place of the study in hand. */
export function EntryField({ state, place, known = [] }: EntryProps) {
  const { column } = place;
  const id = idOf(place);
  return (
    <CurateField
      id={id}
      label={COLUMN_WORDS[column].label}
      name={column}
      column={ARM_COLUMNS[column]}
      help={explain(column)}
      value={readPlace(state.draft.value, place)}
      problems={state.reading.value.problems.filter((problem) => idOf(problem.place) === id)}
      known={known}
      isEdited={state.edited.value === id}
      onTake={() => state.take(place)}
      onEnter={(text) => state.enter(place, text)}
    />
  );
}
