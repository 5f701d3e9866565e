/** A number to be typed; what is not taken stays as it was written, with what was expected. */

/** Entered in the place of what a browser hides from a page because it is no number. */
const NO_NUMBER = 'text that is no number';

export interface NumberEntryProps {
  readonly id: string;
  readonly label: string;
  readonly value: number | null;
  readonly from: number;
  readonly to: number;
  /** Whether only whole numbers are taken; whoever takes them sees to it. */
  readonly isWhole?: boolean;
  readonly help?: string;
  /** Entry that was not taken; undefined where the last one was. */
  readonly refused: string | undefined;
  /** What stays as it is, completing “…; the load stays at 75 %.” */
  readonly stays: string;
  readonly onEnter: (written: string) => void;
}

export function NumberEntry({
  id,
  label,
  value,
  from,
  to,
  isWhole = false,
  help,
  refused,
  stays,
  onEnter,
}: NumberEntryProps) {
  const isRefused = refused !== undefined;
  return (
    <div class="control">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="number"
        min={from}
        max={to}
        step="any"
        inputMode="decimal"
        value={refused ?? value ?? ''}
        onChange={({ currentTarget: { value: written, validity } }) => onEnter(validity.badInput ? NO_NUMBER : written)}
        aria-invalid={isRefused}
        aria-describedby={[isRefused && `${id}-refused`, help && `${id}-help`].filter(Boolean).join(' ') || undefined}
      />
      {help && (
        <span class="help" id={`${id}-help`}>
          {help}
        </span>
      )}
      <span class="help" role="status" id={`${id}-refused`}>
        {isRefused &&
          `Expected a ${isWhole ? 'whole ' : ''}number from ${from} to ${to}, received ${showRefused(refused)}; ${stays}.`}
      </span>
    </div>
  );
}

function showRefused(written: string): string {
  if (written === '') return 'none';
  return written === NO_NUMBER ? NO_NUMBER : `“${written}”`;
}
