/** A planned study in words and numbers: one rule for each, for the page, its figures and its files. */
import type { ExpectedKept, ExpectedTarget, WholeShare } from '../../model/plan/expectedTarget.ts';
import type { PlanAssumptions } from '../../model/plan/plannedRows.ts';
import type { PlannedArm, PlannedStudy } from '../../model/plan/plannedStudy.ts';
import { LOAD_NAMES } from '../../practice/loadNames.ts';
import { formatNumber, formatPlain, formatRange, formatShare, formatSignificant, formatWhole } from '../format.ts';

/** Plans that are set side by side. */
export const PLAN_NAMES = ['A', 'B', 'C'] as const;
export type PlanName = (typeof PLAN_NAMES)[number];

/**
 * Digits of repetitions where a plan is weighed: a study often moves an end by less than a tenth. Today's interval is
 * written alike beside it.
 */
const DIGITS = 2;
/** Outcomes of a hundred below which whole repetitions are not listed. */
const LEAST_LISTED = 0.05;
/** Repetitions of a narrowing below which its size is not told: no interval here is written so finely. */
const LEAST_SAID = 0.001;
/** People that a narrowing is told for: of one person it would begin with zeros. */
export const PER_PEOPLE = 10;

export const DESIGN_WORDS = {
  parallel: 'other people in every arm',
  'within-person': 'the same people in every arm, on other limbs',
} as const satisfies Readonly<Record<PlannedStudy['design'], string>>;

/** Why an interval reads otherwise here than where the answer is told (wholeRepetitions.ts). */
export const ENDS_AS_COMPUTED =
  'Ends of intervals stand here as computed; elsewhere they are told in tenths, and down to a whole repetition where none lies inside.';

export function formatWidth(width: number): string {
  return formatNumber(width, DIGITS);
}

/** “0.20 to 1.11”; says why where there is none. */
export function formatExpectedRange({ low, high, widthMissing }: ExpectedTarget): string {
  return low === null || widthMissing === 'no-target' ? 'no target' : formatRange(low, high, DIGITS);
}

/** “0.36 (0.20 to 1.11)”. */
export function formatExpected(target: ExpectedTarget): string {
  if (target.point === null) return 'no target';
  return `${formatNumber(target.point, DIGITS)} (${formatExpectedRange(target)})`;
}

/** “0.91 wide”, or why no width can be said. */
export function stateWidth({ width, widthMissing }: ExpectedTarget): string {
  if (width !== null) return `${formatWidth(width)} wide`;
  return widthMissing === 'no-target' ? 'no target' : 'no upper end';
}

/** “narrower by 0.04 (4 %)”, “wider by …”; says of both what they are where one of them has no width. */
export function stateNarrowing(narrowing: number | null, before: ExpectedTarget, after: ExpectedTarget): string {
  if (narrowing === null) return `cannot be said: ${stateWidth(before)} today, ${stateWidth(after)} expected`;
  const size = formatWidth(Math.abs(narrowing));
  if (Number(size) === 0) return 'as wide as today, to a hundredth';
  const percent = before.width ? Math.round((100 * Math.abs(narrowing)) / before.width) : null;
  const share = percent === null ? '' : ` (${percent === 0 ? 'less than 1' : percent}\u00a0%)`;
  return `${narrowing > 0 ? 'narrower' : 'wider'} by ${size}${share}`;
}

/** What each ten people buy: “0.043 narrower”, “0.0043 wider”. @param narrowingPerPerson below 0 where it gets wider */
export function statePerPeople(narrowingPerPerson: number | null): string {
  if (narrowingPerPerson === null) return 'cannot be said';
  const narrowing = PER_PEOPLE * narrowingPerPerson;
  const size = Math.abs(narrowing);
  if (size === 0) return 'as wide';
  return `${size < LEAST_SAID ? `less than ${LEAST_SAID}` : formatSignificant(size, 2)} ${narrowing > 0 ? 'narrower' : 'wider'}`;
}

/** “about 12 of 100”. */
export function formatChance(chance: number): string {
  const hundredths = Math.round(100 * chance);
  if (hundredths === 0) return chance === 0 ? 'none of 100' : 'fewer than 1 of 100';
  return `about ${hundredths} of 100`;
}

/** What the whole repetitions come out as, the most frequent first: “0 in 99 of 100, 0 to 1 in 1 of 100”. */
export function listWholes(wholes: readonly WholeShare[]): string {
  const told = wholes.filter(({ share }, i) => i === 0 || share >= LEAST_LISTED);
  const words = told.map(({ whole, share }) => {
    const name = whole === null ? 'no target' : formatWhole(whole);
    return `${name} in ${Math.round(100 * share)} of 100`;
  });
  return words.join(', ') + (told.length < wholes.length ? ', others more seldom' : '');
}

/** The share of growth kept with its interval: “91 % (88 to 95 %)”. */
export function formatKept({ estimate, low, high }: ExpectedKept): string {
  return estimate === null ? 'not known' : formatShare({ estimate, low, high });
}

/** Measure, its spread and its correlation, with what they rest on. */
export function assumedOfMeasure(assumptions: PlanAssumptions): string {
  return `measure ${assumptions.measure}; ${assumedSpread(assumptions)}`;
}

/** How people scatter in the measure, and whether that is usual in the table, a setting or given. */
export function assumedSpread({ coefficientOfVariation: cv, correlation }: Omit<PlanAssumptions, 'measure'>): string {
  return `standard deviation before training ${formatSignificant(100 * cv.value, 3)}\u00a0% of the mean (${cv.words}); correlation of before with after ${formatSignificant(correlation.value, 3)} (${correlation.words})`;
}

/** “light loads”, “72.5 % of 1RM”. */
export function nameLoad(load: PlannedArm['load']): string {
  return typeof load === 'number' ? `${formatPlain(load)}\u00a0% of 1RM` : LOAD_NAMES[load];
}

/** “light loads at 0 in reserve, 20 people”. */
export function stateArm({ load, reserve, people }: PlannedArm): string {
  return `${nameLoad(load)} at ${formatPlain(reserve)} in reserve, ${people.toLocaleString('en')} people`;
}

/** Arms in short: “0 and 2 in reserve with light loads, 4 with heavy loads”. */
export function stateArms(arms: readonly Pick<PlannedArm, 'load' | 'reserve'>[]): string {
  const byLoad = new Map<string, string[]>();
  for (const { load, reserve } of arms) {
    const name = nameLoad(load);
    byLoad.set(name, [...(byLoad.get(name) ?? []), formatPlain(reserve)]);
  }
  const parts = [...byLoad].map(([load, reserves], i) => {
    const last = reserves.at(-1);
    const list = reserves.length > 1 ? `${reserves.slice(0, -1).join(', ')} and ${last}` : last;
    return `${list}${i === 0 ? ' in reserve' : ''} with ${load}`;
  });
  return parts.join(', ') || 'no arms';
}
