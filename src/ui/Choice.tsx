/** One of several words. */

interface ChoiceProps<Word extends string> {
  readonly id: string;
  readonly label: string;
  readonly value: Word;
  /** Value and what is shown for it. */
  readonly options: readonly (readonly [value: Word, shown: string])[];
  readonly help?: string;
  readonly onChange: (value: Word) => void;
}

export function Choice<Word extends string>({ id, label, value, options, help, onChange }: ChoiceProps<Word>) {
  return (
    <div class="control">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={value}
        aria-describedby={help ? `${id}-help` : undefined}
        onChange={(event) => {
          const chosen = options.find(([option]) => option === event.currentTarget.value);
          if (chosen) onChange(chosen[0]);
        }}
      >
        {options.map(([option, shown]) => (
          <option key={option} value={option}>
            {shown}
          </option>
        ))}
      </select>
      {help && (
        <span class="help" id={`${id}-help`}>
          {help}
        </span>
      )}
    </div>
  );
}
