/** A number of a plan, taken where it is within its limits; nothing written may stand for the usual one. */
import { NumberEntry, type NumberEntryProps } from '../../ui/NumberEntry.tsx';
import type { PlanState } from './plan.state.ts';

interface Props extends Omit<NumberEntryProps, 'refused' | 'stays' | 'onEnter'> {
  readonly state: PlanState;
  /** What stands where nothing is written, if not what is usual in the table. */
  readonly unset?: string;
  readonly onTake: (value: number) => void;
  /** For entries that may be left empty. */
  readonly onEmpty?: () => void;
}

export function PlanEntry({ state, unset = 'the usual one stands', onTake, onEmpty, ...entry }: Props) {
  const { id, value, from, to, isWhole = false } = entry;
  const enter = (written: string) => {
    const number = written.trim() === '' ? Number.NaN : Number(written);
    if (written.trim() === '' && onEmpty) onEmpty();
    else if (number >= from && number <= to && (!isWhole || Number.isInteger(number))) onTake(number);
    else state.refuse(id, written);
  };
  return (
    <NumberEntry
      {...entry}
      refused={state.refused.value[id]}
      stays={value === null ? unset : `it stays at ${value}`}
      onEnter={enter}
    />
  );
}
