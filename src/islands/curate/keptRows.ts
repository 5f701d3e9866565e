/**
 * The rows made so far with the row being edited at its place. Facts of a study and of an arm's training are
 * the same in all its rows, so that a correction in one is carried to the others.
 */
import { ARM_FACTS, STUDY_FACTS } from '../../evidence/crossRow.ts';
import type { ArmColumn } from '../../evidence/schema.ts';
import type { Cells } from './cells.ts';

interface PlacedRows {
  readonly rows: readonly Cells[];
  /** Place of the row being edited, from 0. */
  readonly place: number;
  /** Columns that other rows take over, and how many other rows do. */
  readonly carried: { readonly columns: readonly ArmColumn[]; readonly rows: number };
}

/** @param at place of the row that is being corrected, from 0; null for a new one */
export function placeRow(rows: readonly Cells[], row: Cells, at: number | null): PlacedRows {
  if (at === null) return { rows: [...rows, row], place: rows.length, carried: { columns: [], rows: 0 } };
  const before = rows[at];
  const changed = (columns: readonly ArmColumn[]) => columns.filter((name) => row[name] !== before[name]);
  const ofStudy = changed(['study', ...STUDY_FACTS]);
  const isSameArm = row.arm === before.arm && row.exercise === before.exercise;
  const ofArm = isSameArm ? changed(ARM_FACTS) : [];
  let others = 0;
  const columns = new Set<ArmColumn>();
  const placed = rows.map((other, place) => {
    if (place === at) return row;
    if (other.study !== before.study) return other;
    const sharesArm = other.arm === before.arm && other.exercise === before.exercise;
    const taken = [...ofStudy, ...(sharesArm ? ofArm : [])];
    if (taken.length === 0) return other;
    others++;
    for (const name of taken) columns.add(name);
    return { ...other, ...Object.fromEntries(taken.map((name) => [name, row[name]])) };
  });
  return { rows: placed, place: at, carried: { columns: [...columns], rows: others } };
}
