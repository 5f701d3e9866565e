/** Whether a reader has a table of their own in this browser, and what is said of it (ownTableStore.ts has the table itself). */
import * as z from 'zod/mini';
import '../evidence/zodConfig.ts';
import { MARK_NAME } from './ownTableMark.ts';

/** Address by which a worker knows that the reader's own table is meant, in place of one on the site. */
export const OWN_TABLE = 'own table';

export const markSchema = z.strictObject({
  /** Name of the file it came from. */
  name: z.string().check(z.maxLength(500)),
  studies: z.int().check(z.gte(0)),
  rows: z.int().check(z.gte(0)),
  /** True where a row says that it is invented. */
  demonstration: z.boolean(),
});

/** What is said of the own table on every page. */
export type OwnTableMark = z.infer<typeof markSchema>;

/** Says on every page from now on that there is an own table. */
export function markOwnTable({ name, studies, rows, demonstration }: OwnTableMark): void {
  localStorage.setItem(MARK_NAME, JSON.stringify({ name, studies, rows, demonstration }));
}

/** What the mark says of the own table; null where there is none. Known at once, before the table is. */
export function readMark(): OwnTableMark | null {
  try {
    const found = markSchema.safeParse(JSON.parse(localStorage.getItem(MARK_NAME) ?? 'null'));
    return found.success ? found.data : null;
  } catch {
    // What stands there is no JSON, or the browser forbids pages to keep anything.
    return null;
  }
}

/** Address of the table that a page's workers read: the reader's own where there is one, else the site's. */
export function addressOfTable(shipped: string): string {
  return readMark() ? OWN_TABLE : shipped;
}
