/**
 * The columns of `arms.csv` (one row: one measurement on one arm of one study) and `studies.csv`
 * (one row a study). This is the single source: validation, messages, the data dictionary, the
 * Table Schema and the TypeScript types all come from here; what a column of arms.csv means stands in columnMeanings.ts.
 *
 * To add a column: add it here, in trainingColumns.ts or, where it says what was measured, in outcomeColumns.ts; give it
 * the words that `npm run types` then misses; run `npm run dictionary`; use it.
 */
import { type CellRange, type Column, type Derived, integer, number, oneOf, type RowOf, text } from './column.ts';
import { OUTCOME_COLUMNS } from './outcomeColumns.ts';
import { TRAINING_COLUMNS } from './trainingColumns.ts';
import { CONCERNS, DESIGNS, SEXES, TRAINING_STATUSES } from './vocabulary.ts';

const study = { group: 'study' } as const;
const arm = { group: 'arm' } as const;

/** Columns of `arms.csv`. */
export const ARM_COLUMNS = {
  study: text({
    ...study,
    required: true,
  }),
  year: integer({ from: 1900, to: 2100 }, { ...study, required: true }),
  design: oneOf(DESIGNS, {
    ...study,
    required: true,
  }),
  concerns: oneOf(CONCERNS, {
    ...study,
    required: false,
  }),
  training_status: oneOf(TRAINING_STATUSES, {
    ...study,
    required: false,
  }),
  sex: oneOf(SEXES, { ...study, required: false }),
  age_mean_years: number({ above: 0, to: 120 }, { ...study, required: false, unit: 'years' }),
  arm: text({
    ...arm,
    required: true,
  }),
  cohort: text({
    ...arm,
    required: false,
  }),
  n: integer(
    { from: 2, to: 100000 },
    {
      ...arm,
      required: false,
      unit: 'people',
    },
  ),
  n_total: integer(
    { from: 2, to: 1000000 },
    {
      ...arm,
      required: false,
      unit: 'people',
    },
  ),
  n_total_arms: integer({ from: 2, to: 100 }, { ...arm, required: false, unit: 'arms' }),
  ...TRAINING_COLUMNS,
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
export type Arm = RowOf<typeof ARM_COLUMNS> & {
  /** Ranges and bounds that cells hold in place of a number, by column; the cell then counts as the range's value. */
  readonly ranges?: Readonly<Partial<Record<ArmColumn, CellRange>>>;
  /** Cells of the design that are empty in the table and were filled from others. */
  readonly derived?: readonly Derived[];
  /** Of a row that was measured halfway: the row of the same measurement at the end of the training. */
  readonly later?: { readonly line: number; readonly weeks: number };
};

/** A validated row of studies.csv. */
export type Study = RowOf<typeof STUDY_COLUMNS>;

export type ArmColumn = keyof typeof ARM_COLUMNS;
