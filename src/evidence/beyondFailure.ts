/** Whether a row's sets went on after failure. */
import type { Arm } from './schema.ts';

/** True of partials and load drops; an empty cell means none. */
export function wentBeyondFailure({ beyond_failure: kind }: Pick<Arm, 'beyond_failure'>): boolean {
  return kind !== null && kind !== 'none';
}
