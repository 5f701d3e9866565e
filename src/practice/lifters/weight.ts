/** Weights in kilograms and pounds: read as people write them, told, and turned into each other. */

export const WEIGHT_UNITS = ['kg', 'lb'] as const;
export type WeightUnit = (typeof WEIGHT_UNITS)[number];

export interface Weight {
  /** Above 0. */
  readonly value: number;
  readonly unit: WeightUnit;
}

/** Kilograms of a pound, exactly: international yard and pound agreement, 1959. */
const POUND = 0.45359237;

export function weightIn({ value, unit }: Weight, wanted: WeightUnit): number {
  if (unit === wanted) return value;
  return unit === 'lb' ? value * POUND : value / POUND;
}

/** “102.5 kg”: at most two decimals, none that say nothing. */
export function writeWeight({ value, unit }: Weight): string {
  return `${Number(value.toFixed(2))}\u00a0${unit}`;
}

export type ReadWeight =
  | { readonly kind: 'empty' }
  /** @property isBare true where no unit was written, so that the one given was taken */
  | { readonly kind: 'read'; readonly weight: Weight; readonly isBare: boolean }
  | { readonly kind: 'refused'; readonly expected: string; readonly remedy: string | null };

const UNITS: ReadonlyMap<string, WeightUnit> = new Map(
  (
    [
      ['kg', 'kgs kilo kilos kilogram kilograms'],
      ['lb', 'lbs pound pounds'],
    ] as const
  ).flatMap(([unit, others]) => [unit, ...others.split(' ')].map((word) => [word, unit] as const)),
);
const WRITTEN = /^(?:1\s?rm\s?[:=]?\s?)?(?<sign>[-−])?\s?(?<digits>\d{1,5}(?:[.,]\d{1,2})?)\s?(?<unit>\p{L}+)?\.?$/iu;
/** A thousand to one reader and a number with three decimals to another. */
const AMBIGUOUS = /^\D*\d{1,3}[.,]\d{3}(?!\d)/u;
const SEVERAL = /\d\s?[-–—]\s?\d/u;
const OF_A_SET = /\d\s?[x×]\s?\d|(?:[2-9]|\d\d)\s?rm|\breps?\b/iu;

/**
 * @param unit what a number without one is in
 * @param most the heaviest that is taken
 */
export function readWeight(written: string, unit: WeightUnit, most: Weight): ReadWeight {
  const text = written.normalize('NFKC').trim();
  if (text === '') return { kind: 'empty' };
  const refuse = (remedy: string | null): ReadWeight => ({
    kind: 'refused',
    expected: `a weight above 0 and up to ${writeWeight(most)}, such as 102.5 or 225 lb`,
    remedy,
  });
  if (OF_A_SET.test(text)) return refuse('Enter what can be lifted once; it is not worked out from sets of more.');
  if (SEVERAL.test(text)) return refuse('Enter one weight.');
  if (AMBIGUOUS.test(text)) return refuse('Write thousands without a sign, and at most two decimals.');
  const groups = WRITTEN.exec(text)?.groups;
  if (!groups) return refuse(null);
  const named = groups.unit === undefined ? unit : UNITS.get(groups.unit.toLowerCase());
  if (!named) return refuse('The unit is kg or lb.');
  const weight: Weight = { value: Number(groups.digits.replace(',', '.')), unit: named };
  if (groups.sign || weight.value === 0 || weightIn(weight, most.unit) > most.value) return refuse(null);
  return { kind: 'read', weight, isBare: groups.unit === undefined };
}
