/**
 * A study that has not been done: what is asked of it before its interval is worked out.
 *
 * Parallel arms are different people; a within-person study trains every arm on other limbs of the same people, so that
 * its arms share a cohort and, as in the table, the correlation of their errors (`rho`). All arms share the study's
 * deviation from the curve.
 */
import type { DESIGNS } from '../../evidence/vocabulary.ts';
import type { BandName } from '../result.ts';

export type PlannedDesign = Exclude<(typeof DESIGNS)[number], 'crossover'>;

/** One arm, as plain JSON. */
export interface PlannedArm {
  /** Repetitions in reserve, 0 to 30. */
  readonly reserve: number;
  /** Per cent of 1RM, above 1 and up to 100; or a band, whose median load then counts. */
  readonly load: number | BandName;
  /** People measured before and after in this arm, a whole number from 3; 0 leaves the arm out. */
  readonly people: number;
}

/** A planned study, as plain JSON. */
export interface PlannedStudy {
  readonly design: PlannedDesign;
  readonly arms: readonly PlannedArm[];
  /** Length of the training; null takes the median of the table. It counts only where weeks are adjusted for. */
  readonly weeks: number | null;
  /** As the table calls it; null takes the measure of most rows. */
  readonly measure: string | null;
  /** Standard deviation before training as a share of the mean, above 0; null takes the usual one of the table. */
  readonly coefficientOfVariation: number | null;
  /** Correlation of before with after between people, −1 to 1 open; null takes the usual one. */
  readonly correlation: number | null;
}

/** Fewest people of an arm: a standardised change of two has no variance. */
export const LEAST_PEOPLE = 3;
/** Most people of an arm, most reserve and most weeks, as a table's cells may hold. */
export const MOST_PEOPLE = 100_000;
export const MOST_RESERVE = 30;
export const MOST_WEEKS = 520;
/** Arms that a study may have, far more than any has had. */
export const MOST_ARMS = 8;

/** A study of arms at the usual measure of the table. */
export function planStudy(design: PlannedDesign, arms: readonly PlannedArm[]): PlannedStudy {
  return { design, arms, weeks: null, measure: null, coefficientOfVariation: null, correlation: null };
}

/**
 * What is wrong with a plan, a sentence each; none where it can be worked out.
 *
 * @param bands those that the settings make
 */
export function checkPlan(
  { design, arms, weeks, coefficientOfVariation: cv, correlation: r }: PlannedStudy,
  bands: readonly { readonly name: BandName }[],
): readonly string[] {
  const problems: string[] = [];
  if (arms.length > MOST_ARMS) problems.push(`expected at most ${MOST_ARMS} arms, received ${arms.length}`);
  arms.forEach(({ reserve, load, people }, i) => {
    const say = (expected: string, received: number | string) =>
      problems.push(`arm ${i + 1}: expected ${expected}, received ${received}`);
    if (!(reserve >= 0 && reserve <= MOST_RESERVE)) say(`a reserve from 0 to ${MOST_RESERVE}`, reserve);
    if (typeof load === 'number' && !(load > 1 && load <= 100)) say('a load above 1 and up to 100 % of 1RM', load);
    if (typeof load === 'string' && !bands.some(({ name }) => name === load))
      say(`one of the bands that loads are told apart by (${bands.map(({ name }) => name).join(', ')})`, load);
    if (people !== 0 && !(Number.isInteger(people) && people >= LEAST_PEOPLE && people <= MOST_PEOPLE))
      say(`a whole number of people from ${LEAST_PEOPLE} to ${MOST_PEOPLE}, or 0`, people);
  });
  if (design === 'within-person' && new Set(arms.map(({ people }) => people).filter(Boolean)).size > 1)
    problems.push(
      'expected the same number of people in every arm, since a within-person study trains each arm on the same people',
    );
  if (weeks !== null && !(weeks > 0 && weeks <= MOST_WEEKS))
    problems.push(`expected weeks above 0 and up to ${MOST_WEEKS}, received ${weeks}`);
  if (cv !== null && !(cv > 0 && cv < 10))
    problems.push(`expected a coefficient of variation above 0 and below 10, received ${cv}`);
  if (r !== null && !(r > -1 && r < 1)) problems.push(`expected a correlation between −1 and 1, received ${r}`);
  return problems;
}

/** People that a study must find: of parallel arms the sum, within persons those of one arm. */
export function countPlanned({ design, arms }: Pick<PlannedStudy, 'design' | 'arms'>): number {
  const people = arms.map((arm) => arm.people);
  return design === 'parallel' ? people.reduce((sum, n) => sum + n, 0) : Math.max(0, ...people);
}
