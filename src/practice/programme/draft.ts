/**
 * What a reader edits: two versions as lists of lines, exercises of their own, and the calendar. It is kept
 * as text, and read back exactly, from this form or from the one before it that held the versions as CSV.
 */
import * as z from 'zod/mini';
import '../../evidence/zodConfig.ts';
import '../../evidence/zodMessages.ts';
import type { Exercise } from '../../evidence/exercises.ts';
import { fromCsv } from './csvView.ts';
import { type LineList, NO_LINES } from './edit.ts';
import { type Cells, cleanCell, EDITOR_COLUMNS, EMPTY_CELLS } from './editorColumns.ts';
import { calendarSchema, exercisesSchema, readSaved, type SavedProgramme } from './saved.ts';
import type { Calendar } from './sessions.ts';

export interface Draft {
  readonly first: LineList;
  /** null where there is no second version. */
  readonly second: LineList | null;
  /** Exercises that the reader described. */
  readonly exercises: readonly Exercise[];
  readonly calendar: Calendar;
}

export type ReadDraft =
  | { readonly draft: Draft; readonly problem: null }
  | { readonly draft: null; readonly problem: string };

/** Raised when an old file would mean something else; 1 held the versions as CSV text. */
const VERSION = 2;
const MOST_LINES = 10_000;
/** Characters of a cell: far above any that is typed. */
const LONGEST_CELL = 10_000;

const cellSchema = z.string().check(
  z.maxLength(LONGEST_CELL),
  z.refine((text) => cleanCell(text) === text, { error: 'expected one line of text' }),
);
const idSchema = z.int().check(z.gte(1));
// Made when a file or a kept draft is first read: most pages show neither.
const listSchema = z.lazy(() =>
  z
    .strictObject({
      nextId: idSchema,
      lines: z
        .array(
          z.strictObject({
            id: idSchema,
            // Only cells that are not empty are written.
            cells: z.partialRecord(z.enum(EDITOR_COLUMNS), cellSchema),
          }),
        )
        .check(z.maxLength(MOST_LINES)),
    })
    .check(
      z.refine(
        ({ lines, nextId }) =>
          new Set(lines.map(({ id }) => id)).size === lines.length && lines.every(({ id }) => id < nextId),
        { error: 'expected every line to have an id of its own, below nextId' },
      ),
    ),
);
const draftSchema = z.lazy(() =>
  z.strictObject({
    kind: z.literal('programme'),
    version: z.literal(VERSION),
    first: listSchema,
    second: z.nullable(listSchema),
    exercises: exercisesSchema,
    calendar: calendarSchema,
  }),
);

export function writeDraft({ first, second, exercises, calendar }: Draft): string {
  const lists = { first: writeList(first), second: second && writeList(second) };
  return `${JSON.stringify({ kind: 'programme', version: VERSION, ...lists, exercises, calendar }, null, 1)}\n`;
}

/** What a kept text or a file holds, or a sentence that says why it cannot be opened. Never throws. */
export function readDraft(text: string): ReadDraft {
  let content: unknown;
  // Some editors put a byte-order mark before what they save.
  const whole = text.replace(/^\ufeff/u, '');
  try {
    content = JSON.parse(whole);
  } catch {
    return refuse('it is cut short or was changed. Save the programme again, or open another copy of the file.');
  }
  const version = typeof content === 'object' && content !== null && 'version' in content ? content.version : null;
  if (version === 1) {
    const { programme, problem } = readSaved(whole);
    return programme ? fromSaved(programme) : { draft: null, problem };
  }
  if (typeof version === 'number' && version > VERSION) {
    return refuse('it was saved by a newer one than is open here. Reload this page, and open the file again.');
  }
  const parsed = draftSchema.safeParse(content);
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    return refuse(`at ${issue.path.length > 0 ? issue.path.join('.') : 'the file'}: ${issue.message}`);
  }
  const { first, second, exercises, calendar } = parsed.data;
  const lists = { first: readList(first), second: second && readList(second) };
  return { draft: { ...lists, exercises, calendar }, problem: null };
}

/** From versions as CSV, as the worked example is written. */
export function fromSaved({ first, second, exercises, calendar }: SavedProgramme): ReadDraft {
  const lists = [first, second].map((text) => (text === null ? null : fromText(text)));
  if (lists.some((list, i) => list === null && [first, second][i] !== null)) {
    return refuse('a version has no row that names its columns');
  }
  return { draft: { first: lists[0] ?? NO_LINES, second: lists[1] ?? null, exercises, calendar }, problem: null };
}

function fromText(text: string): LineList | null {
  return text.trim() === '' ? NO_LINES : fromCsv(text, 'programme', NO_LINES).list;
}

function refuse(why: string): ReadDraft {
  return { draft: null, problem: `expected a programme saved by this page; ${why}` };
}

function writeList({ lines, nextId }: LineList) {
  const isGiven = ([, text]: [string, string]) => text !== '';
  return {
    nextId,
    lines: lines.map(({ id, cells }) => ({ id, cells: Object.fromEntries(Object.entries(cells).filter(isGiven)) })),
  };
}

function readList({ lines, nextId }: z.output<typeof listSchema>): LineList {
  return { nextId, lines: lines.map(({ id, cells }) => ({ id, cells: { ...EMPTY_CELLS, ...cells } satisfies Cells })) };
}
