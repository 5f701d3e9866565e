/** Small tables for tests, made from one valid row. */
import Papa from 'papaparse';
import { ARM_COLUMNS, type Arm, type ArmColumn } from '../../src/evidence/schema.ts';
import { readArms } from '../../src/evidence/table.ts';

export type Cells = Partial<Record<ArmColumn, string>>;

const VALID_ROW: Cells = {
  study: 'Plover 2012',
  year: '2012',
  design: 'parallel',
  training_status: 'trained',
  arm: 'to failure',
  n: '12',
  exercise: 'leg press',
  load_pct_1rm: '75',
  attempted_failure: 'yes',
  reserve_reps: '0',
  outcome: 'growth',
  measure: 'muscle thickness',
  unit: 'mm',
  baseline_mean: '40',
  baseline_sd: '6',
  followup_mean: '43',
  followup_sd: '6.2',
  correlation: '0.9',
};

/** CSV of the valid row, once for each set of changes. */
export function makeTable(changes: readonly Cells[], columns: readonly string[] = Object.keys(ARM_COLUMNS)): string {
  const rows = changes.map((change) => ({ ...VALID_ROW, ...change }) as Record<string, string>);
  return Papa.unparse({ fields: [...columns], data: rows.map((row) => columns.map((column) => row[column] ?? '')) });
}

/** Validated rows of a table that must have no problem. */
export function makeArms(changes: readonly Cells[]): readonly Arm[] {
  const { arms, problems } = readArms(makeTable(changes), 'test.csv');
  if (problems.length > 0) throw new Error(`test table has problems: ${JSON.stringify(problems)}`);
  return arms;
}
