/** The programme check: two versions in, what their reserves keep, cost and risk out. */
import { useMemo } from 'preact/hooks';
import type { Exercise } from '../../evidence/exercises.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import { AwaitOwn } from '../../ownTable/AwaitOwn.tsx';
import { useConnection, useTable } from '../../ownTable/useTable.ts';
import type { SavedProgramme } from '../../practice/programme/saved.ts';
import { Trouble } from '../../ui/Trouble.tsx';
import { ProgrammeComparison } from './Comparison.tsx';
import { ProgrammeEntry } from './Entry.tsx';
import { createProgramme } from './programme.state.ts';
import { ProgrammeVersion } from './Version.tsx';

interface Props {
  readonly analysis: PracticeAnalysis;
  readonly exercises: readonly Exercise[];
  readonly example: SavedProgramme;
  /** Address of the table on this site. */
  readonly table: string;
}

export function Programme({ analysis, exercises, example, table }: Props) {
  const { address, isKnown } = useTable(table);
  const state = useMemo(
    () => createProgramme(analysis, exercises, example, address),
    [analysis, exercises, example, address],
  );
  useConnection(state, isKnown);
  const { checking } = state;
  const { first, second } = checking.made.value.report;
  return (
    <div class="programme" aria-busy={checking.pending.value}>
      <ProgrammeEntry state={state} />
      <div role="status">
        <AwaitOwn awaits={checking.awaitsOwn.value} problem={checking.problem.value} />
        <Trouble what="The programme could not be checked" reason={checking.problem.value} onRetry={checking.retry} />
      </div>
      {checking.isShown.value && (
        <>
          <ProgrammeComparison state={state} />
          <ProgrammeVersion
            state={state}
            version={first}
            which="first"
            name={second ? 'Version one' : 'The programme'}
          />
          {second && <ProgrammeVersion state={state} version={second} which="second" name="Version two" />}
        </>
      )}
    </div>
  );
}
