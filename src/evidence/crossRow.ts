/** What rows must be to one another. Each problem names the later line and quotes the earlier one. */
import { pairWithFirst } from './groupRows.ts';
import { identifyMeasurement, MEASUREMENT } from './halfway.ts';
import type { Problem } from './problem.ts';
import type { Arm, ArmColumn } from './schema.ts';
import { writeCell } from './writeTable.ts';

/** Facts of a study, the same in all its rows. */
export const STUDY_FACTS = ['year', 'design', 'concerns', 'training_status'] as const satisfies readonly ArmColumn[];

/** Facts of an arm's training, the same in all its rows of one exercise; of the weeks, in all but those measured halfway. */
export const ARM_FACTS = [
  'load_pct_1rm',
  'reps_per_set',
  'sets',
  'sessions_per_week',
  'weeks',
  'joints',
  'failure_definition',
  'attempted_failure',
  'reserve_reps',
  'reserve_sd',
  'reserve_basis',
  'beyond_failure',
] as const satisfies readonly ArmColumn[];

/** What makes a row: two rows that share all of it are the same one twice. */
export const ROW_IDENTITY = [...MEASUREMENT, 'weeks'] as const satisfies readonly ArmColumn[];

/** Equal for two rows exactly where they are the same measurement at the same time. */
export function identifyRow(arm: Arm): string {
  return `${identifyMeasurement(arm)}\u0000${writeCell(arm.weeks)}`;
}

/** Contradictions between rows of a study, an arm and a cohort, and rows that stand twice; in no order. */
export function checkAcrossRows(arms: readonly Arm[], file: string): Problem[] {
  return [
    ...checkAgreement(
      arms,
      file,
      STUDY_FACTS,
      ({ study }) => study,
      (arm) => `study ${arm.study}`,
    ),
    ...checkTraining(
      arms,
      file,
      ARM_FACTS.filter((column) => column !== 'weeks'),
    ),
    ...checkTraining(
      arms.filter(({ later }) => !later),
      file,
      ['weeks'],
    ),
    ...checkDuplicates(arms, file),
    ...checkCohorts(arms, file),
  ];
}

function checkTraining(arms: readonly Arm[], file: string, columns: readonly ArmColumn[]): Problem[] {
  return checkAgreement(
    arms,
    file,
    columns,
    ({ study, arm, exercise }) => `${study}\u0000${arm}\u0000${exercise}`,
    (arm) => `arm ${arm.arm} of ${arm.study}`,
  );
}

/** Within each group the columns must not change. */
function checkAgreement(
  arms: readonly Arm[],
  file: string,
  columns: readonly ArmColumn[],
  groupOf: (arm: Arm) => string,
  nameOf: (arm: Arm) => string,
): Problem[] {
  return pairWithFirst(arms, groupOf).flatMap(({ row, first }) =>
    columns
      .filter((column) => row[column] !== first[column])
      .map((column): Problem => {
        const stated = first[column] === null ? 'an empty cell' : writeCell(first[column]);
        return {
          kind: 'contradiction',
          file,
          line: row.line,
          column,
          value: writeCell(row[column]),
          expected: `${stated}, as line ${first.line} says of ${nameOf(row)}`,
          remedy: 'Correct one of the two lines.',
        };
      }),
  );
}

function checkDuplicates(arms: readonly Arm[], file: string): Problem[] {
  return pairWithFirst(arms, identifyRow).map(({ row, first }) => ({
    kind: 'duplicate',
    file,
    line: row.line,
    column: null,
    value: `${row.study}, ${row.arm}, ${row.measure}`,
    expected: `a measurement that line ${first.line} does not have already`,
    remedy: 'Remove one of the two, or name what differs in arm, exercise, muscle, measure or weeks.',
  }));
}

/**
 * People drop out; nobody joins: over the rows of a cohort in one arm and outcome, in the order of
 * hours and then of lines, no n may be above the first. (Outcomes may differ: not everyone has a scan.)
 */
function checkCohorts(arms: readonly Arm[], file: string): Problem[] {
  const rows = arms
    .filter(({ cohort, n }) => cohort !== null && n !== null)
    .map((arm) => ({ arm, cohort: cohortOf(arm) }));
  const first = new Map<string, Arm>();
  for (const { arm, cohort } of rows) {
    const other = first.get(cohort);
    if (!other || (arm.hours_after ?? 0) < (other.hours_after ?? 0)) first.set(cohort, arm);
  }
  return rows.flatMap(({ arm, cohort }): Problem[] => {
    const earlier = first.get(cohort);
    if (!earlier || arm.n === null || earlier.n === null || arm.n <= earlier.n) return [];
    return [
      {
        kind: 'contradiction',
        file,
        line: arm.line,
        column: 'n',
        value: String(arm.n),
        expected: `at most ${earlier.n} people, as line ${earlier.line} has in cohort ${arm.cohort}`,
        remedy: 'A cohort is the same people throughout: put the largest n first, or give other people another cohort.',
      },
    ];
  });
}

function cohortOf({ study, cohort, arm, outcome }: Arm): string {
  return `${study}\u0000${cohort}\u0000${arm}\u0000${outcome}`;
}
