/** A form with a study in it, for tests. */
import { ARM_COLUMNS, type ArmColumn } from '../../../src/evidence/schema.ts';
import { type Cells, toCells } from '../../../src/islands/curate/cells.ts';
import { type CuratingState, createCurating } from '../../../src/islands/curate/curate.state.ts';
import type { RowReading } from '../../../src/islands/curate/readCells.ts';
import type { Place, Result, StudyDraft } from '../../../src/islands/curate/studyDraft.ts';
import { placeOf } from '../../../src/islands/curate/studyDraft.ts';
import { makeArms, type Cells as SomeCells } from '../../support/tables.ts';

export const FROM = { table: 'mine.csv', study: 'Plover 2012' } as const;

/** The valid row of the test tables with changes, as a file has it. */
export function rowOf(changes: SomeCells): Cells {
  return { ...toCells(makeArms([{}])[0]), ...changes };
}

/** A form with a study of such rows in hand. */
export function formWith(...rows: readonly SomeCells[]): CuratingState {
  const state = createCurating();
  state.takeUp(rows.map(rowOf), FROM);
  return state;
}

/** What is said of the first row of the study in hand. */
export function firstRow(state: CuratingState): RowReading {
  const [row] = state.reading.value.rows;
  if (!row) throw new Error('the study makes no row');
  return row.reading;
}

/** A result by the places of its arm and its measure, from 0. */
export function resultAt({ arms, measures }: StudyDraft, arm: number, measure: number): Result {
  return { arm: arms[arm].id, measure: measures[measure].id };
}

/** Enters texts of a row where its cells stand. */
export function type(state: CuratingState, texts: SomeCells, arm = 0, measure = 0): void {
  for (const [name, text] of Object.entries(texts)) {
    state.enter(placeIn(state.draft.value, name as ArmColumn, arm, measure), text);
  }
}

export function placeIn(draft: StudyDraft, column: ArmColumn, arm = 0, measure = 0): Place {
  if (!Object.hasOwn(ARM_COLUMNS, column)) throw new Error(`no such column: ${column}`);
  return placeOf(draft, resultAt(draft, arm, measure), column);
}
