/** One cell of a row: its name, what the schema says of it, and what is wrong with it. */
import type { Column } from '../../evidence/column.ts';
import { formatExpectation, type Problem } from '../../evidence/problem.ts';

interface FieldProps {
  readonly id: string;
  readonly name: string;
  readonly column: Column<unknown>;
  readonly value: string;
  /** What is wrong with what was entered; what is still missing is told elsewhere. */
  readonly problems: readonly Pick<Problem, 'value' | 'expected' | 'remedy'>[];
  /** Words to be offered. */
  readonly known: readonly string[];
  /** Whether it was the last to have the focus. */
  readonly isEdited: boolean;
  readonly onEnter: (text: string) => void;
  readonly onTake: () => void;
}

export function CurateField({ id, name, column, value, problems, known, isEdited, onEnter, onTake }: FieldProps) {
  const described = `${id}-help${problems.length > 0 ? ` ${id}-problem` : ''}`;
  const words = wordsOf(column);
  const shared = {
    id,
    'aria-describedby': described,
    'aria-invalid': problems.length > 0,
    'aria-required': column.required,
    onFocus: onTake,
  };
  return (
    <div class={isEdited ? 'control edited' : 'control'}>
      <label for={id}>
        <code>{name}</code>
        {column.required && <span class="small"> needed</span>}
      </label>
      {words ? (
        <select {...shared} value={value} onChange={(event) => onEnter(event.currentTarget.value)}>
          <option value="">{column.required ? 'choose' : 'not reported'}</option>
          {words.map((word) => (
            <option key={word} value={word}>
              {word}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...shared}
          type="text"
          value={value}
          list={known.length > 0 ? `${id}-known` : undefined}
          inputMode={isNeverNegative(column) ? 'decimal' : 'text'}
          autocomplete="off"
          spellcheck={false}
          onInput={(event) => onEnter(event.currentTarget.value)}
        />
      )}
      {known.length > 0 && (
        <datalist id={`${id}-known`}>
          {known.map((word) => (
            <option key={word} value={word} />
          ))}
        </datalist>
      )}
      {problems.length > 0 && (
        <span class="wrong" id={`${id}-problem`}>
          {problems.map((problem) => capitalise(formatExpectation(problem))).join(' ')}
        </span>
      )}
      <span class="help" id={`${id}-help`}>
        {explain(column)}
      </span>
    </div>
  );
}

/** Words that a cell is chosen from; null where it is typed. */
function wordsOf({ field }: Column<unknown>): readonly string[] | null {
  if (field.type === 'boolean') return [...(field.trueValues ?? []), ...(field.falseValues ?? [])];
  return Array.isArray(field.constraints.enum) ? field.constraints.enum : null;
}

/** Choices explain themselves; of a text only the example helps, of a number its range and unit too. */
function explain(column: Column<unknown>): string {
  const { description, expected, unit, example, field } = column;
  if (wordsOf(column)) return description;
  if (field.type === 'string') return `${description} For example: ${example}`;
  return `${description} ${capitalise(expected)}${unit ? ` (${unit})` : ''}, for example ${example}.`;
}

function isNeverNegative({ field: { type, constraints } }: Column<unknown>): boolean {
  return type !== 'string' && typeof constraints.minimum === 'number' && constraints.minimum >= 0;
}

function capitalise(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
