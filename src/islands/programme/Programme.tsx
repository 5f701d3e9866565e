/** The programme check: two versions in, what their reserves keep, cost and risk out. */
import type { ComponentChildren } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import { AwaitOwn } from '../../ownTable/AwaitOwn.tsx';
import { useConnection, useTable } from '../../ownTable/useTable.ts';
import { Asleep } from '../../ui/Asleep.tsx';
import { type Handed, takeOver } from '../../ui/built.ts';
import { Trouble } from '../../ui/Trouble.tsx';
import { ProgrammeApplied } from './Applied.tsx';
import { ProgrammeBar, ProgrammeSteps } from './Bar.tsx';
import { ProgrammeByWeek } from './ByWeek.tsx';
import { ProgrammeCalendar } from './Calendar.tsx';
import { ProgrammeComparison } from './Comparison.tsx';
import type { WorkedExample } from './checkExample.ts';
import { LiftersDoor } from './lifters/LiftersDoor.tsx';
import { ProgrammeOpening } from './Opening.tsx';
import { createProgramme, type ProgrammeState } from './programme.state.ts';
import { followFocus, takeStep } from './steps.ts';
import { usePaper } from './usePaper.ts';
import { ProgrammeVersion } from './Version.tsx';

/** What the page is built with. */
export interface BuiltProgramme {
  readonly analysis: PracticeAnalysis;
  readonly exercises: readonly NamedExercise[];
  readonly example: WorkedExample;
}

interface Props {
  readonly built: Handed<BuiltProgramme>;
  /** The site's table: its address, and whether its studies are invented. */
  readonly shipped: { readonly address: string; readonly demonstration: boolean };
  /** Pictures of the worked example, as the build drew them: slots of the page, which the types of a page do not see. */
  readonly firstCalendar?: ComponentChildren;
  readonly secondCalendar?: ComponentChildren;
  readonly byWeek?: ComponentChildren;
}

export function Programme({ built, shipped, ...pictures }: Props) {
  const { address, isKnown, table } = useTable(shipped.address);
  const state = useMemo(() => {
    const { analysis, exercises, example } = takeOver(built);
    return createProgramme(analysis, exercises, example, address);
  }, [built, address]);
  useConnection(state, isKnown);
  useKeys(state);
  const { checking, draft } = state;
  const hasSecond = draft.value.second !== null;
  const isPrinted = usePaper(false);
  // What the build drew is of the worked example, by the site’s table.
  const drawn = checking.made.value === state.checking.atFirst ? pictures : null;
  const byWeek = checking.isShown.value && <ProgrammeByWeek state={state} drawn={drawn?.byWeek} />;
  return (
    <div class={hasSecond ? 'programme of-pair' : 'programme'} aria-busy={checking.pending.value}>
      <ProgrammeBar state={state} />
      <ProgrammeSteps state={state} />
      <ProgrammeOpening state={state} />
      <Asleep>
        <ProgrammeCalendar state={state} />
      </Asleep>
      <div role="status">
        <AwaitOwn awaits={checking.awaitsOwn.value} problem={checking.problem.value} />
        <Trouble what="The programme could not be checked" reason={checking.problem.value} onRetry={checking.retry} />
      </div>
      {checking.isShown.value && (
        <Asleep>
          <ProgrammeComparison state={state} />
        </Asleep>
      )}
      {isPrinted && byWeek}
      <ProgrammeVersion
        state={state}
        which="first"
        name={hasSecond ? 'Version one' : 'The programme'}
        drawn={drawn?.firstCalendar}
      />
      <ProgrammeApplied state={state} />
      {hasSecond && <ProgrammeVersion state={state} which="second" name="Version two" drawn={drawn?.secondCalendar} />}
      {!isPrinted && byWeek}
      <LiftersDoor
        state={state}
        isInvented={table.kind === 'own' ? table.about.demonstration : shipped.demonstration}
      />
    </div>
  );
}

/** Undo and redo by their usual keys, and the focus where a step has put it. */
function useKeys(state: ProgrammeState): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (!(event.target instanceof Element && event.target.closest('.pasting, .lifters'))) takeStep(event, state);
    };
    document.addEventListener('keydown', press);
    const stop = followFocus(state.focus);
    return () => {
      document.removeEventListener('keydown', press);
      stop();
    };
  }, [state]);
}
