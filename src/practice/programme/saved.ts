/** A programme as it is saved to a file and opened again: both versions, own exercises and the calendar. */
import * as z from 'zod/mini';
import type { Exercise } from '../../evidence/exercises.ts';
import { RELATIONS } from '../../evidence/repetitions.ts';
import { TRAINING_STATUSES } from '../../evidence/vocabulary.ts';
import '../../evidence/zodConfig.ts';
import '../../evidence/zodMessages.ts';
import { LAST_DAY } from './columns.ts';
import type { Calendar } from './sessions.ts';

/** Raised when an old file would mean something else. */
const VERSION = 1;
/** Characters of a version that are opened: some 10,000 lines. */
const LONGEST = 1_000_000;
/** Characters of a name; exercises of one's own, and muscles and other names of each. */
const LONGEST_NAME = 500;
const MOST_EXERCISES = 500;
const MOST_MUSCLES = 20;
const MOST_SYNONYMS = 50;

const nameSchema = z.string().check(z.minLength(1), z.maxLength(LONGEST_NAME));
const versionSchema = z.string().check(z.maxLength(LONGEST));
const hourSchema = z.int().check(z.gte(0), z.lte(23));

// Made when a file is first read.
export const exercisesSchema = z.lazy(() =>
  z
    .array(
      z.strictObject({
        name: nameSchema,
        muscles: z.array(nameSchema).check(z.minLength(1), z.maxLength(MOST_MUSCLES)),
        canPin: z.boolean(),
        stoppable: z.boolean(),
        partials: z.boolean(),
        relation: z.nullable(z.enum(RELATIONS)),
        // Of an exercise that was taken over from the list.
        synonyms: z.optional(z.array(nameSchema).check(z.maxLength(MOST_SYNONYMS))),
      }),
    )
    .check(z.maxLength(MOST_EXERCISES)),
);

export const calendarSchema = z.lazy(() =>
  z.strictObject({
    status: z.enum(TRAINING_STATUSES),
    sessionHour: hourSchema,
    event: z.nullable(z.strictObject({ day: z.int().check(z.gte(1), z.lte(LAST_DAY)), hour: hourSchema })),
  }),
);

const savedSchema = z.lazy(() =>
  z.strictObject({
    kind: z.literal('programme'),
    version: z.literal(VERSION),
    first: versionSchema,
    second: z.nullable(versionSchema),
    exercises: exercisesSchema,
    calendar: calendarSchema,
  }),
);

export interface SavedProgramme {
  readonly first: string;
  readonly second: string | null;
  /** Exercises that the reader described. */
  readonly exercises: readonly Exercise[];
  readonly calendar: Calendar;
}

/** The text of the file. */
export function writeSaved(programme: SavedProgramme): string {
  return `${JSON.stringify({ kind: 'programme', version: VERSION, ...programme }, null, 2)}\n`;
}

/** What a saved file holds, or a sentence that says why it cannot be opened. Never throws. */
export function readSaved(
  text: string,
):
  | { readonly programme: SavedProgramme; readonly problem: null }
  | { readonly programme: null; readonly problem: string } {
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch {
    return { programme: null, problem: 'expected a programme saved by this page, received text that is no JSON' };
  }
  const parsed = savedSchema.safeParse(content);
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    const place = issue.path.length > 0 ? issue.path.join('.') : 'the file';
    return {
      programme: null,
      problem: `expected a programme saved by this page; at ${place}: ${issue.message}`,
    };
  }
  const { first, second, exercises, calendar } = parsed.data;
  return { programme: { first, second, exercises, calendar }, problem: null };
}
