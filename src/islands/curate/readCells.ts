/**
 * What the table's own readers say of rows in the making, and the numbers that follow from them. Rows
 * are written as the table has them and read back, so that no rule stands here a second time.
 */

import { COLUMN_MEANINGS } from '../../evidence/columnMeanings.ts';
import { isArmColumn } from '../../evidence/columnWords.ts';
import { intervalOf } from '../../evidence/effectInterval.ts';
import { computeEffect, type Effect } from '../../evidence/effects.ts';
import type { Problem } from '../../evidence/problem.ts';
import { sourceOf } from '../../evidence/provenance.ts';
import type { Recovered } from '../../evidence/recover.ts';
import { ARM_COLUMNS, type Arm, type ArmColumn } from '../../evidence/schema.ts';
import { type ArmTable, readArms } from '../../evidence/table.ts';
import { EFFECT_METRICS } from '../../evidence/vocabulary.ts';
import { writeArms } from '../../evidence/writeTable.ts';
import { defaultSettings, type Metric } from '../../model/settings.ts';
import type { Cells } from './cells.ts';

/** Stands for a file in problems. */
const HERE = 'this page';
/** Lines of a table before its first row. */
const HEADER_LINES = 1;

export interface EffectShown {
  readonly metric: Metric;
  readonly effect: Effect | null;
  /** Why there is none in this metric. */
  readonly noEffect: string | null;
  /** On the scale of the effect. */
  readonly interval: { readonly ciLow: number; readonly ciHigh: number } | null;
}

export interface NumberShown extends Recovered {
  /** Where the formula is published. */
  readonly source: string | null;
}

export interface RowNumbers {
  readonly effects: readonly EffectShown[];
  /** What was made of the reported numbers, in the order in which it was made. */
  readonly numbers: readonly NumberShown[];
}

/** What is said of a row as far as it can be read. */
interface Rest {
  readonly arm: Arm | null;
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
}

export interface RowReading {
  /** What an entry breaks. */
  readonly problems: readonly Problem[];
  /** What is not there yet. */
  readonly needed: readonly Problem[];
  readonly warnings: readonly Problem[];
  /** null while an entry that they rest on is missing or wrong; `waitsFor` names it. */
  readonly numbers: RowNumbers | null;
  readonly waitsFor: readonly ArmColumn[];
  /** The row as it was read; null where it has problems. */
  readonly arm: Arm | null;
}

/** Reads all rows together and gives what is said of each, in their order. */
export function readRows(rows: readonly Cells[]): readonly RowReading[] {
  const table = readTable(rows);
  return rows.map((cells, place) => describe(table, cells, place));
}

/** What is said of one of the rows. @param place of the row, from 0 */
export function readRow(rows: readonly Cells[], place: number): RowReading {
  return describe(readTable(rows), rows[place], place);
}

/** Line of a row in a table with a header. */
export function lineOf(place: number): number {
  return place + HEADER_LINES + 1;
}

function readTable(rows: readonly Cells[]): ArmTable {
  return readArms(writeArms(rows), HERE);
}

function describe(table: ArmTable, cells: Cells, place: number): RowReading {
  const line = lineOf(place);
  const here = (problems: readonly Problem[]) => problems.filter((problem) => problem.line === line);
  const all = here(table.problems);
  const unread = all.filter(({ kind }) => kind === 'missing-value' || kind === 'wrong-value');
  const waitsFor = unread.flatMap(({ column }) => (isArmColumn(column) && bearsNumbers(column) ? [column] : []));
  const arm = table.arms.find((row) => row.line === line) ?? null;
  const rest = unread.length > 0 && waitsFor.length === 0 ? readRest(cells, unread, line) : null;
  const problems = [...all, ...(rest?.problems ?? [])];
  const computable = arm ?? rest?.arm ?? null;
  return {
    problems: problems.filter(({ value }) => value !== ''),
    needed: problems.filter(({ value }) => value === ''),
    warnings: [...here(table.warnings), ...(rest?.warnings ?? [])],
    numbers: computable && showNumbers(computable),
    waitsFor,
    arm: all.length === 0 ? arm : null,
  };
}

/** Effect and variance rest on the statistics, the number of people and, for what is assumed, the outcome. */
function bearsNumbers(name: ArmColumn): boolean {
  return name === 'n' || name === 'outcome' || ARM_COLUMNS[name].group === 'statistics';
}

/**
 * What can be said of a row before all of it can be read: alone, with the schema's examples, or nothing,
 * in cells that cannot be read and that no number rests on. What concerns those cells is left out.
 */
function readRest(cells: Cells, unread: readonly Problem[], line: number): Rest {
  const stands = Object.fromEntries(
    unread.flatMap(({ column }) =>
      isArmColumn(column) ? [[column, ARM_COLUMNS[column].required ? COLUMN_MEANINGS[column].example : '']] : [],
    ),
  );
  const { arms, problems, warnings } = readTable([{ ...cells, ...stands }]);
  const own = (list: readonly Problem[]) =>
    list
      .filter((problem) => problem.column === null || !Object.hasOwn(stands, problem.column))
      .map((problem) => ({ ...problem, line }));
  return { arm: arms[0] ?? null, problems: own(problems), warnings: own(warnings) };
}

function showNumbers(arm: Arm): RowNumbers {
  const effects = EFFECT_METRICS.map((metric): EffectShown => {
    const effect = computeEffect(arm, { metric, assumedCorrelation: defaultSettings.assumedCorrelation[arm.outcome] });
    if (typeof effect === 'string') return { metric, effect: null, noEffect: effect, interval: null };
    return { metric, effect, noEffect: null, interval: intervalOf(effect, defaultSettings.confidence) };
  });
  const numbers = effects.flatMap(({ effect, metric }) =>
    (effect?.steps ?? []).map((step) => ({ ...step, quantity: nameQuantity(step, metric), source: sourceOf(step) })),
  );
  // Both metrics rest on the same recovered numbers, which are told once.
  const first = new Map(numbers.map((number) => [`${number.quantity}: ${number.how}`, number]));
  return { effects, numbers: [...first.values()] };
}

function nameQuantity({ quantity }: Recovered, metric: Metric): string {
  const effect = metric === 'log-ratio' ? 'log ratio' : 'standardised change';
  if (quantity === 'effect') return effect;
  return quantity === 'variance' ? `variance of the ${effect}` : quantity;
}
