/**
 * The columns of `arms.csv` (one row: one measurement on one arm of one study) and `studies.csv`
 * (one row a study). This is the single source: validation, messages, the data dictionary, the
 * Table Schema and the TypeScript types all come from here.
 *
 * To add a column: add it here, run `npm run dictionary`, and use it.
 */
import { type CellOf, type Column, integer, number, oneOf, text, yesOrNo } from './column.ts';
import {
  BEYOND_FAILURE,
  CONCERNS,
  DESIGNS,
  EFFECT_METRICS,
  FAILURE_DEFINITIONS,
  JOINTS,
  OUTCOMES,
  RESERVE_BASES,
  SEXES,
  TRAINING_STATUSES,
} from './vocabulary.ts';

const study = { group: 'study' } as const;
const arm = { group: 'arm' } as const;
const training = { group: 'training' } as const;
const proximity = { group: 'proximity to failure' } as const;
const outcome = { group: 'outcome' } as const;
const statistics = { group: 'statistics', required: false } as const;
const provenance = { group: 'provenance', required: false } as const;

export const ARM_COLUMNS = {
  study: text({
    ...study,
    required: true,
    example: 'Plover 2012',
    description: 'Name of the study, the same in every row and in studies.csv.',
  }),
  year: integer(
    { from: 1900, to: 2100 },
    { ...study, required: true, example: '2012', description: 'Year of publication.' },
  ),
  design: oneOf(DESIGNS, {
    ...study,
    required: true,
    example: 'within-person',
    description: 'Whether arms are different people, limbs of the same people, or the same people one after the other.',
  }),
  concerns: oneOf(CONCERNS, {
    ...study,
    required: false,
    example: 'some',
    description: "The curator's judgement of how far bias may have moved the result.",
  }),
  training_status: oneOf(TRAINING_STATUSES, {
    ...study,
    required: true,
    example: 'trained',
    description: 'Whether participants were used to resistance training.',
  }),
  sex: oneOf(SEXES, { ...study, required: false, example: 'mixed', description: 'Sex of the participants.' }),
  age_mean_years: number(
    { above: 0, to: 120 },
    { ...study, required: false, unit: 'years', example: '24.5', description: 'Mean age of the participants.' },
  ),
  arm: text({
    ...arm,
    required: true,
    example: 'to failure',
    description: 'Name of the arm, unique inside its study.',
  }),
  cohort: text({
    ...arm,
    required: false,
    example: 'a',
    description:
      'Rows with the same cohort in a study measured the same people, so their errors are correlated. The same word in two studies means nothing; empty shares with no row.',
  }),
  n: integer(
    { from: 2, to: 100000 },
    { ...arm, required: true, unit: 'people', example: '14', description: 'Number of people behind the row.' },
  ),
  exercise: text({ ...training, required: true, example: 'leg press', description: 'Exercise trained.' }),
  joints: oneOf(JOINTS, {
    ...training,
    required: false,
    example: 'multi',
    description: 'Whether one joint or several move.',
  }),
  muscle: text({
    ...training,
    required: false,
    example: 'quadriceps',
    description: 'Muscle trained and, for growth, measured.',
  }),
  load_pct_1rm: number(
    { above: 0, to: 100 },
    {
      ...training,
      required: false,
      unit: '% of 1RM',
      example: '75',
      description: 'Mean load in per cent of one-repetition maximum. Empty: the row serves no analysis by load.',
    },
  ),
  reps_per_set: number(
    { above: 0, to: 1000 },
    {
      ...training,
      required: false,
      unit: 'repetitions',
      example: '10',
      description: 'Mean repetitions done in a set.',
    },
  ),
  sets: number(
    { above: 0, to: 100 },
    {
      ...training,
      required: false,
      unit: 'sets per session',
      example: '3',
      description: 'Sets of the exercise in a session.',
    },
  ),
  sessions_per_week: number(
    { above: 0, to: 21 },
    { ...training, required: false, unit: 'sessions per week', example: '2', description: 'Sessions in a week.' },
  ),
  weeks: number(
    { above: 0, to: 520 },
    { ...training, required: false, unit: 'weeks', example: '8', description: 'Length of the training.' },
  ),
  failure_definition: oneOf(FAILURE_DEFINITIONS, {
    ...proximity,
    required: false,
    example: 'muscular',
    description:
      'Which event the study counted as failure. technique: the agreed form could not be kept; full range: the full range of motion could not be completed; muscular: the muscle could do no more, a little momentum or a shortened range allowed; task: the repetition would not have been passed under the rules of the lift.',
  }),
  attempted_failure: yesOrNo({
    ...proximity,
    required: false,
    example: 'no',
    description: 'Whether a repetition was attempted and not completed; such a set has reserve 0.',
  }),
  reserve_reps: number(
    { from: 0, to: 30 },
    {
      ...proximity,
      required: false,
      unit: 'repetitions',
      example: '2',
      description:
        'Mean repetitions in reserve when the sets ended. Empty: the row is listed as left out of the dose-response.',
    },
  ),
  reserve_sd: number(
    { from: 0, to: 30 },
    {
      ...proximity,
      required: false,
      unit: 'repetitions',
      example: '1.2',
      description: 'Standard deviation of what the mean reserve may really have been.',
    },
  ),
  reserve_basis: oneOf(RESERVE_BASES, {
    ...proximity,
    required: false,
    example: 'prescribed',
    description:
      'How reserve is known. reported: measured or asked; prescribed: what participants were told; share-of-maximum: from a stated share of the repetitions possible; velocity-loss: from the slowing of the bar; load-table: from repetitions done and the load.',
  }),
  beyond_failure: oneOf(BEYOND_FAILURE, {
    ...proximity,
    required: false,
    example: 'none',
    description:
      'Work after failure: shortened-range repetitions (partials) or immediate reductions of load. Empty means none.',
  }),
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

export const STUDY_COLUMNS = {
  study: text({ ...study, required: true, example: 'Plover 2012', description: 'Name of the study as in arms.csv.' }),
  authors: text({
    ...study,
    required: true,
    example: 'Plover A, Wren B',
    description: 'Authors, family name first, separated by commas.',
  }),
  year: integer(
    { from: 1900, to: 2100 },
    { ...study, required: true, example: '2012', description: 'Year of publication.' },
  ),
  title: text({ ...study, required: true, example: 'Invented for demonstration', description: 'Title of the paper.' }),
  journal: text({ ...study, required: false, example: 'Demonstration Papers', description: 'Journal or publisher.' }),
  volume: text({ ...study, required: false, example: '12(3)', description: 'Volume and issue.' }),
  pages: text({ ...study, required: false, example: '101–110', description: 'Pages or article number.' }),
  doi: text({
    ...study,
    required: false,
    example: '10.1000/example',
    description: 'Digital object identifier without an address before it.',
  }),
  note: text({
    ...study,
    required: false,
    example: 'invented for demonstration',
    description: 'Anything a reader should know.',
  }),
} as const satisfies Record<string, Column<unknown>>;

type Cells<Columns extends Record<string, Column<unknown>>> = {
  readonly [Name in keyof Columns]: CellOf<Columns[Name]>;
};

/** A validated row of arms.csv; keys are the column names, an empty optional cell is null. */
export type Arm = Cells<typeof ARM_COLUMNS> & {
  /** Physical line in the file; the header is line 1. */
  readonly line: number;
};

/** A validated row of studies.csv. */
export type Study = Cells<typeof STUDY_COLUMNS> & { readonly line: number };

export type ArmColumn = keyof typeof ARM_COLUMNS;
