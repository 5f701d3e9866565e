/**
 * The controls of the Evidence page as data: what each is called, what it does, what usually happens
 * when it moves, and how it reads and changes the settings.
 */
import { ADJUSTMENTS, defaultSettings, type Settings } from '../model/settings.ts';
import { writePercentNumber } from '../numerics/percent.ts';
import type { Vocabulary } from './filterOptions.ts';

export type Change = (settings: Settings) => Settings;

interface ChoiceControl {
  readonly kind: 'choice';
  readonly id: string;
  readonly label: string;
  readonly help: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly read: (settings: Settings) => string;
  readonly write: (value: string) => Change;
}

interface NumberControl {
  readonly kind: 'number';
  readonly id: string;
  readonly label: string;
  readonly help: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly unit: string;
  readonly read: (settings: Settings) => number;
  readonly write: (value: number) => Change;
}

export interface ListControl {
  readonly kind: 'list';
  readonly id: string;
  readonly label: string;
  readonly help: string;
  readonly key: FilterKey;
  readonly options: readonly string[];
}

export type Control = ChoiceControl | NumberControl;

/** Filters that are lists of words. */
export type FilterKey = Exclude<keyof Settings['include'], 'yearFrom' | 'yearTo' | 'withoutStudies'>;

const set =
  <Key extends keyof Settings>(key: Key, value: Settings[Key]): Change =>
  (settings) => ({ ...settings, [key]: value });

const choice = <Key extends 'outcome' | 'metric' | 'curve' | 'weighting'>(
  key: Key,
  label: string,
  help: string,
  options: readonly (readonly [Settings[Key], string])[],
): ChoiceControl => ({
  kind: 'choice',
  id: key,
  label,
  help,
  options: options.map(([value, name]) => ({ value, label: name })),
  read: (settings) => settings[key],
  write: (value) => {
    const found = options.find(([one]) => one === value);
    return found ? set(key, found[0] as Settings[Key]) : (settings) => settings;
  },
});

export const CURVE_NAMES = {
  line: 'straight line',
  log: 'logarithm',
  quadratic: 'parabola',
  spline: 'spline',
} as const satisfies Readonly<Record<Settings['curve'], string>>;

/** Limits of the split, per cent of 1RM, and where it stands when loads are put apart. */
export const SPLIT = { min: 30, max: 85, usual: defaultSettings.split ?? 60 } as const;

/** A share in per cent, as exact as it is: one that an address gives need not be whole. */
const percentOf = (share: number) => Number(writePercentNumber(share));

export const SETTING_CONTROLS: readonly Control[] = [
  choice(
    'outcome',
    'Outcome',
    'What is drawn against reserve. Strength usually shows a flat line where growth slopes.',
    [
      ['growth', 'growth'],
      ['strength', 'strength'],
    ],
  ),
  choice('curve', 'Curve', 'A bend near failure moves the target closer to it; four shapes are compared below.', [
    ['line', CURVE_NAMES.line],
    ['log', CURVE_NAMES.log],
    ['quadratic', CURVE_NAMES.quadratic],
    ['spline', CURVE_NAMES.spline],
  ]),
  choice(
    'weighting',
    'Weighting',
    'Precision lets a few large studies decide; the mixed model shares the weight out; equal ignores size.',
    [
      ['mixed', 'mixed model'],
      ['precision', 'precision only'],
      ['equal', 'all rows equal'],
    ],
  ),
  {
    kind: 'choice',
    id: 'separate',
    label: 'Loads',
    help: 'One fit of all loads has more rows and a narrower band, but hides that loads may differ.',
    options: [
      { value: 'two', label: 'light and heavy apart' },
      { value: 'one', label: 'all loads together' },
    ],
    read: ({ split }) => (split === null ? 'one' : 'two'),
    write: (value) => set('split', value === 'one' ? null : SPLIT.usual),
  },
  {
    kind: 'number',
    id: 'split',
    label: 'Split',
    help: 'Loads below it are light. Moving it takes studies from one curve to the other; the target should not jump.',
    min: SPLIT.min,
    max: SPLIT.max,
    step: 1,
    unit: '% of 1RM',
    read: ({ split }) => split ?? SPLIT.usual,
    write: (value) => set('split', value),
  },
  {
    kind: 'number',
    id: 'keep',
    label: 'Growth to keep',
    help: 'Share of the growth at reserve 0. More brings the target closer to failure; the curve stays.',
    min: 50,
    max: 99,
    step: 1,
    unit: '%',
    read: ({ keptShare }) => percentOf(keptShare),
    write: (value) => set('keptShare', value / 100),
  },
  {
    kind: 'number',
    id: 'level',
    label: 'Confidence',
    help: 'Higher widens every interval; estimates stay.',
    min: 50,
    max: 99,
    step: 1,
    unit: '%',
    read: ({ confidence }) => percentOf(confidence),
    write: (value) => set('confidence', value / 100),
  },
  choice('metric', 'Metric', 'Per cent change does not depend on how alike people were; standardised change does.', [
    ['log-ratio', 'per cent change (log ratio)'],
    ['standardised', 'change in baseline SDs'],
  ]),
  {
    kind: 'number',
    id: 'rho',
    label: 'Correlation of sampling errors',
    help: 'Of rows that measured the same people. Higher counts them for less; the slope usually moves little.',
    min: 0,
    max: 0.95,
    step: 0.05,
    unit: '',
    read: ({ rho }) => rho,
    write: (value) => set('rho', value),
  },
  {
    kind: 'number',
    id: 'r',
    label: 'Assumed correlation',
    help: 'Of before with after, where a row gives none. Lower makes those rows less precise and count for less.',
    min: 0,
    max: 0.99,
    step: 0.01,
    unit: '',
    read: ({ assumedCorrelation, outcome }) => assumedCorrelation[outcome],
    write: (value) => (settings) => ({
      ...settings,
      assumedCorrelation: { ...settings.assumedCorrelation, [settings.outcome]: value },
    }),
  },
  {
    kind: 'choice',
    id: 'adjust',
    label: 'Adjusted for',
    help: 'Holds what else differs between arms at its mean. A slope that vanishes then was not one of reserve.',
    options: [
      { value: '', label: 'nothing' },
      { value: 'load', label: 'load' },
      { value: 'weekly-sets', label: 'weekly sets' },
      { value: 'weeks', label: 'weeks' },
      { value: 'training-status', label: 'training status' },
      { value: ADJUSTMENTS.join(','), label: 'all four' },
    ],
    read: ({ adjust }) => ADJUSTMENTS.filter((name) => adjust.includes(name)).join(','),
    write: (value) =>
      set(
        'adjust',
        ADJUSTMENTS.filter((name) => value.split(',').includes(name)),
      ),
  },
];

/** What of the table the filters can choose between. */
export type FilterOptions = Readonly<Record<FilterKey, readonly string[]>>;

const FILTERS: readonly Omit<ListControl, 'options' | 'kind' | 'id'>[] = [
  {
    key: 'trainingStatus',
    label: 'Training status',
    help: 'Trained people grow less, whatever the reserve; the slope may differ too.',
  },
  { key: 'sex', label: 'Sex', help: 'Fewer studies, wider bands; differences are rarely larger than that.' },
  { key: 'joints', label: 'Joints moved', help: 'Single-joint exercise is easier to take to failure.' },
  { key: 'muscle', label: 'Muscle', help: 'One muscle is often left with too few studies to fit.' },
  { key: 'measure', label: 'Measure', help: 'Thickness and area need not change by the same share.' },
  {
    key: 'concerns',
    label: 'Concerns about bias',
    help: "The curator's judgement. Leaving out high concerns should not turn the slope round.",
  },
  { key: 'design', label: 'Design', help: 'Within-person designs compare limbs of one person and are more precise.' },
  {
    key: 'failureDefinition',
    label: 'Failure meant',
    help: 'A stricter definition calls the same set closer to failure.',
  },
  {
    key: 'reserveBasis',
    label: 'Reserve known from',
    help: 'Prescriptions are not always followed; measured reserve usually steepens the slope.',
  },
];

export function listFilters(options: FilterOptions): readonly ListControl[] {
  return FILTERS.map((filter) => ({ ...filter, kind: 'list', id: filter.key, options: options[filter.key] }));
}

/** Options of a choice, with the present value where an address gave one that is not among them. */
export function optionsWith(
  options: ChoiceControl['options'],
  value: string,
): readonly { readonly value: string; readonly label: string }[] {
  const isListed = options.some((option) => option.value === value);
  return isListed ? options : [...options, { value, label: value.split(',').join(' and ') }];
}

/** Words of a filter that are ticked: all of them where none is chosen, since an empty list keeps every row. */
export function tickedWords(filter: ListControl, { include }: Settings): readonly string[] {
  const chosen: readonly string[] = include[filter.key];
  return chosen.length === 0 ? filter.options : filter.options.filter((word) => chosen.includes(word));
}

/** A filter with one word ticked or not; the last one stays, since an empty list would keep every row. */
export function toggleFilter(filter: ListControl, word: string): Change {
  return (settings) => {
    const ticked = tickedWords(filter, settings);
    const next = filter.options.filter((one) => ticked.includes(one) !== (one === word));
    if (next.length === 0) return settings;
    const list = next.length === filter.options.length ? [] : next;
    return { ...settings, include: { ...settings.include, [filter.key]: list } };
  };
}

/** The first or last year of publication kept; at the end of the table's own years there is no limit. */
export function limitYears(key: 'yearFrom' | 'yearTo', year: number, years: Vocabulary['years']): Change {
  const isNoLimit = year === (key === 'yearFrom' ? years.low : years.high);
  return (settings) => ({ ...settings, include: { ...settings.include, [key]: isNoLimit ? null : year } });
}
