/**
 * Generated tables that hold every rule: cells are drawn from the columns of the schema, so that a
 * new column is tried without a change here; the rules for a row and between rows are then met.
 */
import fc from 'fast-check';
import type { Column } from '../../src/evidence/column.ts';
import { checkAcrossRows } from '../../src/evidence/crossRow.ts';
import { checkRow } from '../../src/evidence/rowRules.ts';
import { ARM_COLUMNS, type Arm, type ArmColumn } from '../../src/evidence/schema.ts';

type Value = string | number | boolean | null;

/** Texts with everything that a CSV could stumble over and the schema allows. */
const text = fc
  .oneof(
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }),
    fc.stringMatching(/^[a-z",;' \t=+\-@<>]{1,12}$/u),
    fc.constantFrom('__proto__', 'constructor', 'toString', 'null', 'yes', '0', '"', '""', ',', '1,5', "'=1", 'a;b'),
  )
  .map((word) => word.trim());

/** A value of the column; numbers over its whole range, of any size and length of digits. */
function drawCell(name: ArmColumn): fc.Arbitrary<Value> {
  const column: Column<unknown> = ARM_COLUMNS[name];
  const { cell } = column;
  const field = column.endField ?? column.field;
  const accepted = (value: Value) => value !== '' && cell.safeParse(String(value)).success;
  if (field.type === 'boolean') return fc.boolean();
  const { enum: words, minimum, maximum } = field.constraints;
  if (Array.isArray(words)) return fc.constantFrom<string>(...words);
  if (field.type === 'string') return text.filter(accepted);
  const min = typeof minimum === 'number' ? minimum : -1e6;
  const max = typeof maximum === 'number' ? maximum : 1e6;
  if (field.type === 'integer') return fc.integer({ min, max });
  const round = fc.integer({ min: Math.ceil(100 * min), max: Math.floor(100 * max) }).map((value) => value / 100);
  return fc.oneof(round, fc.double({ min, max, noNaN: true })).filter(accepted);
}

const row = fc.record(
  Object.fromEntries(
    (Object.keys(ARM_COLUMNS) as ArmColumn[]).map((name) => [
      name,
      ARM_COLUMNS[name].required ? drawCell(name) : fc.option(drawCell(name), { nil: null, freq: 2 }),
    ]),
  ),
);

/** What a cell that is empty could be filled from: rows here are as they are printed, and nothing more. */
const NOT_DERIVED = { n_total: null, load_rm: null, reps_possible: null };

/** Puts right what a row drawn cell by cell breaks; the checks of the schema then decide. */
function meetRowRules(drawn: Record<string, Value>): Arm {
  const arm = { ...drawn, ...NOT_DERIVED, line: 0 } as unknown as { -readonly [Name in keyof Arm]: Arm[Name] };
  arm.hours_after = arm.outcome === 'fatigue' ? (arm.hours_after ?? 24) : null;
  if (arm.attempted_failure || (arm.beyond_failure ?? 'none') !== 'none') arm.reserve_reps = 0;
  arm.reserve_reps ??= arm.reserve_sd === null ? null : 1;
  if (arm.change_ci_low !== null && arm.change_ci_high !== null && arm.change_ci_low < arm.change_ci_high) {
    arm.change_mean = (arm.change_ci_low + arm.change_ci_high) / 2;
  } else {
    arm.change_ci_low = null;
    arm.change_ci_high = null;
  }
  if (arm.effect === null || arm.effect_variance === null || arm.effect_metric === null) {
    arm.effect = null;
    arm.effect_variance = null;
    arm.effect_metric = null;
    arm.baseline_mean ??= 40.25;
    arm.followup_mean ??= 43;
    arm.baseline_sd ??= 6.1;
  }
  return arm;
}

/** Tables of some studies whose rows agree with each other; lines are as a written table has them. */
export const validTable: fc.Arbitrary<readonly Arm[]> = fc
  .array(fc.array(row, { minLength: 1, maxLength: 5 }), { minLength: 1, maxLength: 6 })
  .map((studies) => {
    const arms: Arm[] = [];
    for (const rows of studies) {
      const [first] = rows;
      for (const drawn of rows) {
        const { study, year, design, concerns, training_status } = first;
        const arm = meetRowRules({ ...drawn, study, year, design, concerns, training_status });
        // A row that contradicts an earlier one, or repeats it, is left out.
        const next = { ...arm, line: arms.length + 2 };
        if (checkRow(next, '').length + checkAcrossRows([...arms, next], '').length === 0) arms.push(next);
      }
    }
    return arms;
  })
  .filter((arms) => arms.length > 0);
