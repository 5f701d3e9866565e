/**
 * Rows measured before an arm's training had ended, beside the same measurement at its end: growth or strength after
 * 5 weeks where the table has it after 10. They are kept and shown; a fit reads the end alone, so that the same
 * people's training counts once.
 */
import { groupRows, pairWithFirst } from './groupRows.ts';
import type { Arm, ArmColumn } from './schema.ts';
import { writeCell } from './writeTable.ts';

/** What makes a measurement, whenever in an arm's training it was made. */
export const MEASUREMENT = [
  'study',
  'arm',
  'exercise',
  'muscle',
  'outcome',
  'measure',
  'unit',
  'hours_after',
] as const satisfies readonly ArmColumn[];

/** Equal for two rows exactly where they measure the same, at whatever week. */
export function identifyMeasurement(arm: Arm): string {
  return MEASUREMENT.map((column) => writeCell(arm[column])).join('\u0000');
}

/** The rows, each that was measured halfway with the row of its end in `later`; the same list where none was. */
export function markHalfway(arms: readonly Arm[]): readonly Arm[] {
  const several = findStudiesOfSeveralWeeks(arms);
  if (several.size === 0) return arms;
  const suspected = arms.filter((arm) => several.has(arm.study) && isTimed(arm));
  const ends = new Map<Arm, Arm>();
  for (const rows of groupRows(suspected, identifyMeasurement).values()) {
    const end = rows.reduce((latest, row) => (weeksOf(row) > weeksOf(latest) ? row : latest));
    for (const row of rows) if (weeksOf(row) < weeksOf(end)) ends.set(row, end);
  }
  return arms.map((arm) => {
    const end = ends.get(arm);
    return end ? { ...arm, later: { line: end.line, weeks: weeksOf(end) } } : arm;
  });
}

/** Studies with an arm whose rows differ in weeks: the only ones whose rows are worth comparing. */
function findStudiesOfSeveralWeeks(arms: readonly Arm[]): ReadonlySet<string> {
  return new Set(
    pairWithFirst(arms, ({ study, arm }) => `${study}\u0000${arm}`)
      .filter(({ row, first }) => row.weeks !== first.weeks)
      .map(({ row }) => row.study),
  );
}

function weeksOf({ weeks }: Arm): number {
  return weeks ?? 0;
}

/** Fatigue is of one session; a row without weeks may be of any. */
function isTimed({ outcome, weeks }: Arm): boolean {
  return outcome !== 'fatigue' && weeks !== null;
}
