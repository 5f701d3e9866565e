/** What the form keeps in the browser between visits, and how it is read again. */
import * as z from 'zod/mini';
import '../../evidence/zodConfig.ts';
import '../../evidence/zodMessages.ts';
import type { ArmColumn } from '../../evidence/schema.ts';
import { ARM_NAMES } from './cells.ts';
import { EXTRAS, REPORTS } from './kinds.ts';
import { EMPTY_RESERVE, type ReserveCells, type ReserveColumn } from './reserveEstimate.ts';
import { readRowsOfOldForm } from './rowsOfOldForm.ts';
import { IDS_OF_START, type StudyDraft, startStudy } from './studyDraft.ts';

/** Studies so far, one of them in the form. */
export interface Curating {
  readonly studies: readonly StudyDraft[];
  /** Id of the study that is in the form. */
  readonly inHand: number;
  /** The first id that nothing has had. */
  readonly nextId: number;
  readonly reserve: ReserveCells;
  /** Whether every entry is explained, or only the one in hand. */
  readonly isExplained: boolean;
}

export const NOTHING_CURATED: Curating = {
  studies: [startStudy(1)],
  inHand: 1,
  nextId: 1 + IDS_OF_START,
  reserve: EMPTY_RESERVE,
  isExplained: false,
};

export type ReadForm =
  | {
      readonly curating: Curating;
      /** Rows of the earlier form of this page that were made studies of. */
      readonly takenOver: number;
      readonly problem: null;
    }
  | { readonly curating: null; readonly takenOver: 0; readonly problem: string };

/** One line each, as a field of the form holds it: a line break would move all lines below. */
const cell = z.string().check(z.regex(/^[^\r\n]*$/u));
const id = z.int().check(z.gte(0));
// Of a column that the schema had no more when the text was kept nothing is left to show.
const column = z.enum(ARM_NAMES as readonly [ArmColumn, ...ArmColumn[]]);
const texts = z.partialRecord(column, cell);
const study = z.object({
  id,
  cells: texts,
  apart: z.array(column),
  extras: z.array(z.enum(EXTRAS.map(({ name }) => name))),
  peopleByDesign: z.boolean(),
  arms: z.array(z.object({ id, cells: texts })).check(z.minLength(1)),
  measures: z
    .array(
      z.object({
        id,
        cells: texts,
        reports: z.array(z.enum(REPORTS.map(({ name }) => name))),
        own: z.array(column),
        results: z.record(z.string().check(z.regex(/^\d+$/u)), texts),
      }),
    )
    .check(z.minLength(1)),
  order: z.array(z.object({ arm: id, measure: id })),
  from: z.nullable(z.object({ table: cell, study: cell })),
});
const reserveColumns = Object.keys(EMPTY_RESERVE) as ReserveColumn[];
const curatingSchema = z
  .object({
    studies: z.array(study).check(z.minLength(1)),
    inHand: id,
    nextId: id,
    reserve: z.object(
      Object.fromEntries(reserveColumns.map((name) => [name, cell])) as Record<ReserveColumn, typeof cell>,
    ),
    isExplained: z.boolean(),
  })
  .check(
    z.refine(({ studies, inHand }) => studies.some((one) => one.id === inHand), {
      path: ['inHand'],
      error: 'expected a study that is there',
    }),
    z.refine(({ studies, nextId }) => idsIn(studies).every((one) => one < nextId), {
      path: ['nextId'],
      error: 'expected an id that nothing has',
    }),
  );

function idsIn(studies: readonly Pick<StudyDraft, 'id' | 'arms' | 'measures'>[]): readonly number[] {
  return studies.flatMap(({ id: own, arms, measures }) => [own, ...[...arms, ...measures].map((part) => part.id)]);
}

export function writeCurating(curating: Curating): string {
  return JSON.stringify(curating);
}

/** What a kept text holds, of this form or of the one before it, or why it cannot be read. */
export function readCurating(text: string): ReadForm {
  let written: unknown;
  try {
    written = JSON.parse(text);
  } catch {
    return { curating: null, takenOver: 0, problem: 'expected JSON' };
  }
  const old = readRowsOfOldForm(written, NOTHING_CURATED.nextId);
  if (old) {
    const { studies, nextId, rows } = old;
    const curating = studies.length > 0 ? { ...NOTHING_CURATED, studies, inHand: old.inHand, nextId } : NOTHING_CURATED;
    return { curating, takenOver: rows, problem: null };
  }
  const read = curatingSchema.safeParse(written);
  if (read.success) return { curating: read.data as Curating, takenOver: 0, problem: null };
  const [{ path, message }] = read.error.issues;
  return { curating: null, takenOver: 0, problem: `${path.join('.') || 'the whole'}: ${message}` };
}
