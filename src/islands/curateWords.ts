/** Words of the form that makes rows, and the way from a problem to its entry. */
import type { ArmColumn } from '../evidence/schema.ts';
import type { RowReading } from './curate.reading.ts';

/** “2 to mend, 3 still needed, 1 warning”; “nothing entered yet”; “no problem”. */
export function outlineReading({ problems, needed, warnings }: RowReading, isEmpty: boolean): string {
  if (isEmpty) return 'Nothing entered yet.';
  const parts = [
    problems.length > 0 ? `${problems.length} to mend` : null,
    needed.length > 0 ? `${needed.length} still needed` : null,
    warnings.length > 0 ? `${warnings.length} ${warnings.length === 1 ? 'warning' : 'warnings'}` : null,
  ].filter(Boolean);
  return parts.length > 0 ? `${parts.join(', ')}.` : 'No problem.';
}

/** Moves the focus to an entry, once it is there. */
export function focusEntry(column: ArmColumn): void {
  requestAnimationFrame(() => document.getElementById(`curate-${column}`)?.focus());
}
