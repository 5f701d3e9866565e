/**
 * What a person calls the columns of `arms.csv`: a label, and help in few words. The data dictionary says the same at
 * length. The types name a column that has no words yet.
 */
import { ARM_COLUMNS, type ArmColumn } from './schema.ts';

export interface ColumnWords {
  readonly label: string;
  /** A sentence; what a cell may hold stands in the column itself. */
  readonly help: string;
}

export const COLUMN_WORDS: Readonly<Record<ArmColumn, ColumnWords>> = {
  study: { label: 'Name of the study', help: 'First author and year; the same as in your studies.csv.' },
  year: { label: 'Year', help: 'Of publication.' },
  design: { label: 'Who the arms are', help: 'It decides whether arms share their people, and so their errors.' },
  concerns: { label: 'Risk of bias', help: 'Your own judgement of how far bias may have moved the result.' },
  training_status: { label: 'Trained before', help: 'Whether the people were used to resistance training.' },
  sex: { label: 'Sex', help: 'Of the people.' },
  age_mean_years: { label: 'Mean age, years', help: 'Of the people.' },
  arm: { label: 'Name of the arm', help: 'One that no other arm of the study has.' },
  cohort: {
    label: 'Group of people',
    help: 'The same letter for the same people; it means nothing outside the study.',
  },
  n: { label: 'People in the arm', help: 'Those whose numbers are printed, after drop-outs.' },
  n_total: {
    label: 'People in several arms',
    help: 'Where only their total is printed; limbs, where limbs are the arms.',
  },
  n_total_arms: { label: 'Arms that share them', help: 'How many arms the total is over.' },
  exercise: { label: 'Exercise', help: 'The one trained.' },
  joints: { label: 'Joints that move', help: 'In the exercise.' },
  muscle: { label: 'Muscle', help: 'Trained and, for growth, measured.' },
  load_pct_1rm: { label: 'Load, % of 1RM', help: 'Mean over the training, or the range as it is printed.' },
  load_rm: { label: 'Load as a repetition maximum', help: 'The 8-12 of “8-12RM”, where no per cent is printed.' },
  reps_per_set: { label: 'Repetitions in a set', help: 'Those done on average, or the range as it is printed.' },
  reps_possible: { label: 'Repetitions possible', help: 'With the same load: tested, or done by the arm to failure.' },
  sets: { label: 'Sets in a session', help: 'Of the exercise.' },
  sessions_per_week: { label: 'Sessions in a week', help: 'On average, or the range.' },
  weeks: { label: 'Weeks of training', help: 'From the first session to the last.' },
  failure_definition: { label: 'What counted as failure', help: 'The event at which the study called a set failed.' },
  attempted_failure: {
    label: 'Tried until one failed',
    help: 'A repetition was tried and not completed: nothing was in reserve.',
  },
  reserve_reps: {
    label: 'Repetitions in reserve',
    help: 'Mean at the end of the sets, or the range as it is printed.',
  },
  reserve_sd: { label: 'SD of the reserve', help: 'How far off the mean reserve may be; empty beside a range.' },
  share_of_maximum_pct: { label: 'Share of those possible, %', help: 'Where the paper says what share was done.' },
  velocity_loss_pct: {
    label: 'Loss of velocity, %',
    help: 'At which sets ended. It is kept; no reserve is made of it.',
  },
  reserve_basis: { label: 'How the reserve is known', help: 'From the people, the plan, or a calculation.' },
  beyond_failure: { label: 'Work after failure', help: 'What the sets went on with once a repetition had failed.' },
  outcome: { label: 'Outcome', help: 'Which change was measured; for fatigue higher must be better.' },
  measure: { label: 'What was measured', help: 'Use the same words for the same thing in all studies.' },
  unit: { label: 'Unit', help: 'Of means and SDs; take it as printed.' },
  hours_after: { label: 'Hours after the session', help: 'For fatigue: when the second measurement was.' },
  baseline_mean: { label: 'Mean before', help: 'In the unit of the measure.' },
  baseline_sd: { label: 'SD before', help: 'Standard deviation between people.' },
  baseline_se: { label: 'SE before', help: 'Standard error of the mean.' },
  baseline_median: { label: 'Median before', help: 'In the unit of the measure.' },
  baseline_q1: { label: 'First quartile before', help: 'The lower end of the interquartile range.' },
  baseline_q3: { label: 'Third quartile before', help: 'The upper end of the interquartile range.' },
  followup_mean: { label: 'Mean after', help: 'In the unit of the measure.' },
  followup_sd: { label: 'SD after', help: 'Standard deviation between people.' },
  followup_se: { label: 'SE after', help: 'Standard error of the mean.' },
  followup_median: { label: 'Median after', help: 'In the unit of the measure.' },
  followup_q1: { label: 'First quartile after', help: 'The lower end of the interquartile range.' },
  followup_q3: { label: 'Third quartile after', help: 'The upper end of the interquartile range.' },
  change_mean: { label: 'Mean change', help: 'After minus before.' },
  change_sd: { label: 'SD of the change', help: 'Standard deviation between people.' },
  change_se: { label: 'SE of the change', help: 'Standard error of the mean change.' },
  change_ci_low: { label: 'Change, lower limit', help: 'Of its interval.' },
  change_ci_high: { label: 'Change, upper limit', help: 'Of its interval.' },
  change_t: { label: 't of the change', help: 'Of a paired t test.' },
  change_f: { label: 'F of the change', help: 'With 1 degree of freedom above: the square of t.' },
  change_p: { label: 'p of the change', help: 'Two-sided, as printed: a number, or a bound such as <0.001.' },
  change_df: { label: 'Degrees of freedom', help: 'Behind t, F, p and interval, where they are not people minus 1.' },
  change_median: { label: 'Median change', help: 'After minus before.' },
  change_q1: { label: 'First quartile of the change', help: 'The lower end of the interquartile range.' },
  change_q3: { label: 'Third quartile of the change', help: 'The upper end of the interquartile range.' },
  percent_change: { label: 'Change in per cent', help: 'Of before, as printed.' },
  percent_change_sd: { label: 'SD in per cent', help: 'Standard deviation of the per cent change between people.' },
  percent_change_se: { label: 'SE in per cent', help: 'Standard error of the mean per cent change.' },
  percent_change_ci_low: { label: 'Per cent, lower limit', help: 'Of the interval of the per cent change.' },
  percent_change_ci_high: { label: 'Per cent, upper limit', help: 'Of the interval of the per cent change.' },
  ci_level: { label: 'Level of the intervals, %', help: 'Empty means 95.' },
  ci_kind: { label: 'Kind of the intervals', help: 'Empty means confidence.' },
  correlation: { label: 'Correlation', help: 'Of before with after, between people.' },
  effect: { label: 'Effect', help: 'As the paper gives it.' },
  effect_variance: { label: 'Variance of the effect', help: 'A standardised effect may come without.' },
  effect_metric: { label: 'Metric of the effect', help: 'Log of after over before, or in standard deviations.' },
  effect_standardiser: { label: 'Divided by which SD', help: 'Of a standardised effect; empty where it is not said.' },
  effect_corrected: { label: 'Corrected for small samples', help: 'A standardised effect that is a g and no d.' },
  how_read: { label: 'What of the paper was read', help: 'Said on every page that shows the table.' },
  source_place: { label: 'Place in the paper', help: 'Page, table or figure that the numbers stand in.' },
  note: { label: 'Note', help: 'Anything that a reader should know.' },
};

/** A text about the table with words for its columns: “0, since `attempted_failure` is yes” names the entry by its label. */
export function nameColumns(text: string): string {
  return text.replace(/`([a-z0-9_]+)`/gu, (written, name: string) =>
    isArmColumn(name) ? `“${COLUMN_WORDS[name].label}”` : written,
  );
}

export function isArmColumn(name: string | null): name is ArmColumn {
  return name !== null && Object.hasOwn(ARM_COLUMNS, name);
}
