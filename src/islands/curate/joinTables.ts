/** New rows in a table: one table that was read as a whole before anybody keeps it. */
import { appendRows } from '../../evidence/appendRows.ts';
import { groupRows } from '../../evidence/groupRows.ts';
import type { Problem } from '../../evidence/problem.ts';
import { ARM_COLUMNS } from '../../evidence/schema.ts';
import { readArms } from '../../evidence/table.ts';
import { writeArms } from '../../evidence/writeTable.ts';
import { countOf } from '../../numerics/countOf.ts';
import { stateTable, type TableFacts } from '../../ownTable/stateTable.ts';
import type { Cells } from './cells.ts';
import { readCells } from './tableCells.ts';

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
      /** Rows below those of the table. */
      readonly added: number;
      /** Rows in the place of others, of studies that were taken from the table. */
      readonly putBack: number;
      /** Columns of the table that are not read, so that they are not in the joined one where it is written anew. */
      readonly unread: readonly string[];
      /** What was done to the table, to be said with it. */
      readonly change: string;
    }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[]; readonly reason: string };

/** Rows of one study, and the study of the table whose place they take; null where they come below all others. */
export interface StudyRows {
  readonly replaces: string | null;
  readonly rows: readonly Cells[];
}

/**
 * @param table that the rows go into; null where they are the whole table
 * @param name of the joined table
 */
export function joinTables(table: TableText | null, studies: readonly StudyRows[], name: string): JoinedTables {
  const before = table && readArms(table.text, table.name);
  if (table && before && before.problems.length > 0) {
    return { kind: 'refused', problems: before.problems, reason: `${table.name} has problems of its own` };
  }
  const ofForm = studies.flatMap(({ rows }) => rows);
  const { problems } = readArms(writeArms(ofForm), 'the new rows');
  if (problems.length > 0) return { kind: 'refused', problems, reason: 'the new rows have problems' };
  const kept = table ? readCells(table.text, table.name) : [];
  const known = new Set(kept.map(({ study }) => study));
  const replaced = new Map<string, readonly Cells[]>();
  for (const { replaces, rows } of studies) {
    if (replaces !== null && known.has(replaces) && !replaced.has(replaces)) replaced.set(replaces, rows);
  }
  const back = [...replaced.values()].flat();
  const added = ofForm.filter((row) => !back.includes(row));
  const others = replaceStudies(kept, replaced);
  const addition = table && back.length === 0 ? appendRows(table.text, added, ARM_COLUMNS, name) : null;
  const isAppended = table !== null && addition !== null && addition.unwritten.length === 0;
  const text = isAppended ? table.text + addition.text : writeArms([...others, ...added]);
  const whole = readArms(text, name);
  if (whole.problems.length > 0) {
    const lines = added.length > 0 ? sayLines(whole.arms[others.length]?.line, whole.arms.at(-1)?.line) : '';
    return { kind: 'refused', problems: whole.problems, reason: `the rows do not go with the table${lines}` };
  }
  const warnings = isAppended ? [] : (before?.warnings ?? []);
  return {
    kind: 'joined',
    text,
    facts: stateTable(name, whole.arms),
    added: added.length,
    putBack: back.length,
    unread: warnings.flatMap(({ kind, column }) =>
      kind === 'unknown-column' ? [column ?? 'a column without name'] : [],
    ),
    change: sayChange(added.length, back.length, table !== null && !isAppended),
  };
}

/** “2 rows of the form were added”, “3 rows of the form were put back, so that all of it was written anew”. */
function sayChange(added: number, putBack: number, isRewritten: boolean): string {
  const rows = (count: number, done: string) =>
    `${countOf(count, 'row')} of the form ${count === 1 ? 'was' : 'were'} ${done}`;
  const parts = [...(putBack > 0 ? [rows(putBack, 'put back')] : []), ...(added > 0 ? [rows(added, 'added')] : [])];
  const why = putBack > 0 ? '' : ', with columns that it did not have';
  return `${parts.join(' and ')}${isRewritten ? `${why}, so that all of it was written anew` : ''}`;
}

function sayLines(first: number | undefined, last: number | undefined): string {
  return first === last ? `; the new row is line ${first}` : `; the new rows are lines ${first} to ${last}`;
}

/** Rows with those of some studies in the place of the ones before, each where one stood and the rest after the last. */
function replaceStudies(rows: readonly Cells[], by: ReadonlyMap<string, readonly Cells[]>): readonly Cells[] {
  const left = groupRows(rows, ({ study }) => study);
  const next = new Map<string, number>();
  return rows.flatMap((row): readonly Cells[] => {
    const own = by.get(row.study);
    if (!own) return [row];
    const at = next.get(row.study) ?? 0;
    next.set(row.study, at + 1);
    const isLast = left.get(row.study)?.length === at + 1;
    return own.slice(at, isLast ? undefined : at + 1);
  });
}

/** A table's studies, in the order in which they first stand. */
export function listStudies({ text, name }: TableText): readonly { readonly study: string; readonly rows: number }[] {
  const groups = groupRows(readCells(text, name), ({ study }) => study);
  return [...groups].map(([study, rows]) => ({ study, rows: rows.length }));
}

/** The rows of one study of a table, each cell as it stands there. */
export function takeStudy({ text, name }: TableText, study: string): readonly Cells[] {
  return readCells(text, name).filter((row) => row.study === study);
}
