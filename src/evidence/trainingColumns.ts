/** Columns of `arms.csv` that say how an arm trained and how close to failure. */
import { type Column, number, oneOf, text, yesOrNo } from './column.ts';
import { numberOrRange } from './rangeColumn.ts';
import { BEYOND_FAILURE, FAILURE_DEFINITIONS, JOINTS, RESERVE_BASES } from './vocabulary.ts';

const training = { group: 'training' } as const;
const proximity = { group: 'proximity to failure' } as const;

/** Exercise, load, sets and time; then failure and reserve. */
export const TRAINING_COLUMNS = {
  exercise: text({ ...training, required: true }),
  joints: oneOf(JOINTS, {
    ...training,
    required: false,
  }),
  muscle: text({
    ...training,
    required: false,
  }),
  load_pct_1rm: numberOrRange(
    { above: 0, to: 100 },
    {
      ...training,
      required: false,
      unit: '% of 1RM',
    },
  ),
  load_rm: numberOrRange(
    { from: 1, to: 200 },
    {
      ...training,
      required: false,
      unit: 'repetition maximum',
    },
  ),
  reps_per_set: numberOrRange(
    { above: 0, to: 1000 },
    {
      ...training,
      required: false,
      unit: 'repetitions',
    },
  ),
  reps_possible: numberOrRange(
    { above: 0, to: 1000 },
    {
      ...training,
      required: false,
      unit: 'repetitions',
    },
  ),
  sets: numberOrRange(
    { above: 0, to: 100 },
    {
      ...training,
      required: false,
      unit: 'sets per session',
    },
  ),
  sessions_per_week: numberOrRange({ above: 0, to: 21 }, { ...training, required: false, unit: 'sessions per week' }),
  weeks: numberOrRange(
    { above: 0, to: 520 },
    {
      ...training,
      required: false,
      unit: 'weeks',
    },
  ),
  failure_definition: oneOf(FAILURE_DEFINITIONS, {
    ...proximity,
    required: false,
  }),
  attempted_failure: yesOrNo({
    ...proximity,
    required: false,
  }),
  reserve_reps: numberOrRange(
    { from: 0, to: 30 },
    {
      ...proximity,
      required: false,
      unit: 'repetitions',
    },
  ),
  reserve_sd: number(
    { from: 0, to: 30 },
    {
      ...proximity,
      required: false,
      unit: 'repetitions',
    },
  ),
  share_of_maximum_pct: number(
    { above: 0, to: 100 },
    {
      ...proximity,
      required: false,
      unit: '% of the repetitions possible',
    },
  ),
  velocity_loss_pct: numberOrRange(
    { from: 0, to: 100 },
    {
      ...proximity,
      required: false,
      unit: '% of the fastest repetition',
    },
  ),
  reserve_basis: oneOf(RESERVE_BASES, {
    ...proximity,
    required: false,
  }),
  beyond_failure: oneOf(BEYOND_FAILURE, {
    ...proximity,
    required: false,
  }),
} as const satisfies Record<string, Column<unknown>>;
