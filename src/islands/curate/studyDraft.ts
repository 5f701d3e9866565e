/**
 * A study as it is entered, once: its facts, its arms and its measures. A row of the table is one arm in one measure;
 * each of its cells stands at one place of the draft, which is the study's, an arm's, a measure's or the result's own.
 */
import type { ArmColumn } from '../../evidence/schema.ts';
import { type Cells, fill, type Texts } from './cells.ts';
import { cohortByDesign } from './cohorts.ts';
import { type ExtraName, type ReportName, USUAL_REPORTS } from './kinds.ts';
import { levelOf, MOSTLY_APART } from './levels.ts';

export interface ArmDraft {
  readonly id: number;
  /** Its name, and the facts that are entered for each arm apart. */
  readonly cells: Texts;
}

export interface MeasureDraft {
  readonly id: number;
  readonly cells: Texts;
  /** Kinds of number that the paper prints for it. */
  readonly reports: readonly ReportName[];
  /** Columns of the study, the arms or the measure that a result of this measure may have a cell of its own for. */
  readonly own: readonly ArmColumn[];
  /** What is printed for an arm, by the arm's id. */
  readonly results: Readonly<Record<number, Texts>>;
}

/** A result: one arm in one measure, by their ids. */
export interface Result {
  readonly arm: number;
  readonly measure: number;
}

export interface StudyDraft {
  readonly id: number;
  /** Facts of the study, and of all its arms together. */
  readonly cells: Texts;
  /** Facts that are entered for each arm apart. */
  readonly apart: readonly ArmColumn[];
  readonly extras: readonly ExtraName[];
  /** Whether the design says which arms are the same people; else `cohort` is a fact like others. */
  readonly peopleByDesign: boolean;
  /** One at least. */
  readonly arms: readonly ArmDraft[];
  /** One at least. */
  readonly measures: readonly MeasureDraft[];
  /** Results whose rows stand in this order before all others. */
  readonly order: readonly Result[];
  /** Where it was taken from: put back, it takes the place of that study in that table. */
  readonly from: { readonly table: string; readonly study: string } | null;
}

/** Where a text stands in a draft. */
export type Place =
  | { readonly of: 'study'; readonly column: ArmColumn }
  | { readonly of: 'arm'; readonly arm: number; readonly column: ArmColumn }
  | { readonly of: 'measure'; readonly measure: number; readonly column: ArmColumn }
  | ({ readonly of: 'result'; readonly column: ArmColumn } & Result);

/** A study with nothing in it, of two arms and one measure. @param id its own; the next ones are its parts’ */
export function startStudy(id: number): StudyDraft {
  return {
    id,
    cells: {},
    apart: MOSTLY_APART,
    extras: [],
    peopleByDesign: true,
    arms: [
      { id: id + 1, cells: {} },
      { id: id + 2, cells: {} },
    ],
    measures: [{ id: id + 3, cells: {}, reports: USUAL_REPORTS, own: [], results: {} }],
    order: [],
    from: null,
  };
}

/** Ids that `startStudy` uses up. */
export const IDS_OF_START = 4;

/** Where the cell of a result's row stands. */
export function placeOf(draft: StudyDraft, result: Result, column: ArmColumn): Place {
  const isOwn = draft.measures.some(({ id, own }) => id === result.measure && own.includes(column));
  return isOwn ? { of: 'result', ...result, column } : placeAbove(draft, result, column);
}

/** Where the cell stands that counts for a result which has none of its own. */
export function placeAbove(draft: StudyDraft, { arm, measure }: Result, column: ArmColumn): Place {
  const level = levelOf(column);
  if (level === 'result') return { of: 'result', arm, measure, column };
  if (level === 'measure') return { of: 'measure', measure, column };
  if (column === 'arm' || draft.apart.includes(column)) return { of: 'arm', arm, column };
  return { of: 'study', column };
}

export function readPlace(draft: StudyDraft, place: Place): string {
  return textsAt(draft, place)?.[place.column] ?? '';
}

function textsAt(draft: StudyDraft, place: Place): Texts | undefined {
  if (place.of === 'study') return draft.cells;
  if (place.of === 'arm') return draft.arms.find(({ id }) => id === place.arm)?.cells;
  const measure = draft.measures.find(({ id }) => id === place.measure);
  return place.of === 'measure' ? measure?.cells : measure?.results[place.arm];
}

/** The draft with another text at a place; the draft itself where the place is not there. */
export function writePlace(draft: StudyDraft, place: Place, text: string): StudyDraft {
  const withText = (texts: Texts = {}): Texts => ({ ...texts, [place.column]: text });
  if (place.of === 'study') return { ...draft, cells: withText(draft.cells) };
  if (place.of === 'arm') {
    return {
      ...draft,
      arms: draft.arms.map((arm) => (arm.id === place.arm ? { ...arm, cells: withText(arm.cells) } : arm)),
    };
  }
  return changeMeasure(draft, place.measure, (measure) =>
    place.of === 'measure'
      ? { ...measure, cells: withText(measure.cells) }
      : { ...measure, results: { ...measure.results, [place.arm]: withText(measure.results[place.arm]) } },
  );
}

export function changeMeasure(
  draft: StudyDraft,
  measure: number,
  change: (measure: MeasureDraft) => MeasureDraft,
): StudyDraft {
  return { ...draft, measures: draft.measures.map((one) => (one.id === measure ? change(one) : one)) };
}

/** The cells of a result's row; where its own cell is empty, that of the measure, the arm or the study counts. */
export function cellsOf(draft: StudyDraft, result: Result): Cells {
  return fill((column) => {
    if (column === 'cohort' && draft.peopleByDesign) return cohortByDesign(draft, result.arm);
    const own = readPlace(draft, placeOf(draft, result, column)).trim();
    return own === '' ? readPlace(draft, placeAbove(draft, result, column)).trim() : own;
  });
}

/** A place as the id of its entry on the page. */
export function idOf(place: Place): string {
  const { column } = place;
  if (place.of === 'study') return `entry-${column}`;
  if (place.of === 'arm') return `entry-arm-${place.arm}-${column}`;
  if (place.of === 'measure') return `entry-measure-${place.measure}-${column}`;
  return `entry-result-${place.measure}-${place.arm}-${column}`;
}
