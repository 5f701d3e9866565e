/** Whether a table is the invented one that the project ships. */
import type { Arm } from './schema.ts';

/** What every invented row says in its note. */
export const DEMONSTRATION_NOTE = 'invented for demonstration';

/** One invented row makes the whole table a demonstration: nothing fitted to it is about the world. */
export function isDemonstration(arms: readonly Pick<Arm, 'note'>[]): boolean {
  return arms.some(({ note }) => note?.includes(DEMONSTRATION_NOTE) ?? false);
}
