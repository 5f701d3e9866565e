/** What one entry is typed into or chosen from. */
import { nameChoice } from '../../evidence/choiceWords.ts';
import type { Column } from '../../evidence/column.ts';
import { ARM_COLUMNS, type ArmColumn } from '../../evidence/schema.ts';
import { wordsOf } from './wordsOf.ts';

interface InputProps {
  readonly id: string;
  readonly column: Column<unknown>;
  readonly value: string;
  readonly isWrong: boolean;
  /** Ids of what describes it. */
  readonly describedBy: string;
  /** Its name, where no label stands beside it. */
  readonly label?: string;
  /** What counts while it is empty. */
  readonly placeholder?: string;
  /** Id of a list of words to be offered. */
  readonly list?: string | undefined;
  /** Its row and its place in that row, where it stands in a grid. */
  readonly at?: readonly [row: number, cell: number];
  readonly onEnter: (text: string) => void;
  readonly onTake: () => void;
}

export function EntryInput(props: InputProps) {
  const { id, column, value, isWrong, describedBy, label, placeholder, list, at, onEnter, onTake } = props;
  const words = wordsOf(column);
  const shared = {
    id,
    'aria-describedby': describedBy,
    'aria-invalid': isWrong,
    'aria-required': column.required,
    ...(label ? { 'aria-label': label } : {}),
    ...(at ? { 'data-row': at[0], 'data-cell': at[1] } : {}),
    onFocus: onTake,
  };
  if (words) {
    return (
      <select {...shared} value={value} onChange={(event) => onEnter(event.currentTarget.value)}>
        <option value="">{column.required ? 'choose' : 'not said'}</option>
        {words.map((word) => (
          <option key={word} value={word}>
            {nameOf(column, word)}
          </option>
        ))}
      </select>
    );
  }
  return (
    <input
      {...shared}
      type="text"
      value={value}
      list={list}
      placeholder={placeholder}
      inputMode={isPlainNumber(column) ? 'decimal' : 'text'}
      autocomplete="off"
      spellcheck={false}
      onInput={(event) => onEnter(event.currentTarget.value)}
    />
  );
}

const NAMES = new Map<Column<unknown>, ArmColumn>(
  Object.entries(ARM_COLUMNS).map(([name, column]) => [column, name as ArmColumn]),
);

function nameOf(column: Column<unknown>, word: string): string {
  const name = NAMES.get(column);
  return name ? nameChoice(name, word) : word;
}

/** Digits and a point are enough for it: no sign, range or bound. */
function isPlainNumber({ field: { type, constraints }, rangeOf }: Column<unknown>): boolean {
  return type !== 'string' && !rangeOf && typeof constraints.minimum === 'number' && constraints.minimum >= 0;
}
