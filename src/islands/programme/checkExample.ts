/** The report on the worked example, as the build makes it: a browser that shows the example need not check it again. */
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import { fromSaved } from '../../practice/programme/draft.ts';
import { resolveBegun } from '../../practice/programme/lineReports.ts';
import { type ProgrammeReport, reportProgramme } from '../../practice/programme/report.ts';
import type { SavedProgramme } from '../../practice/programme/saved.ts';

/** @throws where the example cannot be read */
export function checkExample(
  analysis: PracticeAnalysis,
  listed: readonly NamedExercise[],
  example: SavedProgramme,
): ProgrammeReport {
  const { draft, problem } = fromSaved(example);
  if (problem !== null) throw new Error(`the worked example: ${problem}`);
  const exercises = [...draft.exercises, ...listed];
  const { first, second, calendar } = draft;
  return reportProgramme(analysis, {
    first: resolveBegun(first, exercises).text,
    second: second && resolveBegun(second, exercises).text,
    exercises,
    calendar,
  });
}
