/** Columns of `arms.csv` that say how an arm trained and how close to failure. */
import { type Column, number, oneOf, text, yesOrNo } from './column.ts';
import { numberOrRange } from './rangeColumn.ts';
import { BEYOND_FAILURE, FAILURE_DEFINITIONS, JOINTS, RESERVE_BASES } from './vocabulary.ts';

const training = { group: 'training' } as const;
const proximity = { group: 'proximity to failure' } as const;

/** Exercise, load, sets and time; then failure and reserve. */
export const TRAINING_COLUMNS = {
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
  load_pct_1rm: numberOrRange(
    { above: 0, to: 100 },
    {
      ...training,
      required: false,
      unit: '% of 1RM',
      example: '75',
      description:
        'Mean load in per cent of one-repetition maximum, or the range printed. Empty: estimated from `load_rm` where that is given, else the row serves no analysis by load.',
    },
  ),
  load_rm: numberOrRange(
    { from: 1, to: 200 },
    {
      ...training,
      required: false,
      unit: 'repetition maximum',
      example: '8-12',
      description: 'Load as a repetition maximum, the most repetitions possible with it, where no per cent is printed.',
    },
  ),
  reps_per_set: numberOrRange(
    { above: 0, to: 1000 },
    {
      ...training,
      required: false,
      unit: 'repetitions',
      example: '10',
      description: 'Mean repetitions done in a set, or the range printed.',
    },
  ),
  reps_possible: numberOrRange(
    { above: 0, to: 1000 },
    {
      ...training,
      required: false,
      unit: 'repetitions',
      example: '12.4',
      description:
        'Mean repetitions possible with the same load, as tested or as done by the arm to failure. Without `reserve_reps` the reserve is these minus `reps_per_set`.',
    },
  ),
  sets: numberOrRange(
    { above: 0, to: 100 },
    {
      ...training,
      required: false,
      unit: 'sets per session',
      example: '3',
      description: 'Sets of the exercise in a session.',
    },
  ),
  sessions_per_week: numberOrRange(
    { above: 0, to: 21 },
    { ...training, required: false, unit: 'sessions per week', example: '2', description: 'Sessions in a week.' },
  ),
  weeks: numberOrRange(
    { above: 0, to: 520 },
    {
      ...training,
      required: false,
      unit: 'weeks',
      example: '8',
      description:
        'Length of the training up to this measurement. A measurement halfway may stand beside that of the end; fits read the end.',
    },
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
  reserve_reps: numberOrRange(
    { from: 0, to: 30 },
    {
      ...proximity,
      required: false,
      unit: 'repetitions',
      example: '2',
      description:
        'Mean repetitions in reserve when the sets ended, or the range printed. Empty: from `reps_possible` where that is given, else the row is listed as left out of the dose-response.',
    },
  ),
  reserve_sd: number(
    { from: 0, to: 30 },
    {
      ...proximity,
      required: false,
      unit: 'repetitions',
      example: '1.2',
      description:
        'Standard deviation of what the mean reserve may really have been. Empty beside a range: its width / √12.',
    },
  ),
  share_of_maximum_pct: number(
    { above: 0, to: 100 },
    {
      ...proximity,
      required: false,
      unit: '% of the repetitions possible',
      example: '50',
      description:
        'Repetitions done as a share of those possible, where the paper says it so; `reps_possible` makes a reserve of it.',
    },
  ),
  velocity_loss_pct: numberOrRange(
    { from: 0, to: 100 },
    {
      ...proximity,
      required: false,
      unit: '% of the fastest repetition',
      example: '20',
      description: 'Loss of bar speed at which sets ended. It is kept and shown; no reserve is made of it.',
    },
  ),
  reserve_basis: oneOf(RESERVE_BASES, {
    ...proximity,
    required: false,
    example: 'prescribed',
    description:
      'How reserve is known. reported: measured or asked; prescribed: what participants were told; repetitions: those possible minus those done with the same load; share-of-maximum: from a stated share of the repetitions possible; velocity-loss: from the slowing of the bar; load-table: from repetitions done and the load.',
  }),
  beyond_failure: oneOf(BEYOND_FAILURE, {
    ...proximity,
    required: false,
    example: 'none',
    description:
      'Work after failure: shortened-range repetitions (partials), immediate reductions of load (load-drops), a few seconds of rest and more repetitions (rest-pause), or repetitions with help (assisted). Empty means none.',
  }),
} as const satisfies Record<string, Column<unknown>>;
