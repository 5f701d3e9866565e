/**
 * The controls of the Evidence page as data: what each is called, what it does, what usually happens
 * when it moves, and how it reads and changes the settings.
 */
import { CURVE_WORDS } from '../../figures/settingsWords.ts';
import { ADJUSTMENTS, CURVES, defaultSettings, type Settings, wordsOfSetting } from '../../model/settings.ts';
import { inPercent } from '../../numerics/percent.ts';

export type Change = (settings: Settings) => Settings;

interface ChoiceControl {
  readonly kind: 'choice';
  readonly id: string;
  readonly label: string;
  /** What the setting does, and what usually happens when it moves. */
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

export type Control = ChoiceControl | NumberControl;

const set =
  <Key extends keyof Settings>(key: Key, value: Settings[Key]): Change =>
  (settings) => ({ ...settings, [key]: value });

const helpOf = (key: keyof Settings, effect: string) => `${wordsOfSetting(key)} ${effect}`;

const choice = <Key extends 'outcome' | 'metric' | 'curve' | 'weighting' | 'missingSds'>(
  key: Key,
  label: string,
  effect: string,
  options: readonly (readonly [Settings[Key], string])[],
): ChoiceControl => ({
  kind: 'choice',
  id: key,
  label,
  help: helpOf(key, effect),
  options: options.map(([value, name]) => ({ value, label: name })),
  read: (settings) => settings[key],
  write: (value) => {
    const found = options.find(([one]) => one === value);
    return found ? set(key, found[0] as Settings[Key]) : (settings) => settings;
  },
});

/** Limits of the split, per cent of 1RM, and where it stands when loads are put apart. */
export const SPLIT = { min: 30, max: 85, usual: defaultSettings.split ?? 60 } as const;

export const SETTING_CONTROLS: readonly Control[] = [
  choice('outcome', 'Outcome', 'Strength usually shows a flat line where growth slopes.', [
    ['growth', 'growth'],
    ['strength', 'strength'],
  ]),
  choice(
    'curve',
    'Curve',
    'A bend near failure moves the target closer to it; all shapes are compared below.',
    CURVES.map((curve) => [curve, CURVE_WORDS[curve]]),
  ),
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
    help: helpOf('split', 'Moving it takes studies from one curve to the other; the target should not jump.'),
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
    help: helpOf('keptShare', 'More brings the target closer to failure; the curve stays.'),
    min: 50,
    max: 99,
    step: 1,
    unit: '%',
    read: ({ keptShare }) => inPercent(keptShare),
    write: (value) => set('keptShare', value / 100),
  },
  {
    kind: 'number',
    id: 'level',
    label: 'Confidence',
    help: helpOf('confidence', 'Higher widens every interval; estimates stay.'),
    min: 50,
    max: 99,
    step: 1,
    unit: '%',
    read: ({ confidence }) => inPercent(confidence),
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
    help: helpOf('rho', 'Higher counts them for less; the slope usually moves little.'),
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
    help: helpOf('assumedCorrelation', 'Lower makes those rows less precise and count for less.'),
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
  choice('missingSds', 'Missing SDs', 'Rows that print no spread come in; what they weigh is borrowed.', [
    ['off', 'rows without are left out'],
    ['missing', 'pooled for those without'],
    ['all', 'pooled for all rows'],
  ]),
  {
    kind: 'choice',
    id: 'adjust',
    label: 'Adjusted for',
    help: helpOf('adjust', 'A slope that vanishes then was not one of reserve.'),
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

/** Options of a choice, with the present value where an address gave one that is not among them. */
export function optionsWith(
  options: ChoiceControl['options'],
  value: string,
): readonly { readonly value: string; readonly label: string }[] {
  const isListed = options.some((option) => option.value === value);
  return isListed ? options : [...options, { value, label: value.split(',').join(' and ') }];
}
