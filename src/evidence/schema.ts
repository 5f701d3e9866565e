/**
 * The columns of `arms.csv` (one row: one measurement on one arm of one study) and `studies.csv`
 * (one row a study). This is the single source: validation, messages, the data dictionary, the
 * Table Schema and the TypeScript types all come from here.
 *
 * To add a column: add it here or, where it says what was measured, in outcomeColumns.ts; run
 * `npm run dictionary`; use it.
 */
import { type Column, integer, number, oneOf, type RowOf, text, yesOrNo } from './column.ts';
import { OUTCOME_COLUMNS } from './outcomeColumns.ts';
import {
  BEYOND_FAILURE,
  CONCERNS,
  DESIGNS,
  FAILURE_DEFINITIONS,
  JOINTS,
  RESERVE_BASES,
  SEXES,
  TRAINING_STATUSES,
} from './vocabulary.ts';

const study = { group: 'study' } as const;
const arm = { group: 'arm' } as const;
const training = { group: 'training' } as const;
const proximity = { group: 'proximity to failure' } as const;

/** Columns of `arms.csv`. */
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
  ...OUTCOME_COLUMNS,
} as const satisfies Record<string, Column<unknown>>;

/** Columns of `studies.csv`. */
export const STUDY_COLUMNS = {
  study: text({ ...study, required: true, example: 'Plover 2012', description: 'Name of the study as in arms.csv.' }),
  authors: text({
    ...study,
    required: true,
    example: 'Plover A, Wren B',
    description:
      'Authors separated by commas: family name, initials without points and Jr or the like; organisations as they are called.',
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
    description: 'Digital object identifier (10.…/…) without an address before it; any other form is a warning.',
  }),
  note: text({
    ...study,
    required: false,
    example: 'invented for demonstration',
    description: 'Anything a reader should know.',
  }),
} as const satisfies Record<string, Column<unknown>>;

/** A validated row of arms.csv; an empty optional cell is null. */
export type Arm = RowOf<typeof ARM_COLUMNS>;

/** A validated row of studies.csv. */
export type Study = RowOf<typeof STUDY_COLUMNS>;

export type ArmColumn = keyof typeof ARM_COLUMNS;
