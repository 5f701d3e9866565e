/** The programme check: two versions in, what their reserves keep, cost and risk out. */
import { useEffect, useMemo } from 'preact/hooks';
import type { Exercise } from '../evidence/exercises.ts';
import type { PracticeAnalysis } from '../model/full.ts';
import type { SavedProgramme } from '../practice/programme/saved.ts';
import { ProgrammeComparison } from './ProgrammeComparison.tsx';
import { ProgrammeEntry } from './ProgrammeEntry.tsx';
import { ProgrammeVersion } from './ProgrammeVersion.tsx';
import { createProgramme } from './programme.state.ts';

interface Props {
  readonly analysis: PracticeAnalysis;
  readonly exercises: readonly Exercise[];
  readonly example: SavedProgramme;
}

export function Programme({ analysis, exercises, example }: Props) {
  const state = useMemo(() => createProgramme(analysis, exercises, example), [analysis, exercises, example]);
  useEffect(() => state.connect(), [state]);
  const { first, second } = state.report.value;
  return (
    <div class="programme" aria-busy={state.pending.value}>
      <ProgrammeEntry state={state} />
      <ProgrammeComparison state={state} />
      <ProgrammeVersion state={state} version={first} name={second ? 'Version one' : 'The programme'} />
      {second && <ProgrammeVersion state={state} version={second} name="Version two" />}
    </div>
  );
}
