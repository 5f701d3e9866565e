/**
 * How many people a study of a table usually has: what a study that nobody has described yet is taken to have.
 */
import { median } from 'simple-statistics';
import { groupRows } from '../../evidence/groupRows.ts';
import { countPeople } from '../counts.ts';
import type { Planning } from './planningBase.ts';

export interface UsualPeople {
  /** The median rounded to a step that can be asked for, so that two arms share it evenly. */
  readonly people: number;
  /** People of the middle study; null where no study is fitted, and `people` is then the fewest that can be asked for. */
  readonly median: number | null;
  /** Studies that it is the middle of. */
  readonly studies: number;
}

/** People of a study that can be asked for: from two arms of 5 to twice the largest usual trial (common practice, no source). */
export const ASKED_PEOPLE = { from: 10, to: 200, step: 10 } as const;

/** The median over the studies whose rows are fitted, of all their people in these rows. */
export function findUsualPeople({ bands }: Pick<Planning, 'bands'>): UsualPeople {
  const arms = bands.flatMap(({ fit }) => fit.effects.map(({ arm }) => arm));
  const counts = [...groupRows(arms, ({ study }) => study).values()].map(countPeople);
  const { from, to, step } = ASKED_PEOPLE;
  if (counts.length === 0) return { people: from, median: null, studies: 0 };
  const middle = median(counts);
  return {
    people: Math.min(to, Math.max(from, Math.round(middle / step) * step)),
    median: middle,
    studies: counts.length,
  };
}
