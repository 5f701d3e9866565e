/** The calculator: a set, an exercise and who is there in; a reserve, what it is worth and its cautions out. */
import { useEffect, useMemo } from 'preact/hooks';
import type { Exercise } from '../../evidence/exercises.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import { showReserve } from '../../ui/reserveWords.ts';
import { CalculatorControls } from './Controls.tsx';
import { createCalculator, type ShippedTable, type Calculator as State } from './calculator.state.ts';
import { GymCard } from './GymCard.tsx';
import { CalculatorResult } from './Result.tsx';

interface Props {
  /** The analysis of the page as built. */
  readonly analysis: PracticeAnalysis;
  readonly exercises: readonly Exercise[];
  readonly table: ShippedTable;
}

export function Calculator({ analysis, exercises, table }: Props) {
  const state = useMemo(() => createCalculator(analysis, exercises, table), [analysis, exercises, table]);
  useEffect(() => state.connect(), [state]);
  return (
    <div class="calculator">
      <form class="controls" aria-label="The set" onSubmit={(event) => event.preventDefault()}>
        <CalculatorControls state={state} exercises={exercises} />
        <Readback state={state} />
      </form>
      <CalculatorResult state={state} />
      <GymCard state={state} />
    </div>
  );
}

/** On a phone the result lies below the controls: its number again, at the edge of the screen. The result itself is what is announced. */
function Readback({ state }: { readonly state: State }) {
  const { reserve, adjustments } = state.advice.value;
  return (
    <p class="readback" aria-hidden="true">
      <strong>{showReserve(reserve)}</strong>
      {reserve !== null && ' in reserve'}
      {adjustments.length > 0 && reserve !== null && ', not the evidence’s own'}
    </p>
  );
}
