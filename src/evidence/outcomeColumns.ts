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
  }),
  measure: text({ ...outcome, required: true }),
  unit: text({ ...outcome, required: false }),
  hours_after: number(
    { from: 0, to: 336 },
    {
      ...outcome,
      required: false,
      unit: 'hours',
    },
  ),
  baseline_mean: number({ above: 0 }, { ...statistics }),
  baseline_sd: number({ above: 0 }, { ...statistics }),
  baseline_se: number({ above: 0 }, { ...statistics }),
  baseline_median: number({ above: 0 }, { ...statistics }),
  baseline_q1: number({ above: 0 }, { ...statistics }),
  baseline_q3: number({ above: 0 }, { ...statistics }),
  followup_mean: number({ above: 0 }, { ...statistics }),
  followup_sd: number({ above: 0 }, { ...statistics }),
  followup_se: number({ above: 0 }, { ...statistics }),
  followup_median: number({ above: 0 }, { ...statistics }),
  followup_q1: number({ above: 0 }, { ...statistics }),
  followup_q3: number({ above: 0 }, { ...statistics }),
  change_mean: number({}, { ...statistics }),
  change_sd: number({ above: 0 }, { ...statistics }),
  change_se: number({ above: 0 }, { ...statistics }),
  change_ci_low: number({}, { ...statistics }),
  change_ci_high: number({}, { ...statistics }),
  change_t: number({}, { ...statistics }),
  change_f: number(
    { from: 0 },
    {
      ...statistics,
    },
  ),
  change_p: pValue({
    ...statistics,
  }),
  change_df: number(
    { above: 0 },
    {
      ...statistics,
    },
  ),
  change_median: number({}, { ...statistics }),
  change_q1: number({}, { ...statistics }),
  change_q3: number({}, { ...statistics }),
  percent_change: number(
    { above: -100 },
    {
      ...statistics,
      unit: '%',
    },
  ),
  percent_change_sd: number(
    { above: 0 },
    {
      ...statistics,
      unit: '%',
    },
  ),
  percent_change_se: number({ above: 0 }, { ...statistics, unit: '%' }),
  percent_change_ci_low: number({}, { ...statistics, unit: '%' }),
  percent_change_ci_high: number({}, { ...statistics, unit: '%' }),
  ci_level: number({ from: 50, below: 100 }, { ...statistics, unit: '%' }),
  ci_kind: oneOf(INTERVAL_KINDS, {
    ...statistics,
  }),
  correlation: number({ above: -1, below: 1 }, { ...statistics }),
  effect: number({}, { ...statistics }),
  effect_variance: number(
    { above: 0 },
    {
      ...statistics,
    },
  ),
  effect_metric: oneOf(EFFECT_METRICS, {
    ...statistics,
  }),
  effect_standardiser: oneOf(STANDARDISERS, {
    ...statistics,
  }),
  effect_corrected: yesOrNo({
    ...statistics,
  }),
  how_read: oneOf(READINGS, {
    ...provenance,
  }),
  source_place: text({
    ...provenance,
  }),
  note: text({
    ...provenance,
  }),
} as const satisfies Record<string, Column<unknown>>;
