/** The last columns of `arms.csv`: what was measured, its statistics, and where they were printed. */
import { type Column, number, oneOf, text, yesOrNo } from './column.ts';
import { pValue } from './rangeColumn.ts';
import { EFFECT_METRICS, INTERVAL_KINDS, OUTCOMES, READINGS, STANDARDISERS } from './vocabulary.ts';

const outcome = { group: 'outcome' } as const;
const statistics = { group: 'statistics', required: false } as const;
const provenance = { group: 'provenance', required: false } as const;

/** Columns of `arms.csv` from the outcome on. */
export const OUTCOME_COLUMNS = {
  outcome: oneOf(OUTCOMES, {
    ...outcome,
    required: true,
    example: 'growth',
    description:
      'growth: change in muscle size; strength: change in a maximal strength test; fatigue: performance before and some hours after one session, higher being better.',
  }),
  measure: text({ ...outcome, required: true, example: 'muscle thickness', description: 'What was measured.' }),
  unit: text({ ...outcome, required: false, example: 'mm', description: 'Unit of the means and standard deviations.' }),
  hours_after: number(
    { from: 0, to: 336 },
    {
      ...outcome,
      required: false,
      unit: 'hours',
      example: '24',
      description: 'Fatigue only: hours from the session to the second measurement.',
    },
  ),
  baseline_mean: number(
    { above: 0 },
    { ...statistics, example: '42.1', description: 'Mean before, in the unit of the row.' },
  ),
  baseline_sd: number(
    { above: 0 },
    { ...statistics, example: '6.3', description: 'Standard deviation between people before.' },
  ),
  baseline_se: number(
    { above: 0 },
    { ...statistics, example: '1.7', description: 'Standard error of the mean before.' },
  ),
  baseline_median: number({ above: 0 }, { ...statistics, example: '41.8', description: 'Median before.' }),
  baseline_q1: number({ above: 0 }, { ...statistics, example: '37.6', description: 'First quartile before.' }),
  baseline_q3: number({ above: 0 }, { ...statistics, example: '46.2', description: 'Third quartile before.' }),
  followup_mean: number({ above: 0 }, { ...statistics, example: '45.2', description: 'Mean after.' }),
  followup_sd: number(
    { above: 0 },
    { ...statistics, example: '6.5', description: 'Standard deviation between people after.' },
  ),
  followup_se: number(
    { above: 0 },
    { ...statistics, example: '1.7', description: 'Standard error of the mean after.' },
  ),
  followup_median: number({ above: 0 }, { ...statistics, example: '44.9', description: 'Median after.' }),
  followup_q1: number({ above: 0 }, { ...statistics, example: '40.7', description: 'First quartile after.' }),
  followup_q3: number({ above: 0 }, { ...statistics, example: '49.3', description: 'Third quartile after.' }),
  change_mean: number({}, { ...statistics, example: '3.1', description: 'Mean change, after minus before.' }),
  change_sd: number(
    { above: 0 },
    { ...statistics, example: '2.4', description: 'Standard deviation of the change between people.' },
  ),
  change_se: number(
    { above: 0 },
    { ...statistics, example: '0.64', description: 'Standard error of the mean change.' },
  ),
  change_ci_low: number(
    {},
    { ...statistics, example: '1.7', description: 'Lower limit of the interval of the mean change, at `ci_level`.' },
  ),
  change_ci_high: number(
    {},
    { ...statistics, example: '4.5', description: 'Upper limit of the interval of the mean change, at `ci_level`.' },
  ),
  change_t: number(
    {},
    { ...statistics, example: '4.84', description: 't statistic of the change, paired, n − 1 degrees of freedom.' },
  ),
  change_f: number(
    { from: 0 },
    {
      ...statistics,
      example: '23.4',
      description: 'F statistic of the change with 1 degree of freedom above, the square of t.',
    },
  ),
  change_p: pValue({
    ...statistics,
    example: '0.0003',
    description: 'Two-sided p-value of the change, paired t test; a bound counts as its end.',
  }),
  change_df: number(
    { above: 0 },
    {
      ...statistics,
      example: '26',
      description: 'Degrees of freedom behind t, F, p and interval of the change, where they are not n − 1.',
    },
  ),
  change_median: number({}, { ...statistics, example: '3.0', description: 'Median change.' }),
  change_q1: number({}, { ...statistics, example: '1.4', description: 'First quartile of the change.' }),
  change_q3: number({}, { ...statistics, example: '4.6', description: 'Third quartile of the change.' }),
  percent_change: number(
    { above: -100 },
    {
      ...statistics,
      unit: '%',
      example: '7.4',
      description: 'Mean change in per cent of before, as printed; means need not stand beside it.',
    },
  ),
  percent_change_sd: number(
    { above: 0 },
    {
      ...statistics,
      unit: '%',
      example: '5.9',
      description: 'Standard deviation of the per cent change between people.',
    },
  ),
  percent_change_se: number(
    { above: 0 },
    { ...statistics, unit: '%', example: '1.6', description: 'Standard error of the mean per cent change.' },
  ),
  percent_change_ci_low: number(
    {},
    { ...statistics, unit: '%', example: '4.0', description: 'Lower limit of the interval of the per cent change.' },
  ),
  percent_change_ci_high: number(
    {},
    { ...statistics, unit: '%', example: '10.8', description: 'Upper limit of the interval of the per cent change.' },
  ),
  ci_level: number(
    { from: 50, below: 100 },
    { ...statistics, unit: '%', example: '90', description: 'Level of the intervals in the row. Empty means 95.' },
  ),
  ci_kind: oneOf(INTERVAL_KINDS, {
    ...statistics,
    example: 'confidence',
    description:
      'How the intervals were made. credible: of a posterior, highest density or equal tails. Empty means confidence.',
  }),
  correlation: number(
    { above: -1, below: 1 },
    { ...statistics, example: '0.92', description: 'Correlation of baseline with follow-up between people.' },
  ),
  effect: number(
    {},
    { ...statistics, example: '0.071', description: 'Ready-made effect, where a paper gives no means.' },
  ),
  effect_variance: number(
    { above: 0 },
    {
      ...statistics,
      example: '0.0002',
      description: 'Sampling variance of the ready-made effect; a standardised effect may come without.',
    },
  ),
  effect_metric: oneOf(EFFECT_METRICS, {
    ...statistics,
    example: 'log-ratio',
    description:
      'Metric of the ready-made effect: natural log of follow-up over baseline, or change in baseline standard deviations.',
  }),
  effect_standardiser: oneOf(STANDARDISERS, {
    ...statistics,
    example: 'baseline-sd',
    description:
      'What a standardised effect was divided by: the SD before, that of before and after pooled, or that of the change. Empty where the paper does not say.',
  }),
  effect_corrected: yesOrNo({
    ...statistics,
    example: 'no',
    description: 'Whether a standardised effect has the correction for small samples (g in place of d).',
  }),
  how_read: oneOf(READINGS, {
    ...provenance,
    example: 'full text',
    description:
      'What of the paper was read: its full text, its abstract alone, or another paper that quotes it (second-hand).',
  }),
  source_place: text({
    ...provenance,
    example: 'table 2',
    description: 'Page, table or figure of the paper that the numbers stand in.',
  }),
  note: text({
    ...provenance,
    example: 'read from the figure',
    description: 'Anything a reader of the row should know.',
  }),
} as const satisfies Record<string, Column<unknown>>;
