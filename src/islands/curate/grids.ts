/** Which entries stand in the grids of the form: facts of the arms side by side, and the results of a measure. */
import { ARM_COLUMNS, type ArmColumn } from '../../evidence/schema.ts';
import { ARM_NAMES } from './cells.ts';
import { EXTRAS, isShown, REPORTS } from './kinds.ts';
import { ALWAYS_SHARED, columnsOf, levelOf } from './levels.ts';
import { type MeasureDraft, type Place, placeAbove, readPlace, type StudyDraft } from './studyDraft.ts';

/** A row of the arms' grid: a fact, with one entry for all arms or one for each. */
export interface FactRow {
  readonly column: ArmColumn;
  readonly isApart: boolean;
  readonly places: readonly Place[];
}

export interface FactGroup {
  readonly heading: string;
  readonly rows: readonly FactRow[];
}

const HEADINGS: Readonly<Record<string, string>> = {
  arm: 'People',
  training: 'Training',
  'proximity to failure': 'How near to failure',
};

/** Facts of the arms, group by group; what all arms share of the study itself has fields of its own. */
export function listFacts(draft: StudyDraft): readonly FactGroup[] {
  const columns = ARM_NAMES.filter((column) => isFactOfArms(draft, column));
  const headingOf = (column: ArmColumn) => HEADINGS[ARM_COLUMNS[column].group] ?? HEADINGS.arm;
  return Object.values(HEADINGS).map((heading) => ({
    heading,
    rows: columns.filter((column) => headingOf(column) === heading).map((column) => factRow(draft, column)),
  }));
}

/** The entries of the arms’ grid, the names first. */
export function gridOfFacts(draft: StudyDraft): readonly (readonly Place[])[] {
  return [factRow(draft, 'arm').places, ...listFacts(draft).flatMap(({ rows }) => rows.map(({ places }) => places))];
}

function isFactOfArms(draft: StudyDraft, column: ArmColumn): boolean {
  if (ALWAYS_SHARED.includes(column)) return draft.apart.includes(column);
  const level = levelOf(column);
  if (column === 'arm' || (level !== 'arm' && level !== 'study')) return false;
  if (column === 'cohort') return !draft.peopleByDesign;
  return (
    isShown(EXTRAS, draft.extras, column) || factRow(draft, column).places.some((place) => readPlace(draft, place))
  );
}

function factRow(draft: StudyDraft, column: ArmColumn): FactRow {
  const isApart = column === 'arm' || draft.apart.includes(column);
  const [{ id: measure }] = draft.measures;
  const arms = isApart ? draft.arms : draft.arms.slice(0, 1);
  return { column, isApart, places: arms.map(({ id: arm }) => placeAbove(draft, { arm, measure }, column)) };
}

/** Facts of the study that are entered above its arms. */
export function listStudyFacts({ apart }: StudyDraft): readonly ArmColumn[] {
  return ALWAYS_SHARED.filter((column) => !apart.includes(column));
}

/** Columns of a measure's grid: cells of its own that its results may have, then the numbers that are printed. */
export function listNumbers({ own, reports, results }: MeasureDraft): readonly ArmColumn[] {
  const isFilled = (column: ArmColumn) => Object.values(results).some((texts) => texts[column]);
  const numbers = columnsOf('result').filter((column) => isShown(REPORTS, reports, column) || isFilled(column));
  return [...ARM_NAMES.filter((column) => own.includes(column)), ...numbers];
}

/** The entries of a measure's grid: a row for each arm. */
export function gridOfResults({ arms }: StudyDraft, measure: MeasureDraft): readonly (readonly Place[])[] {
  const columns = listNumbers(measure);
  return arms.map(({ id: arm }) =>
    columns.map((column): Place => ({ of: 'result', measure: measure.id, arm, column })),
  );
}

/** What a measure is comes first, where it stands last; others in the order of the table between them. */
const FIRST: readonly ArmColumn[] = ['outcome', 'measure', 'muscle', 'unit', 'hours_after'];
const LAST: readonly ArmColumn[] = ['source_place', 'note'];

function inOrder(columns: readonly ArmColumn[]): readonly ArmColumn[] {
  const between = columns.filter((column) => !FIRST.includes(column) && !LAST.includes(column));
  return [...FIRST, ...between, ...LAST].filter((column) => columns.includes(column));
}

/** Facts of a measure that have fields: choices of kinds of number with these, hours with fatigue. */
export function listMeasureFacts(measure: MeasureDraft): readonly ArmColumn[] {
  const { cells, reports, own } = measure;
  return inOrder(columnsOf('measure')).filter((column) => {
    if (own.includes(column) && !cells[column]) return false;
    if (cells[column]) return true;
    if (column === 'hours_after') return cells.outcome === 'fatigue';
    return isShown(REPORTS, reports, column);
  });
}
