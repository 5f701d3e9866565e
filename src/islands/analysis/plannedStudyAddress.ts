/**
 * A planned study as a part of an address, for the page that plans and for those that lead there: design, then its arms
 * as LOAD_RESERVE_PEOPLE, then what differs from the usual.
 *
 *     parallel light_0_20 80_4_20 weeks_8 cv_0.12 r_0.9 measure_muscle thickness
 */
import type { PlannedArm, PlannedDesign, PlannedStudy } from '../../model/plan/plannedStudy.ts';
import type { BandName } from '../../model/result.ts';

export const DESIGNS: readonly PlannedDesign[] = ['parallel', 'within-person'];
export const BANDS: readonly BandName[] = ['light', 'heavy', 'all'];
const NUMBERS = { weeks: 'weeks', cv: 'coefficientOfVariation', r: 'correlation' } as const;
const MEASURE = 'measure_';
/** Arms that are read at all: more than a plan may have, so that one with too many is shown with what is wrong. */
const MOST_READ = 20;
const WRITTEN_NUMBER = /^-?\d+(?:\.\d+)?(?:e[+-]?\d+)?$/u;

export function writePlan({ design, arms, measure, ...numbers }: PlannedStudy): string {
  return [
    design,
    ...arms.map(({ load, reserve, people }) => [load, reserve, people].join('_')),
    ...Object.entries(NUMBERS).flatMap(([name, key]) => (numbers[key] === null ? [] : [`${name}_${numbers[key]}`])),
    // Last, since it may hold spaces.
    ...(measure === null ? [] : [MEASURE + measure]),
  ].join(' ');
}

export function readPlan(text: string): PlannedStudy | null {
  const at = text.indexOf(` ${MEASURE}`);
  const measure = at < 0 ? null : text.slice(at + 1 + MEASURE.length);
  const [first, ...words] = (at < 0 ? text : text.slice(0, at)).split(' ');
  const design = DESIGNS.find((one) => one === first);
  if (!design || measure === '') return null;
  const arms: PlannedArm[] = [];
  const numbers: Partial<Record<(typeof NUMBERS)[keyof typeof NUMBERS], number>> = {};
  for (const word of words) {
    const [head, ...rest] = word.split('_');
    const values = rest.map(readNumber);
    if (Object.hasOwn(NUMBERS, head)) {
      const key = NUMBERS[head as keyof typeof NUMBERS];
      const [value] = values;
      if (values.length !== 1 || value === null || key in numbers) return null;
      numbers[key] = value;
      continue;
    }
    const load = BANDS.find((one) => one === head) ?? readNumber(head);
    const [reserve, people] = values;
    if (values.length !== 2 || load === null || reserve === null || people === null) return null;
    arms.push({ load, reserve, people });
  }
  if (arms.length > MOST_READ) return null;
  return { design, arms, weeks: null, coefficientOfVariation: null, correlation: null, ...numbers, measure };
}

/** @returns null for what is no number as it is written */
export function readNumber(text: string): number | null {
  const value = WRITTEN_NUMBER.test(text) ? Number(text) : Number.NaN;
  return Number.isFinite(value) ? value : null;
}
