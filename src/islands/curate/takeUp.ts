/**
 * Rows of a study back to the draft that makes them: what all rows share is the study's, what the rows of an arm share
 * is the arm's, and so on, so that `makeRows` gives the same rows in the same order, whatever stands in them.
 */

import { groupRows } from '../../evidence/groupRows.ts';
import type { ArmColumn } from '../../evidence/schema.ts';
import type { Cells, Texts } from './cells.ts';
import { cohortByDesign } from './cohorts.ts';
import { sharedText } from './draftRows.ts';
import { EXTRAS, numbersOf, REPORTS } from './kinds.ts';
import { columnsOf } from './levels.ts';
import type { ArmDraft, MeasureDraft, StudyDraft } from './studyDraft.ts';

/** A row at its place among arms and measures. */
interface Placed {
  readonly cells: Cells;
  readonly arm: number;
  readonly measure: number;
}

/**
 * @param rows of one study, one at least, valid or not
 * @param id of the draft; `nextId` of the answer is the first that is free after it
 */
export function takeUpRows(
  rows: readonly Cells[],
  id: number,
  from: StudyDraft['from'],
): { readonly draft: StudyDraft; readonly nextId: number } {
  const { placed, nextId } = placeRows(rows, id + 1);
  const arms = [...groupRows(placed, ({ arm }) => String(arm)).values()];
  const measures = [...groupRows(placed, ({ measure }) => String(measure)).values()];
  const facts = [...columnsOf('study'), ...columnsOf('arm').filter((column) => column !== 'arm')];
  const shared = facts.filter((column) => sharedText(rows, column) !== null);
  const apart = facts.filter(
    (column) => !shared.includes(column) && arms.every((one) => sharedText(cellsIn(one), column) !== null),
  );
  const ofResults = facts.filter((column) => !shared.includes(column) && !apart.includes(column));
  const draft: StudyDraft = {
    id,
    cells: take(rows[0], shared),
    apart,
    extras: EXTRAS.filter(({ columns }) => columns.some((column) => rows.some((row) => row[column] !== ''))).map(
      ({ name }) => name,
    ),
    peopleByDesign: false,
    arms: arms.map(([{ arm, cells }]): ArmDraft => ({ id: arm, cells: take(cells, ['arm', ...apart]) })),
    measures: measures.map((one) => takeMeasure(one, ofResults)),
    order: placed.map(({ arm, measure }) => ({ arm, measure })),
    from,
  };
  const followsDesign = placed.every(({ arm, cells }) => cells.cohort === cohortByDesign(draft, arm));
  return { draft: followsDesign ? letDesignSayPeople(draft) : draft, nextId };
}

/** Gives each row the arm and the measure that its own words name; a row that stands twice has a measure of its own. */
function placeRows(rows: readonly Cells[], firstId: number): { placed: readonly Placed[]; nextId: number } {
  let nextId = firstId;
  const ids = new Map<string, number>();
  const idFor = (key: string) => {
    const known = ids.get(key);
    if (known !== undefined) return known;
    ids.set(key, nextId);
    return nextId++;
  };
  const taken = new Set<string>();
  const placed = rows.map((cells): Placed => {
    const arm = idFor(JSON.stringify(['arm', cells.arm, cells.exercise]));
    const { outcome, measure: name, unit, hours_after, muscle } = cells;
    for (let copy = 0; ; copy++) {
      const measure = idFor(JSON.stringify(['measure', outcome, name, unit, hours_after, muscle, copy]));
      const key = `${arm} ${measure}`;
      if (taken.has(key)) continue;
      taken.add(key);
      return { cells, arm, measure };
    }
  });
  return { placed, nextId };
}

function takeMeasure(rows: readonly Placed[], ofResults: readonly ArmColumn[]): MeasureDraft {
  const [{ measure: id, cells }] = rows;
  const columns = columnsOf('measure');
  const shared = columns.filter((column) => sharedText(cellsIn(rows), column) !== null);
  const own = [...ofResults, ...columns.filter((column) => !shared.includes(column))];
  const filled = (column: ArmColumn) => rows.some((row) => row.cells[column] !== '');
  return {
    id,
    cells: take(cells, shared),
    // A level of intervals says nothing of which interval is printed; numbers do.
    reports: REPORTS.filter((kind) => numbersOf(kind).some(filled)).map(({ name }) => name),
    own,
    results: Object.fromEntries(rows.map((row) => [row.arm, take(row.cells, [...columnsOf('result'), ...own])])),
  };
}

/** The draft whose design says which arms are the same people; what was entered of them is dropped. */
export function letDesignSayPeople(draft: StudyDraft): StudyDraft {
  const without = ({ cohort: _, ...texts }: Texts): Texts => texts;
  return {
    ...draft,
    peopleByDesign: true,
    cells: without(draft.cells),
    apart: draft.apart.filter((column) => column !== 'cohort'),
    arms: draft.arms.map((arm) => ({ ...arm, cells: without(arm.cells) })),
    measures: draft.measures.map((measure) => ({
      ...measure,
      own: measure.own.filter((column) => column !== 'cohort'),
      results: Object.fromEntries(Object.entries(measure.results).map(([arm, texts]) => [arm, without(texts)])),
    })),
  };
}

/** The texts of some columns that are not empty. */
function take(cells: Cells, columns: readonly ArmColumn[]): Texts {
  return Object.fromEntries(columns.filter((column) => cells[column] !== '').map((column) => [column, cells[column]]));
}

function cellsIn(rows: readonly Placed[]): readonly Cells[] {
  return rows.map(({ cells }) => cells);
}
