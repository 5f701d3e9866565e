/** Whether each study of `arms.csv` has its line in `studies.csv`, and the other way round. */
import { blurName, stateDifference } from './lookAlike.ts';
import { type Problem, showValue } from './problem.ts';
import type { Arm, Study } from './schema.ts';

export interface UnmatchedStudies {
  /** One for each study whose arms are there and whose reference is not. */
  readonly withoutLine: readonly Problem[];
  /** One for each line whose study has no arms; a study may well be listed before its arms are coded. */
  readonly withoutArms: readonly Problem[];
}

interface Named<Row> {
  readonly rows: readonly Row[];
  /** Name of the file for messages. */
  readonly file: string;
}

/** Studies that only one of the two tables names; each at its first row. */
export function compareStudyLines(
  arms: Named<Pick<Arm, 'study' | 'line'>>,
  studies: Named<Pick<Study, 'study' | 'line'>>,
): UnmatchedStudies {
  return {
    withoutLine: findAbsent(arms, studies).map(({ study, line, alike }) => ({
      kind: 'contradiction',
      file: arms.file,
      line,
      column: 'study',
      value: study,
      expected: `a study that has a line in ${studies.file}${alike}`,
      remedy: `Write the name as it stands there, or add the study to ${studies.file} (npm run references).`,
    })),
    withoutArms: findAbsent(studies, arms).map(({ study, line, alike }) => ({
      kind: 'unusual',
      file: studies.file,
      line,
      column: 'study',
      value: study,
      expected: `a study that has arms in ${arms.file}${alike}`,
      remedy: 'Add its arms, write the name as it stands there, or remove the line.',
    })),
  };
}

/**
 * First row of each study of one table that the other does not name, in the order of lines, with what is to be said of
 * a name there that looks the same; nothing where there is none.
 */
function findAbsent<Row extends { readonly study: string }>(
  from: Named<Row>,
  other: Named<{ readonly study: string; readonly line: number }>,
): (Row & { readonly alike: string })[] {
  const seen = new Set(other.rows.map(({ study }) => study));
  const absent = from.rows.filter(({ study }) => {
    if (seen.has(study)) return false;
    seen.add(study);
    return true;
  });
  if (absent.length === 0) return [];
  const blurred = new Map(other.rows.map((row) => [blurName(row.study), row]));
  return absent.map((row) => {
    const twin = blurred.get(blurName(row.study));
    const alike = twin
      ? `; line ${twin.line} there has “${showValue(twin.study)}”, which looks the same: ${stateDifference(row.study, twin.study)}`
      : '';
    return { ...row, alike };
  });
}
