/**
 * What the table's own readers say of the studies in the making: of each row that they make, and, where an arm or a
 * measure makes none yet, of the facts that are entered for it. Every problem is said once, at the entry it concerns.
 */
import { isArmColumn } from '../../evidence/columnWords.ts';
import type { Problem } from '../../evidence/problem.ts';
import { ARM_COLUMNS } from '../../evidence/schema.ts';
import { type DraftRow, hasRow, isBlankStudy, listResults, makeRows } from './draftRows.ts';
import { lineOf, type RowReading, readRow, readRows } from './readCells.ts';
import { cellsOf, idOf, type Place, placeOf, type Result, type StudyDraft } from './studyDraft.ts';

export interface PlacedProblem extends Problem {
  readonly place: Place;
}

export interface StudyReading {
  /** What an entry breaks. */
  readonly problems: readonly PlacedProblem[];
  /** What is not there yet. */
  readonly needed: readonly PlacedProblem[];
  readonly warnings: readonly PlacedProblem[];
  readonly rows: readonly (DraftRow & { readonly line: number; readonly reading: RowReading })[];
  /** Results that make no row, of arms and measures that make others. */
  readonly empty: readonly Result[];
}

/** Reads all studies together, as the one table that they make, in their order. */
export function readStudies(drafts: readonly StudyDraft[]): ReadonlyMap<number, StudyReading> {
  const made = drafts.flatMap(makeRows);
  const readings = readRows(made.map(({ cells }) => cells));
  const rows = made.map((row, i) => ({ ...row, line: lineOf(i), reading: readings[i] }));
  return new Map(
    drafts.map((draft) => [
      draft.id,
      describe(
        draft,
        rows.filter(({ study }) => study === draft.id),
      ),
    ]),
  );
}

function describe(draft: StudyDraft, rows: StudyReading['rows']): StudyReading {
  const said = rows.map(({ arm, measure, reading }) => ({ result: { arm, measure }, ...reading }));
  const all = [...said, ...readWithoutRow(draft)];
  const place = (list: 'problems' | 'needed' | 'warnings') => {
    const found = new Map<string, PlacedProblem>();
    for (const one of all) {
      for (const problem of one[list]) {
        const placed = { ...problem, place: placeOfProblem(draft, one.result, problem) };
        const key = `${idOf(placed.place)} ${problem.expected}`;
        if (!found.has(key)) found.set(key, placed);
      }
    }
    return [...found.values()];
  };
  return {
    problems: place('problems'),
    needed: place('needed'),
    warnings: place('warnings'),
    rows,
    empty: rows.length === 0 ? [] : listResults(draft).filter((result) => !hasRow(draft, result)),
  };
}

/** The entry of a problem’s column; that of the measure’s name where the row as a whole is meant. */
function placeOfProblem(draft: StudyDraft, result: Result, { column }: Problem): Place {
  const name = isArmColumn(column) ? column : 'measure';
  // The design says which arms are the same people; it is the entry to look at.
  return placeOf(draft, result, name === 'cohort' && draft.peopleByDesign ? 'design' : name);
}

interface Said extends Pick<RowReading, 'problems' | 'needed' | 'warnings'> {
  readonly result: Result;
}

/** What is said of the facts of arms and measures that make no row yet, each read alone and without its numbers. */
function readWithoutRow(draft: StudyDraft): readonly Said[] {
  if (isBlankStudy(draft)) return [];
  const results = listResults(draft);
  const made = results.filter((result) => hasRow(draft, result));
  const [{ arm: firstArm, measure: firstMeasure }] = results;
  const ofArms = draft.arms
    .filter(({ id }) => !made.some(({ arm }) => arm === id))
    .map(({ id }): Result => ({ arm: id, measure: firstMeasure }));
  const ofMeasures = draft.measures
    .filter(({ id }) => !made.some(({ measure }) => measure === id))
    .map(({ id }): Result => ({ arm: firstArm, measure: id }));
  return [...ofArms, ...ofMeasures].map((result) => {
    const { problems, needed, warnings } = readRow([cellsOf(draft, result)], 0);
    const ofFacts = (list: readonly Problem[]) => list.filter(({ column }) => !isNumber(column));
    return { result, problems: ofFacts(problems), needed: ofFacts(needed), warnings: ofFacts(warnings) };
  });
}

/** Whether a column holds what is printed for a result. */
function isNumber(column: string | null): boolean {
  return isArmColumn(column) && ARM_COLUMNS[column].group === 'statistics';
}
