/**
 * Generated tables that hold every rule: cells are drawn from the columns of the schema, so that a
 * new column is tried without a change here; the rules for a row and between rows are then met.
 */
import fc from 'fast-check';
import type { CellRange, Column } from '../../src/evidence/column.ts';
import { checkAcrossRows } from '../../src/evidence/crossRow.ts';
import { deriveDesign } from '../../src/evidence/deriveDesign.ts';
import { checkRow } from '../../src/evidence/rowRules.ts';
import { ARM_COLUMNS, type Arm, type ArmColumn } from '../../src/evidence/schema.ts';

type Value = string | number | boolean | null;
type Writable = { -readonly [Name in keyof Arm]: Arm[Name] };
type NumberColumn = {
  [Name in ArmColumn]: Arm[Name] extends number | null ? (null extends Arm[Name] ? Name : never) : never;
}[ArmColumn];

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

/** Columns that are sometimes drawn as a range, of hundredths inside the column's limits. */
const RANGED = ['load_pct_1rm', 'reps_per_set', 'sets', 'weeks', 'reserve_reps', 'velocity_loss_pct'] as const;
const range = fc
  .tuple(fc.integer({ min: 200, max: 900 }), fc.integer({ min: 1, max: 900 }))
  .map(([low, width]): CellRange => ({ low: low / 100, high: (low + width) / 100, value: null }));
const ranges = fc.record(Object.fromEntries(RANGED.map((name) => [name, fc.option(range, { nil: null, freq: 1 })])));
const bound = fc.option(fc.constantFrom(0.05, 0.001), { nil: null, freq: 1 });

/** Puts ranges and a bound into cells, in the order in which a reader finds them. */
function putRanges(arm: Writable, drawn: Record<string, CellRange | null>, p: number | null): void {
  const found = new Map<string, CellRange>();
  for (const name of RANGED) {
    const one = drawn[name];
    if (!one || (name === 'reserve_reps' && arm.attempted_failure)) continue;
    const value = (one.low + one.high) / 2;
    found.set(name, { ...one, value });
    arm[name] = value;
  }
  if (p !== null) {
    found.set('change_p', { low: 0, high: p, value: p });
    arm.change_p = p;
  }
  if (found.size > 0) arm.ranges = Object.fromEntries(found);
}

/** Both ends or none, in order, and what they are of between them. */
function order(arm: Writable, low: NumberColumn, high: NumberColumn, middle: NumberColumn): void {
  const [from, to] = [arm[low], arm[high]];
  if (from === null || to === null || !(from < to)) {
    arm[low] = null;
    arm[high] = null;
  } else if (arm[middle] !== null) arm[middle] = (from + to) / 2;
}

/** Puts right what a row drawn cell by cell breaks; the checks of the schema then decide. */
function meetRowRules(drawn: Record<string, Value>): Arm {
  const arm = { ...drawn, line: 0 } as unknown as Writable;
  arm.hours_after = arm.outcome === 'fatigue' ? (arm.hours_after ?? 24) : null;
  if (arm.attempted_failure || (arm.beyond_failure ?? 'none') !== 'none') arm.reserve_reps = 0;
  arm.reserve_reps ??= arm.reserve_sd === null ? null : 1;
  for (const time of ['baseline', 'followup', 'change'] as const) {
    order(arm, `${time}_q1`, `${time}_q3`, `${time}_median`);
  }
  order(arm, 'percent_change_ci_low', 'percent_change_ci_high', 'percent_change');
  if ((arm.percent_change ?? 0) <= -100) arm.percent_change = 7.5;
  if (arm.n_total === null || (arm.n ?? 0) > arm.n_total) arm.n_total = null;
  if (arm.n_total === null) arm.n_total_arms = null;
  if ((arm.reps_per_set ?? 0) > (arm.reps_possible ?? 0)) arm.reps_possible = null;
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
  if (arm.effect_metric !== 'standardised') {
    arm.effect_standardiser = null;
    arm.effect_corrected = null;
  }
  return arm;
}

/** Tables of some studies whose rows agree with each other; lines are as a written table has them. */
export const validTable: fc.Arbitrary<readonly Arm[]> = fc
  .array(fc.array(fc.record({ cells: row, inRanges: ranges, p: bound }), { minLength: 1, maxLength: 5 }), {
    minLength: 1,
    maxLength: 6,
  })
  .map((studies) => {
    const arms: Arm[] = [];
    for (const rows of studies) {
      const [first] = rows;
      for (const drawn of rows) {
        const { study, year, design, concerns, training_status } = first.cells;
        const { cells, inRanges, p } = drawn;
        const arm = meetRowRules({ ...cells, study, year, design, concerns, training_status });
        putRanges(arm, inRanges, p);
        // A row that contradicts an earlier one, or repeats it, is left out.
        const next = { ...arm, line: arms.length + 2 };
        if (checkRow(next, '').length + checkAcrossRows([...arms, next], '').length === 0)
          arms.push(deriveDesign(next));
      }
    }
    return arms;
  })
  .filter((arms) => arms.length > 0);
