/** A number to be typed; what is not taken stays as it was written, with what was expected. */
import { plainNumber } from '../numerics/typedNumber.ts';
import { useTyped } from './useTyped.ts';

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
  /** What was typed, a decimal comma as a point; nothing else is changed. */
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
  const field = useTyped(refused ?? value ?? '', (written) => onEnter(plainNumber(written)));
  return (
    <div class="control">
      <label for={id}>{label}</label>
      <input
        id={id}
        // Text, since an entry of numbers drops a decimal comma without a word where the browser's language has a point.
        type="text"
        inputMode="decimal"
        autocomplete="off"
        {...field}
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
  return written === '' ? 'none' : `“${written}”`;
}
