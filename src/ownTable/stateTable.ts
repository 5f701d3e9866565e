/** What is said of a table wherever it is named. */
import { isDemonstration } from '../evidence/demonstration.ts';
import type { Arm } from '../evidence/schema.ts';
import type { KeptTable } from './keptTables.ts';

/** Of its rows; what its text and the clock say comes to it where it is kept. */
export type TableFacts = Pick<KeptTable, 'name' | 'studies' | 'rows' | 'demonstration'>;

export function stateTable(name: string, arms: readonly Arm[]): TableFacts {
  return {
    name,
    studies: new Set(arms.map(({ study }) => study)).size,
    rows: arms.length,
    demonstration: isDemonstration(arms),
  };
}
