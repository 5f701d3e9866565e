/** The last columns of `arms.csv`: what was measured, its statistics, and where they were printed. */
import { type Column, number, oneOf, text } from './column.ts';
import { EFFECT_METRICS, OUTCOMES } from './vocabulary.ts';

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
  followup_mean: number({ above: 0 }, { ...statistics, example: '45.2', description: 'Mean after.' }),
  followup_sd: number(
    { above: 0 },
    { ...statistics, example: '6.5', description: 'Standard deviation between people after.' },
  ),
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
    { ...statistics, example: '1.7', description: 'Lower limit of the 95 % interval of the mean change.' },
  ),
  change_ci_high: number(
    {},
    { ...statistics, example: '4.5', description: 'Upper limit of the 95 % interval of the mean change.' },
  ),
  change_t: number(
    {},
    { ...statistics, example: '4.84', description: 't statistic of the change, paired, n − 1 degrees of freedom.' },
  ),
  change_p: number(
    { above: 0, to: 1 },
    { ...statistics, example: '0.0003', description: 'Two-sided p-value of the change, paired t test.' },
  ),
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
    { ...statistics, example: '0.0002', description: 'Sampling variance of the ready-made effect.' },
  ),
  effect_metric: oneOf(EFFECT_METRICS, {
    ...statistics,
    example: 'log-ratio',
    description:
      'Metric of the ready-made effect: natural log of follow-up over baseline, or change in baseline standard deviations.',
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
