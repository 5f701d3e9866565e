/** New rows below those of a table: one table that was read as a whole before anybody keeps it. */

import Papa from 'papaparse';
import { appendRows } from '../../evidence/appendRows.ts';
import type { Problem } from '../../evidence/problem.ts';
import { ARM_COLUMNS } from '../../evidence/schema.ts';
import { readArms } from '../../evidence/table.ts';
import { writeArms } from '../../evidence/writeTable.ts';
import { countOf } from '../../numerics/countOf.ts';
import { stateTable, type TableFacts } from '../../ownTable/stateTable.ts';

export interface TableText {
  readonly name: string;
  /** CSV with a header. */
  readonly text: string;
}

export type JoinedTables =
  | {
      readonly kind: 'joined';
      readonly text: string;
      readonly facts: TableFacts;
      /** Rows that were added. */
      readonly added: number;
      /** Columns of the table that are not read, so that they are not in the joined one where it is written anew. */
      readonly unread: readonly string[];
      /** What was done to the table, to be said with it. */
      readonly change: string;
    }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[]; readonly reason: string };

/**
 * @param table that the rows go below; null where they are the whole table
 * @param rows CSV with a header
 * @param name of the joined table
 */
export function joinTables(table: TableText | null, rows: string, name: string): JoinedTables {
  const before = table && readArms(table.text, table.name);
  if (table && before && before.problems.length > 0) {
    return { kind: 'refused', problems: before.problems, reason: `${table.name} has problems of its own` };
  }
  const added = readArms(rows, 'the new rows');
  if (added.problems.length > 0) {
    return { kind: 'refused', problems: added.problems, reason: 'the new rows have problems' };
  }
  const kept = before?.arms ?? [];
  const addition = table && appendRows(table.text, cellsOf(rows), ARM_COLUMNS, name);
  const isAppended = table !== null && addition !== null && addition.unwritten.length === 0;
  const text = isAppended ? table.text + addition.text : writeArms([...kept, ...added.arms]);
  const whole = readArms(text, name);
  if (whole.problems.length > 0) {
    const [first, last] = [kept.length, -1].map((at) => whole.arms.at(at)?.line);
    const lines = first === last ? `the new row is line ${first}` : `the new rows are lines ${first} to ${last}`;
    return { kind: 'refused', problems: whole.problems, reason: `the rows do not go with the table; ${lines}` };
  }
  const warnings = isAppended ? [] : (before?.warnings ?? []);
  const rewritten =
    isAppended || !table ? '' : `, with columns that it did not have, so that all of it was written anew`;
  return {
    kind: 'joined',
    text,
    facts: stateTable(name, whole.arms),
    added: added.arms.length,
    unread: warnings.flatMap(({ kind, column }) =>
      kind === 'unknown-column' ? [column ?? 'a column without name'] : [],
    ),
    change: `${countOf(added.arms.length, 'row')} of the form ${added.arms.length === 1 ? 'was' : 'were'} added${rewritten}`,
  };
}

/** The rows of the form as they were written, by column. */
function cellsOf(rows: string): readonly Readonly<Record<string, string>>[] {
  return Papa.parse<Record<string, string>>(rows, { header: true, skipEmptyLines: true }).data;
}
