/**
 * State of the form that makes rows: the rows so far, the row being edited, what the table's readers say of
 * both, and what is done with them. All of it stays in this browser and outlives a reload.
 */
import { computed, signal } from '@preact/signals';
import type { ArmColumn } from '../../evidence/schema.ts';
import { writeArms } from '../../evidence/writeTable.ts';
import { countOf } from '../../numerics/countOf.ts';
import { saveFile } from '../../ui/saveFile.ts';
import {
  type Cells,
  EMPTY_CELLS,
  isEmptyRow,
  REPORTS,
  type ReportName,
  reportsIn,
  startNextArm,
  startNextMeasure,
  toCells,
  USUAL_REPORTS,
} from './cells.ts';
import { keepForm } from './keptForm.state.ts';
import { placeRow } from './keptRows.ts';
import { lineOf, readRow, readRows } from './readCells.ts';
import { estimateFromLoad, estimateFromShare, type ReserveColumn, type ReserveFound } from './reserveEstimate.ts';
import { type Curating, NOTHING_CURATED } from './savedForm.ts';

export const FILE_NAME = 'curated-arms.csv';
const CSV = 'text/csv;charset=utf-8';

export function createCurating() {
  const curating = signal<Curating>(NOTHING_CURATED);
  /** What stood in the place of what the last step took away. */
  const undo = signal<{ readonly what: string; readonly before: Partial<Curating> } | null>(null);
  /** What the last step did, for the status line. */
  const done = signal('');
  const kept = keepForm(curating);
  /** The entry that last had the focus: it stays explained until another has it, so that nothing moves under a click. */
  const edited = signal<ArmColumn | ReserveColumn | null>(null);

  const draft = computed(() => curating.value.draft);
  const rows = computed(() => curating.value.rows);
  const at = computed(() => curating.value.at);
  const isEmpty = computed(() => isEmptyRow(draft.value));
  const placed = computed(() => placeRow(rows.value, draft.value, at.value));
  const reading = computed(() => readRow(placed.value.rows, placed.value.place));
  const readings = computed(() => readRows(rows.value));
  const csv = computed(() => writeArms(rows.value));
  const fromLoad = computed(() => estimateFromLoad(draft.value, curating.value.reserve));
  const fromShare = computed(() => estimateFromShare(curating.value.reserve));
  /** Kinds of number whose fields are shown: those that are ticked and those that hold something. */
  const reports = computed<readonly ReportName[]>(() => {
    const filled = reportsIn(draft.value);
    return REPORTS.map(({ name }) => name).filter(
      (name) => filled.includes(name) || curating.value.reports.includes(name),
    );
  });

  const change = (part: Partial<Curating>) => {
    curating.value = { ...curating.value, ...part };
  };
  /** The present values of the same parts. */
  const partsNow = (part: Partial<Curating>): Partial<Curating> =>
    Object.fromEntries(Object.keys(part).map((name) => [name, curating.value[name as keyof Curating]]));
  const takeAway = (what: string, part: Partial<Curating>) => {
    undo.value = { what, before: partsNow(part) };
    done.value = '';
    change(part);
  };
  const enter = (name: ArmColumn, text: string) => {
    done.value = '';
    change({ draft: { ...draft.value, [name]: text.replace(/[\r\n]+/gu, ' ') } });
  };
  const explain = (isExplained: boolean) => change({ isExplained });
  const take = (name: ArmColumn | ReserveColumn) => {
    edited.value = name;
  };
  const askReserve = (name: ReserveColumn, text: string) => {
    change({ reserve: { ...curating.value.reserve, [name]: text } });
  };
  const takeReserve = (found: ReserveFound) => {
    change({ draft: { ...draft.value, ...found } });
    done.value = `reserve_reps ${found.reserve_reps}, reserve_sd ${found.reserve_sd} and reserve_basis ${found.reserve_basis} are filled in.`;
  };
  /** Shows the fields of a kind of number, or clears and hides them. */
  const report = (name: ReportName, isReported: boolean) => {
    const { columns, label } = REPORTS.find((kind) => kind.name === name) ?? { columns: [], label: '' };
    const others = curating.value.reports.filter((other) => other !== name);
    if (isReported) {
      change({ reports: [...others, name] });
      return;
    }
    const cleared = { ...draft.value, ...Object.fromEntries(columns.map((column) => [column, ''])) };
    if (reportsIn(draft.value).includes(name)) {
      takeAway(`${label} was cleared.`, { reports: others, draft: cleared });
    } else change({ reports: others });
  };
  /** Makes sure that the field of a column is shown. */
  const reveal = (column: ArmColumn) => {
    const kind = REPORTS.find(({ columns }) => columns.some((name) => name === column));
    if (kind) report(kind.name, true);
  };

  /** Puts the row being edited among the rows, as it was read; false where it has problems. */
  const keep = (): boolean => {
    const { arm } = reading.value;
    if (!arm) return false;
    const row = toCells(arm);
    const { rows: next, place, carried } = placeRow(rows.value, row, at.value);
    const also =
      carried.rows > 0
        ? ` ${carried.columns.join(', ')} ${carried.columns.length === 1 ? 'was' : 'were'} changed in ${countOf(carried.rows, 'other row')} too.`
        : '';
    const wasNew = at.value === null;
    undo.value = null;
    change({ rows: next, draft: startNextArm(row), at: null, reports: reportsIn(row) });
    done.value = `${wasNew ? 'Added' : 'Saved'} as line ${lineOf(place)}.${also} The form is ready for the next arm of ${row.study}.`;
    return true;
  };
  /** Puts another row in hand; what was in hand can be had back. */
  const takeUp = (what: string, cells: Cells, from: number, at: number | null) => {
    const next = { draft: cells, at, reports: reportsIn(rows.value[from]) };
    if (isEmpty.value) {
      undo.value = null;
      change(next);
    } else takeAway('The form was filled anew.', next);
    done.value = what;
  };
  const edit = (place: number) => takeUp(`Line ${lineOf(place)} is in the form.`, rows.value[place], place, place);
  const nextArm = (place: number) => {
    const row = rows.value[place];
    takeUp(`The form is ready for the next arm of ${row.study}.`, startNextArm(row), place, null);
  };
  const nextMeasure = (place: number) => {
    const row = rows.value[place];
    takeUp(`The form is ready for the next measure of ${row.arm}.`, startNextMeasure(row), place, null);
  };
  const remove = (place: number) => {
    const { at: now } = curating.value;
    takeAway(`Line ${lineOf(place)} was removed.`, {
      rows: rows.value.filter((_, i) => i !== place),
      at: now === null || now === place ? null : now > place ? now - 1 : now,
    });
  };
  const removeAll = () => takeAway('All rows were removed.', { rows: [], at: null });
  const empty = () => takeAway('The form was emptied.', { draft: EMPTY_CELLS, at: null, reports: USUAL_REPORTS });
  const takeBack = () => {
    if (!undo.value) return;
    const { before } = undo.value;
    // What was entered since can be had back in turn.
    undo.value = { what: 'That was taken back.', before: partsNow(before) };
    change(before);
  };

  const csvOf = (withHeader: boolean) => (withHeader ? csv.value : csv.value.slice(csv.value.indexOf('\n') + 1));
  const download = () => saveFile({ name: FILE_NAME, type: CSV, text: csv.value });

  return {
    curating,
    draft,
    rows,
    at,
    isEmpty,
    placed,
    reading,
    readings,
    csv,
    reports,
    fromLoad,
    fromShare,
    undo,
    done,
    kept,
    edited,
    enter,
    explain,
    take,
    askReserve,
    takeReserve,
    report,
    reveal,
    keep,
    edit,
    nextArm,
    nextMeasure,
    remove,
    removeAll,
    empty,
    takeBack,
    csvOf,
    download,
    connect: kept.connect,
  };
}

export type CuratingState = ReturnType<typeof createCurating>;
