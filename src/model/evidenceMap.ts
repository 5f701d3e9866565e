/**
 * Where the studies of an outcome stand, load against reserve: how many arms and people, and the
 * largest regions without any.
 *
 * An arm of one exercise stands at its load and reserve, whether or not its rows are in the fit. Arms
 * that went beyond failure or do not report both numbers stand nowhere and are counted apart.
 */
import { groupRows } from '../evidence/groupRows.ts';
import type { Arm } from '../evidence/schema.ts';
import { wentBeyondFailure } from '../evidence/vocabulary.ts';
import { countPeople } from './counts.ts';
import { cellOf, type EmptyRegion, findEmptyRegions, loadLines, reserveLines } from './emptyRegions.ts';
import { bandOfLoad } from './loads.ts';
import type { Analysis, BandName } from './result.ts';
import type { Settings } from './settings.ts';

interface Counts {
  readonly arms: number;
  /** People over the cohorts; the same people may stand at several places. */
  readonly people: number;
  readonly studies: number;
}

/** What stands at one load and reserve. */
export interface MapPlace extends Counts {
  /** Per cent of 1RM. */
  readonly load: number;
  /** Repetitions. */
  readonly reserve: number;
  readonly band: BandName;
}

/** What stands in one cell of the grid that the regions are made of. */
export interface MapCell extends Counts {
  /** Lines that bound the cell; the upper one is inside only in the last cell. */
  readonly load: readonly [low: number, high: number];
  readonly reserve: readonly [low: number, high: number];
}

export interface EvidenceMap extends Counts {
  readonly outcome: Settings['outcome'];
  /** Per cent of 1RM at and above which a load is heavy; null where loads are not told apart. */
  readonly split: number | null;
  /** Arms on the map none of whose rows is in the fit. */
  readonly notFitted: number;
  /** Arms that stand nowhere, by why. */
  readonly without: { readonly loadOrReserve: number; readonly beyondFailure: number };
  readonly places: readonly MapPlace[];
  /** Occupied cells only, by load and then reserve. */
  readonly cells: readonly MapCell[];
  /** Arms outside the grid's loads and reserves; they have places but no cell. */
  readonly outsideCells: number;
  readonly regions: readonly EmptyRegion[];
}

/** An arm's row with both numbers known. */
type Placed = Arm & { readonly load_pct_1rm: number; readonly reserve_reps: number };

/**
 * @param arms all rows of the table
 * @param analysis of these rows: its outcome is mapped, and it says which rows are in the fit
 */
export function mapEvidence(
  arms: readonly Arm[],
  { settings: { outcome, split }, rows }: Pick<Analysis, 'settings' | 'rows'>,
): EvidenceMap {
  const measured = arms.filter((arm) => arm.outcome === outcome);
  const dosed = measured.filter((arm) => !wentBeyondFailure(arm));
  const placed = dosed.filter(isPlaced);
  const excluded = new Set(rows.excluded.map(({ line }) => line));
  const fitted = placed.filter(({ line }) => !excluded.has(line));
  const loads = loadLines(split);
  const reserves = reserveLines();
  const inCells = placed.filter(
    ({ load_pct_1rm, reserve_reps }) => cellOf(loads, load_pct_1rm) >= 0 && cellOf(reserves, reserve_reps) >= 0,
  );
  const points = placed.map(({ load_pct_1rm: load, reserve_reps: reserve }) => ({ load, reserve }));
  return {
    outcome,
    split,
    ...count(placed),
    notFitted: countArms(placed) - countArms(fitted),
    without: {
      loadOrReserve: countArms(dosed) - countArms(placed),
      beyondFailure: countArms(measured.filter(wentBeyondFailure)),
    },
    places: groupByPair(placed, ({ load_pct_1rm, reserve_reps }) => [load_pct_1rm, reserve_reps]).map(
      ([[load, reserve], here]) => ({
        load,
        reserve,
        band: bandOfLoad(load, split),
        ...count(here),
      }),
    ),
    cells: groupByPair(inCells, ({ load_pct_1rm, reserve_reps }) => [
      cellOf(loads, load_pct_1rm),
      cellOf(reserves, reserve_reps),
    ]).map(([[l, r], here]) => ({
      load: [loads[l], loads[l + 1]],
      reserve: [reserves[r], reserves[r + 1]],
      ...count(here),
    })),
    outsideCells: countArms(placed) - countArms(inCells),
    regions: findEmptyRegions(points, split),
  };
}

function isPlaced(arm: Arm): arm is Placed {
  return arm.load_pct_1rm !== null && arm.reserve_reps !== null;
}

/** Groups by a pair of numbers, sorted by the first and then the second. */
function groupByPair(
  rows: readonly Placed[],
  pairOf: (row: Placed) => readonly [number, number],
): (readonly [readonly [number, number], readonly Placed[]])[] {
  return [...groupRows(rows, (row) => pairOf(row).join()).values()]
    .map((group) => [pairOf(group[0]), group] as const)
    .sort(([a], [b]) => a[0] - b[0] || a[1] - b[1]);
}

function count(rows: readonly Arm[]): Counts {
  return {
    arms: countArms(rows),
    people: countPeople(rows),
    studies: new Set(rows.map(({ study }) => study)).size,
  };
}

/** An arm that trains two exercises may do so at two loads: it is one arm at each. */
function countArms(rows: readonly Arm[]): number {
  return new Set(rows.map(({ study, arm, exercise }) => JSON.stringify([study, arm, exercise]))).size;
}
