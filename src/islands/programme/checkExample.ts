/** The worked example as lines, and the report on it, as the build makes them: a browser need not read and check it again. */
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import { type Draft, fromSaved } from '../../practice/programme/draft.ts';
import { resolveBegun } from '../../practice/programme/lineReports.ts';
import { type ProgrammeReport, reportProgramme } from '../../practice/programme/report.ts';
import type { ResolvedList } from '../../practice/programme/resolve.ts';
import type { SavedProgramme } from '../../practice/programme/saved.ts';

export interface WorkedExample {
  readonly draft: Draft;
  /** What its versions were checked as. */
  readonly first: ResolvedList;
  readonly second: ResolvedList | null;
  readonly report: ProgrammeReport;
}

/** @throws where the example cannot be read */
export function checkExample(
  analysis: PracticeAnalysis,
  listed: readonly NamedExercise[],
  example: SavedProgramme,
): WorkedExample {
  const { draft, problem } = fromSaved(example);
  if (problem !== null) throw new Error(`the worked example: ${problem}`);
  const exercises = [...draft.exercises, ...listed];
  const first = resolveBegun(draft.first, exercises);
  const second = draft.second && resolveBegun(draft.second, exercises);
  const { calendar } = draft;
  const report = reportProgramme(analysis, { first: first.text, second: second?.text ?? null, exercises, calendar });
  return { draft, first, second, report };
}
