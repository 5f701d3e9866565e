/** Arms of the same people that do not say so: without a shared cohort their errors count as independent. */
import { groupRows } from './groupRows.ts';
import { type Problem, showValue } from './problem.ts';
import type { Arm } from './schema.ts';

/** Limbs of the same people, or the same people one after the other. */
const SAME_PEOPLE: readonly Arm['design'][] = ['within-person', 'crossover'];

/**
 * Warnings for studies whose design has the same people in several arms: within an outcome, each cohort of an arm
 * should be another arm's too. A study of one arm has nothing to share; where no cohort is shared, the first row stands
 * as it is and the later arms are named.
 */
export function findUnsharedCohorts(arms: readonly Arm[], file: string): Problem[] {
  const rows = arms.filter(({ design }) => SAME_PEOPLE.includes(design));
  return [...groupRows(rows, ({ study, outcome }) => `${study}\u0000${outcome}`).values()].flatMap((group) => {
    const cohorts = [...groupRows(group, ({ arm, cohort }) => JSON.stringify([arm, cohort])).values()].map(
      ([row]) => row,
    );
    const alone = cohorts.filter((row) => !cohorts.some((other) => isShared(row, other)));
    const later = alone.length === cohorts.length ? alone.slice(1) : alone;
    return later.flatMap((row): Problem[] => {
      const other = cohorts.find(({ arm }) => arm !== row.arm);
      if (!other) return [];
      const stated = other.cohort === null ? 'no cohort' : `cohort ${showValue(other.cohort)}`;
      return [
        {
          kind: 'unusual',
          file,
          line: row.line,
          column: 'cohort',
          value: row.cohort ?? '',
          expected: `a cohort that another arm of ${showValue(row.study)} has too, since \`design\` is ${row.design}; line ${other.line} (${showValue(other.arm)}) has ${stated}`,
          remedy: 'Give rows of the same people the same cohort; where the arms are other people, correct the design.',
        },
      ];
    });
  });
}

function isShared(row: Arm, other: Arm): boolean {
  return row.arm !== other.arm && row.cohort !== null && row.cohort === other.cohort;
}
