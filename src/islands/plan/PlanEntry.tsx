/** A number of a plan, taken where it is within its limits; nothing written may stand for the usual one. */
import { NumberEntry } from '../../ui/NumberEntry.tsx';
import type { PlanState } from './plan.state.ts';

interface Props {
  readonly state: PlanState;
  readonly id: string;
  readonly label: string;
  readonly value: number | null;
  readonly from: number;
  readonly to: number;
  readonly isWhole?: boolean;
  readonly help?: string;
  /** What stands where nothing is written, if not what is usual in the table. */
  readonly unset?: string;
  readonly onTake: (value: number) => void;
  /** For entries that may be left empty. */
  readonly onEmpty?: () => void;
}

export function PlanEntry({
  state,
  id,
  label,
  value,
  from,
  to,
  isWhole = false,
  help,
  unset = 'the usual one stands',
  onTake,
  onEmpty,
}: Props) {
  const enter = (written: string) => {
    const number = written.trim() === '' ? Number.NaN : Number(written);
    if (written.trim() === '' && onEmpty) onEmpty();
    else if (number >= from && number <= to && (!isWhole || Number.isInteger(number))) onTake(number);
    else state.refuse(id, written);
  };
  return (
    <NumberEntry
      id={id}
      label={label}
      value={value}
      from={from}
      to={to}
      isWhole={isWhole}
      {...(help ? { help } : {})}
      refused={state.refused.value[id]}
      stays={value === null ? unset : `it stays at ${value}`}
      onEnter={enter}
    />
  );
}
