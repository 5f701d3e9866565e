/** The rows that a draft makes: one for each arm in each measure that something is entered for. */
import type { ArmColumn } from '../../evidence/schema.ts';
import { type Cells, isBlank, type Texts } from './cells.ts';
import { cellsOf, type Result, type StudyDraft } from './studyDraft.ts';

/** A row and where it comes from. */
export interface DraftRow extends Result {
  readonly study: number;
  readonly cells: Cells;
}

/** Rows of the draft: those that it was taken from in their order, then arm by arm. */
export function makeRows(draft: StudyDraft): readonly DraftRow[] {
  const rest = listResults(draft).filter((result) => !draft.order.some((other) => isSame(other, result)));
  return [...draft.order, ...rest]
    .filter((result) => hasRow(draft, result))
    .map((result) => ({ ...result, study: draft.id, cells: cellsOf(draft, result) }));
}

/** Every arm in every measure, arm by arm. */
export function listResults({ arms, measures }: StudyDraft): readonly Result[] {
  return arms.flatMap((arm) => measures.map((measure) => ({ arm: arm.id, measure: measure.id })));
}

/** A result of which nothing is entered makes no row. */
export function hasRow(draft: StudyDraft, { arm, measure }: Result): boolean {
  const found = draft.measures.find(({ id }) => id === measure);
  return draft.arms.some(({ id }) => id === arm) && !isBlank(found?.results[arm]);
}

/** Whether nothing at all was entered. */
export function isBlankStudy({ cells, arms, measures }: StudyDraft): boolean {
  const all: readonly Texts[] = [
    cells,
    ...arms.map((arm) => arm.cells),
    ...measures.flatMap((measure) => [measure.cells, ...Object.values(measure.results)]),
  ];
  return all.every(isBlank);
}

export function isSame(a: Result, b: Result): boolean {
  return a.arm === b.arm && a.measure === b.measure;
}

/** The text that all rows have in a column; null where they differ. */
export function sharedText(rows: readonly Cells[], column: ArmColumn): string | null {
  const [first] = rows;
  return rows.every((row) => row[column] === first[column]) ? first[column] : null;
}
