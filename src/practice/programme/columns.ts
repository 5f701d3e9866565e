/** Columns of a programme: one line is the sets of one exercise on one day. */
import * as z from 'zod/mini';
import {
  anyCase,
  type DescribedColumn,
  integer,
  number,
  oneOf,
  type RowOf,
  text,
  yesOrNo,
} from '../../evidence/column.ts';
import { EXERCISE_COLUMNS, type Exercise } from '../../evidence/exercises.ts';
import { COMPANIES, type Company } from '../cautions.ts';

export const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;
/** Weeks that a programme may span. */
export const MOST_WEEKS = 12;
/** Days that a programme may span. */
export const LAST_DAY = MOST_WEEKS * WEEKDAYS.length;
/** Letters of a weekday's name that are enough. */
const ENOUGH_LETTERS = 2;

/** A day as written: a weekday, or the number of the day, 1 to 84; null where it is neither. */
export function readDay(written: string): number | null {
  if (/^\d{1,2}$/u.test(written)) {
    const day = Number(written);
    return day >= 1 && day <= LAST_DAY ? day : null;
  }
  const word = written.toLowerCase();
  if (word.length < ENOUGH_LETTERS) return null;
  const found = WEEKDAYS.findIndex((name) => name.toLowerCase().startsWith(word));
  return found < 0 ? null : found + 1;
}

/** Week that a day is of; both from 1. */
export function weekOfDay(day: number): number {
  return Math.ceil(day / WEEKDAYS.length);
}

/** Day of its week, 1 to 7. */
export function dayInWeek(day: number): number {
  return ((day - 1) % WEEKDAYS.length) + 1;
}

/** Day of a block. @param weekday 1 to 7 */
export function dayOf(week: number, weekday: number): number {
  return (week - 1) * WEEKDAYS.length + weekday;
}

/** “Monday”, of whichever week. */
export function weekdayOf(day: number): string {
  return WEEKDAYS[dayInWeek(day) - 1];
}

/** “Monday”, “Monday of week 2” */
export function writeDay(day: number): string {
  const week = weekOfDay(day);
  return week === 1 ? weekdayOf(day) : `${weekdayOf(day)} of week ${week}`;
}

/** The same among days of several weeks, where the first week is named too: “Saturday of week 1”. */
export function writeDayOfBlock(day: number): string {
  return `${weekdayOf(day)} of week ${weekOfDay(day)}`;
}

const group = 'programme';

const day: DescribedColumn<number, true> = {
  group,
  required: true,
  unit: null,
  example: 'Monday',
  description: 'Day of the session; Monday is day 1.',
  expected: `a weekday, or the number of a day from 1 to ${LAST_DAY}`,
  cell: z.lazy(() =>
    z.pipe(
      z.string(),
      z.transform((written, context) => {
        const found = readDay(written);
        if (found !== null) return found;
        context.issues.push({ code: 'custom', message: 'not a day', input: written });
        return z.NEVER;
      }),
    ),
  ),
  field: { type: 'string', constraints: { required: true } },
};

const own = 'Only for an exercise that the list does not name, or to say otherwise than the list.';

export const PROGRAMME_COLUMNS = {
  day,
  exercise: text({ group, required: true, example: 'leg press', description: 'Name of the exercise.' }),
  sets: integer({ from: 1, to: 50 }, { group, required: true, example: '3', description: 'Number of sets.' }),
  repetitions: integer(
    { from: 1, to: 150 },
    { group, required: true, example: '10', description: 'Repetitions of a set.' },
  ),
  load: number(
    { above: 0, to: 100 },
    { group, required: false, unit: '% of 1RM', example: '70', description: 'Load; or say what is possible.' },
  ),
  possible: number(
    { from: 1, to: 200 },
    {
      group,
      required: false,
      unit: 'repetitions',
      example: '14',
      description: 'Repetitions possible in a set at this load; needed where the load in per cent is not known.',
    },
  ),
  reserve: number(
    { from: 0, to: 30 },
    {
      group,
      required: false,
      unit: 'repetitions',
      example: '2',
      description: 'Repetitions in reserve; empty takes those possible minus those done.',
    },
  ),
  company: anyCase(
    oneOf(COMPANIES, {
      group,
      required: false,
      example: 'spotter',
      description: 'Who or what would take the load; empty counts as alone.',
    }),
  ),
  muscles: text({
    group,
    required: false,
    example: 'quadriceps; gluteus maximus',
    description: `${EXERCISE_COLUMNS.muscles.description} ${own}`,
  }),
  can_pin: anyCase(
    yesOrNo({ group, required: false, example: 'no', description: `${EXERCISE_COLUMNS.can_pin.description} ${own}` }),
  ),
  stoppable: anyCase(
    yesOrNo({
      group,
      required: false,
      example: 'yes',
      description: `${EXERCISE_COLUMNS.stoppable.description} ${own}`,
    }),
  ),
  partials: anyCase(
    yesOrNo({ group, required: false, example: 'yes', description: `${EXERCISE_COLUMNS.partials.description} ${own}` }),
  ),
} as const satisfies Record<string, DescribedColumn<unknown>>;

/** A line as it was read; null where an optional cell is empty. */
export type WrittenLine = RowOf<typeof PROGRAMME_COLUMNS>;

/** A line with nothing missing. */
export interface ProgrammeLine {
  /** Physical line in the text; the header is line 1. */
  readonly line: number;
  /** 1 is the first Monday. */
  readonly day: number;
  readonly exercise: Exercise;
  readonly sets: number;
  readonly repetitions: number;
  /** Per cent of 1RM, given or from the repetitions possible. */
  readonly load: number;
  /** Repetitions in reserve, given or from those possible. */
  readonly reserve: number;
  /** Repetitions possible, as given; null where they were not. */
  readonly possible: number | null;
  /** How load or reserve was worked out where it was not given; null where both were. */
  readonly how: string | null;
  readonly company: Company;
}

/** The column that a header cell names, whatever its case and separators; the cell itself where none. */
export function columnNamed(written: string): string {
  const plain = (word: string) => word.toLowerCase().replace(/[^a-z]/gu, '');
  return Object.keys(PROGRAMME_COLUMNS).find((name) => plain(name) === plain(written)) ?? written;
}
