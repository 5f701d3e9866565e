/**
 * What stands in the columns of `arms.csv`, for the data dictionary and for who fills them in; reading a table needs
 * none of it, so that the pages that only read do not carry it. The types name a column that has no meaning yet.
 */
import { ARM_COLUMNS, type ArmColumn } from './schema.ts';

interface ColumnMeaning {
  readonly example: string;
  readonly description: string;
}

export const COLUMN_MEANINGS: Readonly<Record<ArmColumn, ColumnMeaning>> = {
  study: { example: 'Plover 2012', description: 'Name of the study, the same in every row and in studies.csv.' },
  year: { example: '2012', description: 'Year of publication.' },
  design: {
    example: 'within-person',
    description: 'Whether arms are different people, limbs of the same people, or the same people one after the other.',
  },
  concerns: { example: 'some', description: "The curator's judgement of how far bias may have moved the result." },
  training_status: { example: 'trained', description: 'Whether participants were used to resistance training.' },
  sex: { example: 'mixed', description: 'Sex of the participants.' },
  age_mean_years: { example: '24.5', description: 'Mean age of the participants.' },
  arm: { example: 'to failure', description: 'Name of the arm, unique inside its study.' },
  cohort: {
    example: 'a',
    description:
      'Rows with the same cohort in a study measured the same people, so their errors are correlated. The same word in two studies means nothing; empty shares with no row.',
  },
  n: {
    example: '14',
    description:
      'Number of people behind the row. Empty: an equal share of `n_total` is assumed where that is given; without either the row has no variance.',
  },
  n_total: {
    example: '43',
    description: 'People (limbs, where limbs are the arms) over several arms, where the paper prints only their total.',
  },
  n_total_arms: { example: '3', description: 'Number of arms that share `n_total`.' },
  exercise: { example: 'leg press', description: 'Exercise trained.' },
  joints: { example: 'multi', description: 'Whether one joint or several move.' },
  muscle: { example: 'quadriceps', description: 'Muscle trained and, for growth, measured.' },
  load_pct_1rm: {
    example: '75',
    description:
      'Mean load in per cent of one-repetition maximum, or the range printed. Empty: estimated from `load_rm` where that is given, else the row serves no analysis by load.',
  },
  load_rm: {
    example: '8-12',
    description: 'Load as a repetition maximum, the most repetitions possible with it, where no per cent is printed.',
  },
  reps_per_set: { example: '10', description: 'Mean repetitions done in a set, or the range printed.' },
  reps_possible: {
    example: '12.4',
    description:
      'Mean repetitions possible with the same load, as tested or as done by the arm to failure. Without `reserve_reps` the reserve is these minus `reps_per_set`.',
  },
  sets: { example: '3', description: 'Sets of the exercise in a session.' },
  sessions_per_week: { example: '2', description: 'Sessions in a week.' },
  weeks: {
    example: '8',
    description:
      'Length of the training up to this measurement. A measurement halfway may stand beside that of the end; fits read the end.',
  },
  failure_definition: {
    example: 'muscular',
    description:
      'Which event the study counted as failure. technique: the agreed form could not be kept; full range: the full range of motion could not be completed; muscular: the muscle could do no more, a little momentum or a shortened range allowed; task: the repetition would not have been passed under the rules of the lift.',
  },
  attempted_failure: {
    example: 'no',
    description: 'Whether a repetition was attempted and not completed; such a set has reserve 0.',
  },
  reserve_reps: {
    example: '2',
    description:
      'Mean repetitions in reserve when the sets ended, or the range printed. Empty: from `reps_possible` where that is given, else the row is listed as left out of the dose-response.',
  },
  reserve_sd: {
    example: '1.2',
    description:
      'Standard deviation of what the mean reserve may really have been. Empty beside a range: its width / √12.',
  },
  share_of_maximum_pct: {
    example: '50',
    description:
      'Repetitions done as a share of those possible, where the paper says it so; `reps_possible` makes a reserve of it.',
  },
  velocity_loss_pct: {
    example: '20',
    description: 'Loss of bar speed at which sets ended. It is kept and shown; no reserve is made of it.',
  },
  reserve_basis: {
    example: 'prescribed',
    description:
      'How reserve is known. reported: measured or asked; prescribed: what participants were told; repetitions: those possible minus those done with the same load; share-of-maximum: from a stated share of the repetitions possible; velocity-loss: from the slowing of the bar; load-table: from repetitions done and the load.',
  },
  beyond_failure: {
    example: 'none',
    description:
      'Work after failure: shortened-range repetitions (partials), immediate reductions of load (load-drops), a few seconds of rest and more repetitions (rest-pause), or repetitions with help (assisted). Empty means none.',
  },
  outcome: {
    example: 'growth',
    description:
      'growth: change in muscle size; strength: change in a maximal strength test; fatigue: performance before and some hours after one session, higher being better.',
  },
  measure: { example: 'muscle thickness', description: 'What was measured.' },
  unit: { example: 'mm', description: 'Unit of the means and standard deviations.' },
  hours_after: { example: '24', description: 'Fatigue only: hours from the session to the second measurement.' },
  baseline_mean: { example: '42.1', description: 'Mean before, in the unit of the row.' },
  baseline_sd: { example: '6.3', description: 'Standard deviation between people before.' },
  baseline_se: { example: '1.7', description: 'Standard error of the mean before.' },
  baseline_median: { example: '41.8', description: 'Median before.' },
  baseline_q1: { example: '37.6', description: 'First quartile before.' },
  baseline_q3: { example: '46.2', description: 'Third quartile before.' },
  followup_mean: { example: '45.2', description: 'Mean after.' },
  followup_sd: { example: '6.5', description: 'Standard deviation between people after.' },
  followup_se: { example: '1.7', description: 'Standard error of the mean after.' },
  followup_median: { example: '44.9', description: 'Median after.' },
  followup_q1: { example: '40.7', description: 'First quartile after.' },
  followup_q3: { example: '49.3', description: 'Third quartile after.' },
  change_mean: { example: '3.1', description: 'Mean change, after minus before.' },
  change_sd: { example: '2.4', description: 'Standard deviation of the change between people.' },
  change_se: { example: '0.64', description: 'Standard error of the mean change.' },
  change_ci_low: { example: '1.7', description: 'Lower limit of the interval of the mean change, at `ci_level`.' },
  change_ci_high: { example: '4.5', description: 'Upper limit of the interval of the mean change, at `ci_level`.' },
  change_t: { example: '4.84', description: 't statistic of the change, paired, n − 1 degrees of freedom.' },
  change_f: {
    example: '23.4',
    description: 'F statistic of the change with 1 degree of freedom above, the square of t.',
  },
  change_p: {
    example: '0.0003',
    description: 'Two-sided p-value of the change, paired t test; a bound counts as its end.',
  },
  change_df: {
    example: '26',
    description: 'Degrees of freedom behind t, F, p and interval of the change, where they are not n − 1.',
  },
  change_median: { example: '3.0', description: 'Median change.' },
  change_q1: { example: '1.4', description: 'First quartile of the change.' },
  change_q3: { example: '4.6', description: 'Third quartile of the change.' },
  percent_change: {
    example: '7.4',
    description: 'Mean change in per cent of before, as printed; means need not stand beside it.',
  },
  percent_change_sd: { example: '5.9', description: 'Standard deviation of the per cent change between people.' },
  percent_change_se: { example: '1.6', description: 'Standard error of the mean per cent change.' },
  percent_change_ci_low: { example: '4.0', description: 'Lower limit of the interval of the per cent change.' },
  percent_change_ci_high: { example: '10.8', description: 'Upper limit of the interval of the per cent change.' },
  ci_level: { example: '90', description: 'Level of the intervals in the row. Empty means 95.' },
  ci_kind: {
    example: 'confidence',
    description:
      'How the intervals were made. credible: of a posterior, highest density or equal tails. Empty means confidence.',
  },
  correlation: { example: '0.92', description: 'Correlation of baseline with follow-up between people.' },
  effect: { example: '0.071', description: 'Ready-made effect, where a paper gives no means.' },
  effect_variance: {
    example: '0.0002',
    description: 'Sampling variance of the ready-made effect; a standardised effect may come without.',
  },
  effect_metric: {
    example: 'log-ratio',
    description:
      'Metric of the ready-made effect: natural log of follow-up over baseline, or change in baseline standard deviations.',
  },
  effect_standardiser: {
    example: 'baseline-sd',
    description:
      'What a standardised effect was divided by: the SD before, that of before and after pooled, or that of the change. Empty where the paper does not say.',
  },
  effect_corrected: {
    example: 'no',
    description: 'Whether a standardised effect has the correction for small samples (g in place of d).',
  },
  how_read: {
    example: 'full text',
    description:
      'What of the paper was read: its full text, its abstract alone, or another paper that quotes it (second-hand).',
  },
  source_place: { example: 'table 2', description: 'Page, table or figure of the paper that the numbers stand in.' },
  note: { example: 'read from the figure', description: 'Anything a reader of the row should know.' },
};

/** The columns with what each means. */
export const DESCRIBED_ARM_COLUMNS = Object.fromEntries(
  Object.entries(ARM_COLUMNS).map(([name, column]) => [name, { ...column, ...COLUMN_MEANINGS[name as ArmColumn] }]),
) as { readonly [Name in ArmColumn]: (typeof ARM_COLUMNS)[Name] & ColumnMeaning };
