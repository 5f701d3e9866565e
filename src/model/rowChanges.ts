/**
 * What differs between the rows of two tables: studies and rows added and removed, and cells changed.
 *
 * Inside a study rows are matched in three passes: rows that are the same in every column; then rows
 * that are the same measurement (`ROW_IDENTITY`: arm, exercise, muscle, outcome, measure, unit,
 * hours, and weeks where they can tell) and differ elsewhere; then rows that are the same everywhere but in one column of that
 * identity, such as an arm that was renamed. In the last two a match must be the only one possible;
 * rows that could be matched in several ways stand as removed and added, and are listed as doubled
 * where they share an identity (a table that was validated has no such rows).
 *
 * A study is known by its name. One that has only another name is found by its rows; a study that was
 * renamed and changed is one removed and one added. Order of rows and line numbers are not compared.
 */
import { identifyRow, ROW_IDENTITY } from '../evidence/crossRow.ts';
import { groupRows } from '../evidence/groupRows.ts';
import { identifyMeasurement, type MEASUREMENT } from '../evidence/halfway.ts';
import { ARM_COLUMNS, type Arm, type ArmColumn } from '../evidence/schema.ts';
import type { CellValue } from '../evidence/writeTable.ts';

export interface CellChange {
  readonly column: ArmColumn;
  readonly before: CellValue;
  readonly after: CellValue;
}

/** A row by what makes it a measurement, and its line in its own table. */
export interface NamedRow extends Pick<Arm, (typeof MEASUREMENT)[number] | 'line'> {}

export interface ChangedRow {
  readonly before: NamedRow;
  readonly after: NamedRow;
  /** In the order of the columns; at least one. */
  readonly cells: readonly CellChange[];
}

export interface StudyRowChanges {
  readonly study: string;
  readonly added: readonly NamedRow[];
  readonly removed: readonly NamedRow[];
  readonly changed: readonly ChangedRow[];
  readonly unchanged: number;
  /** Rows of either table that share their identity with another and could not be matched one to one. */
  readonly doubled: readonly NamedRow[];
}

export interface RowChanges {
  /** Names, ascending. */
  readonly added: readonly string[];
  readonly removed: readonly string[];
  /** Studies whose rows are all the same under another name. */
  readonly renamed: readonly { readonly before: string; readonly after: string }[];
  /** Studies in both tables with a row added, removed or changed. */
  readonly changed: readonly StudyRowChanges[];
  readonly unchanged: readonly string[];
}

const COLUMNS = Object.keys(ARM_COLUMNS) as ArmColumn[];

/** @param before @param after validated rows of the two tables */
export function compareRows(before: readonly Arm[], after: readonly Arm[]): RowChanges {
  const old = groupRows(before, ({ study }) => study);
  const now = groupRows(after, ({ study }) => study);
  const renamed = findRenamed(old, now);
  const changes = [...old].flatMap(([study, rows]) => {
    const others = now.get(study);
    return others ? [compareStudy(study, rows, others)] : [];
  });
  const isChanged = ({ added, removed, changed }: StudyRowChanges) =>
    added.length + removed.length + changed.length > 0;
  return {
    added: [...now.keys()].filter((study) => !old.has(study) && !renamed.some((pair) => pair.after === study)).sort(),
    removed: [...old.keys()]
      .filter((study) => !now.has(study) && !renamed.some((pair) => pair.before === study))
      .sort(),
    renamed,
    changed: changes.filter(isChanged).sort((a, b) => (a.study < b.study ? -1 : 1)),
    unchanged: changes
      .filter((change) => !isChanged(change))
      .map(({ study }) => study)
      .sort(),
  };
}

/** Studies of one table only whose rows, the name apart, are those of exactly one of the other table only. */
function findRenamed(
  old: ReadonlyMap<string, readonly Arm[]>,
  now: ReadonlyMap<string, readonly Arm[]>,
): RowChanges['renamed'] {
  const only = (one: ReadonlyMap<string, readonly Arm[]>, other: ReadonlyMap<string, readonly Arm[]>) =>
    [...one.keys()].filter((study) => !other.has(study));
  const contentOf = (rows: readonly Arm[] = []) => JSON.stringify(rows.map((row) => keyOf(row, 'study')).sort());
  return matchSingles(
    only(old, now),
    only(now, old),
    (study) => contentOf(old.get(study)),
    (study) => contentOf(now.get(study)),
  ).map(([from, to]) => ({ before: from, after: to }));
}

function compareStudy(study: string, before: readonly Arm[], after: readonly Arm[]): StudyRowChanges {
  let old = before;
  let now = after;
  const take = (pairs: readonly (readonly [Arm, Arm])[]) => {
    const taken = new Set(pairs.flat());
    old = old.filter((arm) => !taken.has(arm));
    now = now.filter((arm) => !taken.has(arm));
    return pairs;
  };
  const same = take(matchInOrder(old, now));
  const corrected = [identifyRow, identifyMeasurement].flatMap((identify) => take(matchSingles(old, now, identify)));
  const renamed = ROW_IDENTITY.flatMap((column) => take(matchSingles(old, now, (arm) => keyOf(arm, column))));
  return {
    study,
    added: now.map(nameRow),
    removed: old.map(nameRow),
    changed: [...corrected, ...renamed]
      .map(([one, other]) => ({ before: nameRow(one), after: nameRow(other), cells: compareCells(one, other) }))
      .sort((a, b) => a.after.line - b.after.line),
    unchanged: same.length,
    doubled: [...sharing(before, old), ...sharing(after, now)].map(nameRow),
  };
}

/** Pairs of rows that are the same in every column, the first with the first. */
function matchInOrder(old: readonly Arm[], now: readonly Arm[]): (readonly [Arm, Arm])[] {
  const waiting = groupRows(now, (arm) => keyOf(arm, null));
  return old.flatMap((arm) => {
    const match = waiting.get(keyOf(arm, null))?.shift();
    return match ? [[arm, match] as const] : [];
  });
}

/** Pairs with the same key, where each side has it once. */
function matchSingles<Item>(
  old: readonly Item[],
  now: readonly Item[],
  key: (item: Item) => string,
  keyNow = key,
): (readonly [Item, Item])[] {
  const before = groupRows(old, key);
  const after = groupRows(now, keyNow);
  return [...before].flatMap(([name, items]) => {
    const others = after.get(name) ?? [];
    return items.length === 1 && others.length === 1 ? [[items[0], others[0]] as const] : [];
  });
}

/** Those of `left` that share their identity with another of `rows`. */
function sharing(rows: readonly Arm[], left: readonly Arm[]): readonly Arm[] {
  const groups = groupRows(rows, identifyRow);
  return left.filter((arm) => (groups.get(identifyRow(arm))?.length ?? 0) > 1);
}

/** All cells but one column's. */
function keyOf(arm: Arm, without: ArmColumn | null): string {
  return JSON.stringify(COLUMNS.map((column) => (column === without ? null : arm[column])));
}

function compareCells(one: Arm, other: Arm): CellChange[] {
  return COLUMNS.filter((column) => one[column] !== other[column]).map((column) => ({
    column,
    before: one[column],
    after: other[column],
  }));
}

function nameRow({ study, arm, exercise, muscle, outcome, measure, unit, hours_after, line }: Arm): NamedRow {
  return { study, arm, exercise, muscle, outcome, measure, unit, hours_after, line };
}
