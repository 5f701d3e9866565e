/** Words of the form that makes rows, and the way from a problem to its entry. */
import type { ArmColumn } from '../../evidence/schema.ts';
import { countOf } from '../../numerics/countOf.ts';
import type { RowReading } from './readCells.ts';

/** “2 to mend, 3 still needed, 1 warning”; “nothing entered yet”; “no problem”. */
export function outlineReading({ problems, needed, warnings }: RowReading, isEmpty: boolean): string {
  if (isEmpty) return 'Nothing entered yet.';
  const parts = [
    problems.length > 0 ? `${problems.length} to mend` : null,
    needed.length > 0 ? `${needed.length} still needed` : null,
    warnings.length > 0 ? countOf(warnings.length, 'warning') : null,
  ].filter(Boolean);
  return parts.length > 0 ? `${parts.join(', ')}.` : 'No problem.';
}

/** Moves the focus to the entry of a column, once it is there. */
export function focusEntry(column: ArmColumn): void {
  focusOn(`curate-${column}`);
}

/** Moves the focus to what has the id, once it is there. */
export function focusOn(id: string): void {
  requestAnimationFrame(() => document.getElementById(id)?.focus());
}
