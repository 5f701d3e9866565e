/** Words that a cell is chosen from. */
import type { Column } from '../../evidence/column.ts';

/** null where the cell is typed. */
export function wordsOf({ field }: Column<unknown>): readonly string[] | null {
  if (field.type === 'boolean') return [...(field.trueValues ?? []), ...(field.falseValues ?? [])];
  return Array.isArray(field.constraints.enum) ? field.constraints.enum : null;
}
