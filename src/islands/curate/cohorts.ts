/** Which arms are the same people, as far as the design says it. */
import type { Texts } from './cells.ts';

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';

interface Arm {
  readonly id: number;
  readonly cells: Texts;
}

/** What is looked at of a study. */
interface Study {
  readonly cells: Texts;
  readonly arms: readonly Arm[];
}

/** Whether the arms of a design are the same people. */
export function sharesPeople(design: string): boolean {
  return design === 'within-person' || design === 'crossover';
}

/**
 * The cohort of an arm: one for all where a design takes the same people, else one for each name of an arm, since an
 * arm that trained two exercises has its name twice. Empty while the design is not chosen.
 */
export function cohortByDesign({ cells, arms }: Study, arm: number): string {
  const design = cells.design ?? '';
  if (design === '') return '';
  if (sharesPeople(design)) return LETTERS[0];
  const nameOf = ({ id, cells: { arm: name } }: Arm) => name?.trim() || `unnamed ${id}`;
  const names = [...new Set(arms.map(nameOf))];
  const own = arms.find(({ id }) => id === arm);
  const place = own ? names.indexOf(nameOf(own)) : 0;
  return LETTERS[place] ?? String(place + 1);
}
