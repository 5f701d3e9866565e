/** The calculator: a set, an exercise and who is there in; a reserve, what it is worth and its cautions out. */
import { useMemo } from 'preact/hooks';
import type { Exercise } from '../../evidence/exercises.ts';
import { useConnection, useTable } from '../../ownTable/useTable.ts';
import { type Handed, takeOver } from '../../ui/built.ts';
import { showReserve } from '../../ui/reserveWords.ts';
import { CommonShares } from './CommonShares.tsx';
import { CalculatorControls } from './Controls.tsx';
import { createCalculator, type Calculator as State } from './calculator.state.ts';
import type { Built } from './fitted.state.ts';
import { GymCard } from './GymCard.tsx';
import { RecentSituations } from './RecentSituations.tsx';
import { CalculatorResult } from './Result.tsx';

/** What the page is built with. */
export interface BuiltTarget extends Built {
  readonly exercises: readonly Exercise[];
}

interface Props {
  readonly built: Handed<BuiltTarget>;
  /** The site's table: its address, and whether its studies are invented. */
  readonly shipped: { readonly address: string; readonly demonstration: boolean };
}

export function Calculator({ built, shipped }: Props) {
  const { address, isKnown, table } = useTable(shipped.address);
  const { analysis, shares, exercises } = useMemo(() => takeOver(built), [built]);
  const state = useMemo(() => createCalculator({ analysis, shares }, exercises, address), [built, address]);
  useConnection(state, isKnown);
  const { fitted } = state;
  const isInvented = table.kind === 'own' ? table.about.demonstration : shipped.demonstration;
  return (
    <>
      <div class="calculator">
        <form class="controls" aria-label="The set" onSubmit={(event) => event.preventDefault()}>
          <CalculatorControls state={state} exercises={exercises} />
          {fitted.isShown.value && <Readback state={state} />}
        </form>
        <CalculatorResult state={state} />
        {fitted.isShown.value && <GymCard state={state} isInvented={isInvented} />}
      </div>
      <RecentSituations recent={state.recent} choices={state.choices.value} exercises={exercises} />
      <CommonShares
        shares={fitted.shares.value}
        problem={fitted.sharesProblem.value}
        onRetry={fitted.retry}
        judgement={state.judged.value}
        confidence={analysis.settings.confidence}
      />
    </>
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
