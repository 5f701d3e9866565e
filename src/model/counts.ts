/** How many people and studies stand behind rows. */
import type { Arm } from '../evidence/schema.ts';

/** Rows of a cohort are the same people, the largest n of them; rows without one are their arm's people. Unknown numbers count as 0. */
export function countPeople(arms: readonly Pick<Arm, 'study' | 'cohort' | 'arm' | 'n'>[]): number {
  const people = new Map<string, number>();
  for (const { study, cohort, arm, n } of arms) {
    const group = JSON.stringify([study, cohort ? 'cohort' : 'arm', cohort || arm]);
    people.set(group, Math.max(people.get(group) ?? 0, n ?? 0));
  }
  return [...people.values()].reduce((sum, n) => sum + n, 0);
}

/** Studies that the effects come from. */
export function countDistinctStudies(effects: readonly { readonly arm: Pick<Arm, 'study'> }[]): number {
  return new Set(effects.map(({ arm }) => arm.study)).size;
}
