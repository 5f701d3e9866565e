/** The programme check: two versions in, what their reserves keep, cost and risk out. */
import { effect } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import { AwaitOwn } from '../../ownTable/AwaitOwn.tsx';
import { useConnection, useTable } from '../../ownTable/useTable.ts';
import type { SavedProgramme } from '../../practice/programme/saved.ts';
import { Trouble } from '../../ui/Trouble.tsx';
import { ProgrammeApplied } from './Applied.tsx';
import { ProgrammeBar, ProgrammeSteps } from './Bar.tsx';
import { ProgrammeCalendar } from './Calendar.tsx';
import { ProgrammeComparison } from './Comparison.tsx';
import { LiftersDoor } from './lifters/LiftersDoor.tsx';
import { ProgrammeOpening } from './Opening.tsx';
import { createProgramme, type ProgrammeState } from './programme.state.ts';
import { ProgrammeVersion } from './Version.tsx';

interface Props {
  readonly analysis: PracticeAnalysis;
  readonly exercises: readonly NamedExercise[];
  readonly example: SavedProgramme;
  /** The site's table: its address, and whether its studies are invented. */
  readonly shipped: { readonly address: string; readonly demonstration: boolean };
}

export function Programme({ analysis, exercises, example, shipped }: Props) {
  const { address, isKnown, table } = useTable(shipped.address);
  const state = useMemo(
    () => createProgramme(analysis, exercises, example, address),
    [analysis, exercises, example, address],
  );
  useConnection(state, isKnown);
  useKeys(state);
  const { checking, draft } = state;
  const hasSecond = draft.value.second !== null;
  return (
    <div class="programme" aria-busy={checking.pending.value}>
      <ProgrammeBar state={state} />
      <ProgrammeSteps state={state} />
      <ProgrammeOpening state={state} />
      <ProgrammeCalendar state={state} />
      <div role="status">
        <AwaitOwn awaits={checking.awaitsOwn.value} problem={checking.problem.value} />
        <Trouble what="The programme could not be checked" reason={checking.problem.value} onRetry={checking.retry} />
      </div>
      {checking.isShown.value && <ProgrammeComparison state={state} />}
      <ProgrammeVersion state={state} which="first" name={hasSecond ? 'Version one' : 'The programme'} />
      <ProgrammeApplied state={state} />
      {hasSecond && <ProgrammeVersion state={state} which="second" name="Version two" />}
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
      const isHere = !(event.target instanceof Element && event.target.closest('.pasting, .lifters'));
      if (!isHere || event.altKey || !(event.ctrlKey || event.metaKey)) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) state.redo();
      else state.undo();
    };
    document.addEventListener('keydown', press);
    const stop = effect(() => {
      const wanted = state.focus.value;
      // Once everything that was changed with it stands on the page.
      if (wanted) setTimeout(() => document.getElementById(wanted.id)?.focus());
    });
    return () => {
      document.removeEventListener('keydown', press);
      stop();
    };
  }, [state]);
}
