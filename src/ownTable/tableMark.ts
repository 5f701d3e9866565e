/** What is said of a table wherever it is named: its name, its size, and whether it is invented. */
import { isDemonstration } from '../evidence/demonstration.ts';
import type { Arm } from '../evidence/schema.ts';
import type { OwnTableMark } from './ownTable.ts';

export function markOf(name: string, arms: readonly Arm[]): OwnTableMark {
  return {
    name,
    studies: new Set(arms.map(({ study }) => study)).size,
    rows: arms.length,
    demonstration: isDemonstration(arms),
  };
}
