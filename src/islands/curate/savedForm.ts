/** What the form keeps in the browser between visits, and how it is read again. */
import * as z from 'zod/mini';
import type { ArmColumn } from '../../evidence/schema.ts';
import '../../evidence/zodConfig.ts';
import '../../evidence/zodMessages.ts';
import { ARM_NAMES, type Cells, EMPTY_CELLS, REPORTS, type ReportName, USUAL_REPORTS } from './cells.ts';
import { EMPTY_RESERVE, type ReserveCells, type ReserveColumn } from './reserveEstimate.ts';

/** Rows made so far and the row being edited. */
export interface Curating {
  readonly rows: readonly Cells[];
  readonly draft: Cells;
  /** Place of the row that the draft corrects, from 0; null where it is a new one. */
  readonly at: number | null;
  /** Kinds of number that the paper is said to report. */
  readonly reports: readonly ReportName[];
  readonly reserve: ReserveCells;
  /** Whether every entry is explained, or only the one in hand. */
  readonly isExplained: boolean;
}

export const NOTHING_CURATED: Curating = {
  rows: [],
  draft: EMPTY_CELLS,
  at: null,
  reports: USUAL_REPORTS,
  reserve: EMPTY_RESERVE,
  isExplained: true,
};

/** One line each, as a field of the form holds it: a line break would move all lines below. */
const cell = z._default(z.string().check(z.regex(/^[^\r\n]*$/u)), '');
const cellsOf = <Name extends string>(names: readonly Name[]) =>
  // A column that came after the text was kept is empty.
  z.object(Object.fromEntries(names.map((name) => [name, cell])) as Record<Name, typeof cell>);
const cells = cellsOf<ArmColumn>(ARM_NAMES);
const curatingSchema = z
  .object({
    rows: z.array(cells),
    draft: cells,
    at: z.nullable(z.int().check(z.gte(0))),
    reports: z.array(z.enum(REPORTS.map(({ name }) => name))),
    reserve: cellsOf<ReserveColumn>(Object.keys(EMPTY_RESERVE) as ReserveColumn[]),
    isExplained: z._default(z.boolean(), true),
  })
  .check(
    z.refine(({ at, rows }) => at === null || at < rows.length, {
      path: ['at'],
      error: 'expected a row that is there',
    }),
  );

export function writeCurating(curating: Curating): string {
  return JSON.stringify(curating);
}

/** The rows and the draft of a kept text, or why it cannot be read. */
export function readCurating(
  text: string,
): { readonly curating: Curating; readonly problem: null } | { readonly curating: null; readonly problem: string } {
  let written: unknown;
  try {
    written = JSON.parse(text);
  } catch {
    return { curating: null, problem: 'expected JSON' };
  }
  const read = curatingSchema.safeParse(written);
  if (read.success) return { curating: read.data as Curating, problem: null };
  const [{ path, message }] = read.error.issues;
  return { curating: null, problem: `${path.join('.') || 'the whole'}: ${message}` };
}
