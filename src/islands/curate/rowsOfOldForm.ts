/** What an earlier form of the page kept, which was entered row by row: its rows become studies. */
import * as z from 'zod/mini';
import { groupRows } from '../../evidence/groupRows.ts';
import '../../evidence/zodConfig.ts';
import type { ArmColumn } from '../../evidence/schema.ts';
import { ARM_NAMES, type Cells, isBlank } from './cells.ts';
import type { StudyDraft } from './studyDraft.ts';
import { takeUpRows } from './takeUp.ts';

const cell = z._default(z.string().check(z.regex(/^[^\r\n]*$/u)), '');
const cells = z.object(Object.fromEntries(ARM_NAMES.map((name) => [name, cell])) as Record<ArmColumn, typeof cell>);
const oldForm = z.object({ rows: z.array(cells), draft: cells, at: z.nullable(z.int().check(z.gte(0))) });

export interface OldRows {
  readonly studies: readonly StudyDraft[];
  /** The study of the row that was in the form, else the last one. */
  readonly inHand: number;
  readonly nextId: number;
  /** Rows that the studies were made of. */
  readonly rows: number;
}

/** null where the text is of no earlier form. @param firstId that is free */
export function readRowsOfOldForm(written: unknown, firstId: number): OldRows | null {
  const read = oldForm.safeParse(written);
  if (!read.success) return null;
  const { rows: kept, draft, at } = read.data as { rows: Cells[]; draft: Cells; at: number | null };
  // A row that was being corrected stands twice: as it was kept, and as it was in the form, which counts.
  const others = kept.filter((_, place) => place !== at);
  const place = at === null ? others.length : at;
  const rows = isBlank(draft) ? kept : others.toSpliced(place, 0, draft);
  let nextId = firstId;
  const studies = [...groupRows(rows, ({ study }) => study).values()].map((ofStudy) => {
    const taken = takeUpRows(ofStudy, nextId, null);
    nextId = taken.nextId;
    return taken.draft;
  });
  const inForm = studies.find(({ cells: { study = '' } }) => !isBlank(draft) && study === draft.study);
  return { studies, inHand: (inForm ?? studies[studies.length - 1])?.id ?? 0, nextId, rows: rows.length };
}
