/** Whether each study of `arms.csv` has its line in `studies.csv`, and the other way round. */
import type { Problem } from './problem.ts';
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
    withoutLine: findAbsent(arms, studies).map(({ study, line }) => ({
      kind: 'contradiction',
      file: arms.file,
      line,
      column: 'study',
      value: study,
      expected: `a study that has a line in ${studies.file}`,
      remedy: `Write the name as it stands there, or add the study to ${studies.file} (npm run references).`,
    })),
    withoutArms: findAbsent(studies, arms).map(({ study, line }) => ({
      kind: 'unusual',
      file: studies.file,
      line,
      column: 'study',
      value: study,
      expected: `a study that has arms in ${arms.file}`,
      remedy: 'Add its arms, write the name as it stands there, or remove the line.',
    })),
  };
}

/** First row of each study of one table that the other does not name, in the order of lines. */
function findAbsent<Row extends { readonly study: string }>(from: Named<Row>, other: Named<{ study: string }>): Row[] {
  const seen = new Set(other.rows.map(({ study }) => study));
  return from.rows.filter(({ study }) => {
    if (seen.has(study)) return false;
    seen.add(study);
    return true;
  });
}
