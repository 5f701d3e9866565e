/** The programme check: two versions in, what their reserves keep, cost and risk out. */
import { useEffect, useMemo } from 'preact/hooks';
import type { Exercise } from '../../evidence/exercises.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import { OwnTableWait } from '../../ownTable/OwnTableWait.tsx';
import type { SavedProgramme } from '../../practice/programme/saved.ts';
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
  const state = useMemo(
    () => createProgramme(analysis, exercises, example, table),
    [analysis, exercises, example, table],
  );
  useEffect(() => state.connect(), [state]);
  const { first, second } = state.report.value;
  return (
    <div class="programme" aria-busy={state.pending.value}>
      <ProgrammeEntry state={state} />
      <div role="status">
        <OwnTableWait foreign={state.foreign.value} problem={state.tableProblem.value} />
        {state.tableProblem.value !== null && <p class="problem">{state.tableProblem.value}</p>}
      </div>
      <ProgrammeComparison state={state} />
      <ProgrammeVersion state={state} version={first} which="first" name={second ? 'Version one' : 'The programme'} />
      {second && <ProgrammeVersion state={state} version={second} which="second" name="Version two" />}
    </div>
  );
}
