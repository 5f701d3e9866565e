/** What is said to the lifter of a set that is not safe, or does not fit its load: it is not asked for as it stands. */
import { LEAST_RESERVE_WHEN_PINNED } from './cautions.ts';

export const TOO_MANY = 'Ask your coach before this set: so many repetitions are not expected at this load.';

/**
 * @param told when to end the set
 * @param unsafe true where it may pin a lifter who is alone at it (common practice, no source: cautions.ts)
 */
export function tellGuarded(told: string, unsafe: boolean): string {
  if (!unsafe) return told;
  // In capitals, since a message and a sheet have no other way to raise their voice.
  return `NOT ALONE: this exercise can pin you. With a spotter or safety arms: ${told} Alone leave at least ${LEAST_RESERVE_WHEN_PINNED}.`;
}
