/** The worked example as lines, and the report on it, as the build makes them: a browser need not read and check it again. */
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import { type Draft, fromSaved } from '../../practice/programme/draft.ts';
import { resolveBegun } from '../../practice/programme/lineReports.ts';
import { type ProgrammeReport, reportProgramme } from '../../practice/programme/report.ts';
import type { SavedProgramme } from '../../practice/programme/saved.ts';

/** @throws where the example cannot be read */
export function checkExample(
  analysis: PracticeAnalysis,
  listed: readonly NamedExercise[],
  example: SavedProgramme,
): { readonly draft: Draft; readonly report: ProgrammeReport } {
  const { draft, problem } = fromSaved(example);
  if (problem !== null) throw new Error(`the worked example: ${problem}`);
  const exercises = [...draft.exercises, ...listed];
  const { first, second, calendar } = draft;
  const report = reportProgramme(analysis, {
    first: resolveBegun(first, exercises).text,
    second: second && resolveBegun(second, exercises).text,
    exercises,
    calendar,
  });
  return { draft, report };
}
