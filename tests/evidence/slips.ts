/** One cell of a row spoilt, in each way in which statistics come to contradict one another, and what must be told. */
import type { Name } from '../support/simulatedStatistics.ts';
import type { Cells } from '../support/tables.ts';

export interface Slip {
  readonly what: string;
  readonly left: readonly Name[];
  readonly spoil: (cells: Readonly<Record<Name, string>>, n: number) => Cells;
  readonly column: Name;
  readonly expected: RegExp;
  readonly isProblem?: true;
}

const times = (text: string, factor: number, digits = 2) => (Number(text) * factor).toFixed(digits);
const plus = (text: string, more: number) => (Number(text) + more).toFixed(2);
const SPREAD: readonly Name[] = ['change_sd', 'change_se', 'change_ci_low', 'change_ci_high'];

export const SLIPS: readonly Slip[] = [
  {
    what: 't of the other sign than the printed change',
    left: [],
    spoil: ({ change_t }) => ({ change_t: times(change_t, -1) }),
    column: 'change_t',
    expected: /^a t (?:above|below) 0, as the change is .*`change_mean`/,
  },
  {
    what: 't of the other sign than the means',
    left: ['change_mean'],
    spoil: ({ change_t }) => ({ change_t: times(change_t, -1) }),
    column: 'change_t',
    expected: /`followup_mean`.*`baseline_mean`/,
  },
  {
    what: 'a p that is not that of t',
    left: [],
    spoil: ({ change_p }) => ({ change_p: Number(change_p) > 0.3 ? '0.0010' : '0.6000' }),
    column: 'change_p',
    expected: /two-sided one of `change_t`/,
  },
  {
    what: 'a p that is not that of the change and its error',
    left: ['change_t', 'change_f'],
    spoil: ({ change_p }) => ({ change_p: Number(change_p) > 0.3 ? '0.0010' : '0.6000' }),
    column: 'change_p',
    expected: /`change_se`/,
  },
  {
    what: 'a t that is not the change over its error',
    left: ['change_p', 'change_f'],
    spoil: ({ change_t }) => ({ change_t: plus(change_t, Math.sign(Number(change_t)) * 3) }),
    column: 'change_t',
    expected: /`change_mean` .* and `change_se`/,
  },
  {
    what: 'a t that is not what the interval says',
    left: ['change_p', 'change_f', 'change_sd', 'change_se'],
    spoil: ({ change_t }) => ({ change_t: plus(change_t, Math.sign(Number(change_t)) * 3) }),
    column: 'change_t',
    expected: /`change_ci_low`.*`change_ci_high`/,
  },
  {
    what: 'a standard error that is the SD',
    left: [],
    spoil: ({ change_sd }) => ({ change_se: change_sd }),
    column: 'change_se',
    expected: /`change_sd`.*√n/,
    isProblem: true,
  },
  {
    what: 'an SD that is the standard error',
    left: [],
    spoil: ({ change_se }) => ({ change_sd: change_se }),
    column: 'change_se',
    expected: /`change_sd`.*√n/,
    isProblem: true,
  },
  {
    what: 'SD and standard error exchanged',
    left: [],
    spoil: ({ change_se, change_sd }) => ({ change_sd: change_se, change_se: change_sd }),
    column: 'change_se',
    expected: /`n`/,
    isProblem: true,
  },
  {
    what: 'a standard error of other people',
    left: [],
    spoil: ({ change_se }) => ({ change_se: times(change_se, 1.5) }),
    column: 'change_se',
    expected: /divided by √n/,
  },
  {
    what: 'an interval beside the printed change',
    left: [],
    spoil: ({ change_ci_low, change_ci_high }) => ({
      change_ci_low: plus(change_ci_low, 60),
      change_ci_high: plus(change_ci_high, 60),
    }),
    column: 'change_mean',
    expected: /inside its interval/,
    isProblem: true,
  },
  {
    what: 'an interval beside the change of the means',
    left: ['change_mean'],
    spoil: ({ change_ci_low, change_ci_high }) => ({
      change_ci_low: plus(change_ci_low, 60),
      change_ci_high: plus(change_ci_high, 60),
    }),
    column: 'change_ci_low',
    expected: /holds the change/,
  },
  {
    what: 'an interval that is not centred on the change',
    left: [],
    spoil: ({ change_ci_high }) => ({ change_ci_high: plus(change_ci_high, 2) }),
    column: 'change_ci_high',
    expected: /as far above the change as `change_ci_low`/,
  },
  {
    what: 'an interval too wide for its SD',
    left: ['change_t', 'change_p', 'change_se'],
    spoil: ({ change_ci_low, change_ci_high }) => ({
      change_ci_low: plus(change_ci_low, -0.8),
      change_ci_high: plus(change_ci_high, 0.8),
    }),
    column: 'change_ci_high',
    expected: /apart, as `change_sd`.*`n`/,
  },
  {
    what: 'a correlation that three SDs exclude',
    left: [],
    spoil: () => ({ correlation: '0.3' }),
    column: 'correlation',
    expected: /`baseline_sd`.*`followup_sd`.*`change_sd`/,
  },
  {
    what: 'a correlation that two SDs and an interval exclude',
    left: ['change_sd', 'change_se', 'change_t', 'change_p'],
    spoil: () => ({ correlation: '0.3' }),
    column: 'correlation',
    expected: /`change_ci_low`/,
  },
  {
    what: 'a correlation with which no SD after fits',
    left: ['followup_sd'],
    spoil: ({ change_sd, baseline_sd }) => ({
      correlation: Number(change_sd) < 0.9 * Number(baseline_sd) ? '0.1' : '-0.5',
    }),
    column: 'correlation',
    expected: /differ as little as `change_sd`/,
  },
  ...(['baseline', 'followup'] as const).map(
    (when): Slip => ({
      what: `an SD ${when} that is a thousandth of the mean`,
      left: [],
      spoil: (cells) => ({ [`${when}_sd`]: times(cells[`${when}_mean`], 0.001, 3) }),
      column: `${when}_sd`,
      expected: /at least 1 % of the mean/,
    }),
  ),
  {
    what: 'an SD of the change in another unit',
    left: ['change_se', 'correlation', 'change_t', 'change_p', 'change_ci_low', 'change_ci_high'],
    spoil: ({ baseline_mean }) => ({ change_sd: times(baseline_mean, 0.0005, 4) }),
    column: 'change_sd',
    expected: /at least 0\.1 % of the mean/,
  },
  {
    what: 'a change that is not that of the means',
    left: SPREAD.concat('change_t', 'change_p'),
    spoil: ({ change_mean }) => ({ change_mean: plus(change_mean, 5) }),
    column: 'change_mean',
    expected: /mean after minus the mean before/,
  },
  {
    what: 'an F that is not the square of t',
    left: [],
    spoil: ({ change_t }) => ({ change_f: (Number(change_t) ** 2 + 9).toFixed(4) }),
    column: 'change_f',
    expected: /the square of `change_t`/,
  },
  {
    what: 'a p that is not that of F',
    left: ['change_t'],
    spoil: ({ change_p }) => ({ change_p: Number(change_p) > 0.3 ? '0.0010' : '0.6000' }),
    column: 'change_p',
    expected: /two-sided one of `change_f`/,
  },
  {
    what: 'an F that is not that of the change and its error',
    left: ['change_t', 'change_p'],
    spoil: ({ change_f }) => ({ change_f: plus(change_f, 40) }),
    column: 'change_f',
    expected: /root of F of the size .*`change_se`/,
  },
  ...(['baseline', 'followup', 'percent_change'] as const).map(
    (of): Slip => ({
      what: `a standard error that is the SD, ${of}`,
      left: [],
      spoil: (cells) => ({ [`${of}_se`]: cells[`${of}_sd`] }),
      column: `${of}_se`,
      expected: /divided by √n/,
      isProblem: true,
    }),
  ),
  {
    what: 'a change in per cent outside its interval',
    left: [],
    spoil: ({ percent_change_ci_low, percent_change_ci_high }) => ({
      percent_change_ci_low: plus(percent_change_ci_low, 60),
      percent_change_ci_high: plus(percent_change_ci_high, 60),
    }),
    column: 'percent_change',
    expected: /inside its interval/,
    isProblem: true,
  },
  {
    what: 'a change in per cent that is not near that of the means',
    left: ['percent_change_ci_low', 'percent_change_ci_high'],
    spoil: ({ percent_change }) => ({ percent_change: plus(percent_change, 12) }),
    column: 'percent_change',
    expected: /a change near .*`baseline_mean`/,
  },
  {
    what: 'a change in per cent of the other sign',
    left: ['baseline_mean', 'followup_mean', 'percent_change_ci_low', 'percent_change_ci_high'],
    spoil: ({ change_mean }) => ({ percent_change: Number(change_mean) > 0 ? '-3.00' : '3.00' }),
    column: 'percent_change',
    expected: /(?:above|below) 0, as `change_mean`/,
  },
];
