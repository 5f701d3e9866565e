/**
 * Where no study has been: the largest empty rectangles on a grid of loads and reserves.
 *
 * The grid has lines at every 5 % of 1RM from 20 to 100, at the split, and at every whole repetition
 * from 0 to 10; a cell holds its lower lines and not its upper ones, but for those at 100 % and 10. A
 * rectangle of empty cells that cannot be widened is a region. Regions are taken by how much of the
 * grid each adds that no earlier one covers. A region reaches beyond the grid where no point lies there either.
 */

export interface LoadAndReserve {
  /** Per cent of 1RM, above 0 and up to 100. */
  readonly load: number;
  /** Repetitions, at least 0. */
  readonly reserve: number;
}

export interface EmptyRegion {
  /** Grid lines that bound the region, per cent of 1RM; the upper line is inside only at 100. */
  readonly load: readonly [low: number, high: number];
  /** Grid lines that bound the region, repetitions; the upper line is inside only at 10. */
  readonly reserve: readonly [low: number, high: number];
  /** Share of the grid's area, 0 to 1. */
  readonly share: number;
  /** True where no point is lighter either, below the grid. */
  readonly anyLighter: boolean;
  /** True where no point has more in reserve either, beyond the grid. */
  readonly anyMore: boolean;
}

/** Loads that the regions lie within, per cent of 1RM. */
export const MAPPED_LOAD = { from: 20, to: 100, step: 5 } as const;
/** Reserves that the regions lie within, repetitions. */
export const MAPPED_RESERVE = { from: 0, to: 10, step: 1 } as const;
/** Share of the grid that a region must add to be worth a sentence: one square of 20 % by 2 repetitions. */
const LEAST_SHARE = 0.05;
/** Regions named at most, as many as a reader keeps in mind. */
const MOST_REGIONS = 4;

/** Cells of the grid between its lines. */
interface Grid {
  readonly loads: readonly number[];
  readonly reserves: readonly number[];
  /** empty[l][r] */
  readonly empty: readonly (readonly boolean[])[];
}

/** Places of the lines that bound a rectangle of cells. */
interface Rectangle {
  readonly l0: number;
  readonly l1: number;
  readonly r0: number;
  readonly r1: number;
}

/**
 * @param split per cent of 1RM at and above which a load is heavy; null where loads are not told apart
 * @returns the regions, the one that covers most first
 */
export function findEmptyRegions(points: readonly LoadAndReserve[], split: number | null): readonly EmptyRegion[] {
  const grid = fillGrid(points, split);
  const left = listMaximal(grid);
  const covered = grid.empty.map((row) => row.map(() => false));
  const regions: EmptyRegion[] = [];
  while (regions.length < MOST_REGIONS) {
    const best = left
      .map((rectangle) => ({ rectangle, added: areaOf(grid, rectangle, covered) }))
      .reduce((most, one) => (one.added > most.added ? one : most), { rectangle: left[0], added: 0 });
    if (best.added < LEAST_SHARE) break;
    const { l0, l1, r0, r1 } = best.rectangle;
    for (let l = l0; l < l1; l++) covered[l].fill(true, r0, r1);
    const load = [grid.loads[l0], grid.loads[l1]] as const;
    const reserve = [grid.reserves[r0], grid.reserves[r1]] as const;
    regions.push({
      load,
      reserve,
      share: areaOf(grid, best.rectangle, null),
      ...reachBeyond({ load, reserve }, points),
    });
  }
  return regions;
}

/** Place of the cell of a value among lines; the last line belongs to the last cell; −1 outside. */
export function cellOf(lines: readonly number[], value: number): number {
  const last = lines.length - 1;
  if (value === lines[last]) return last - 1;
  return value < lines[0] || value > lines[last] ? -1 : lines.findLastIndex((line) => line <= value);
}

/** Lines of load, with the split among them. */
export function loadLines(split: number | null): readonly number[] {
  const { from, to, step } = MAPPED_LOAD;
  const lines = Array.from({ length: (to - from) / step + 1 }, (_, i) => from + i * step);
  if (split === null || split <= from || split >= to || lines.includes(split)) return lines;
  return [...lines, split].sort((a, b) => a - b);
}

/** Lines of reserve. */
export function reserveLines(): readonly number[] {
  const { from, to, step } = MAPPED_RESERVE;
  return Array.from({ length: (to - from) / step + 1 }, (_, i) => from + i * step);
}

function fillGrid(points: readonly LoadAndReserve[], split: number | null): Grid {
  const loads = loadLines(split);
  const reserves = reserveLines();
  const empty = loads.slice(1).map(() => reserves.slice(1).map(() => true));
  for (const { load, reserve } of points) {
    const l = cellOf(loads, load);
    const r = cellOf(reserves, reserve);
    if (l >= 0 && r >= 0) empty[l][r] = false;
  }
  return { loads, reserves, empty };
}

/** Every rectangle of empty cells that cannot be widened on any side. */
function listMaximal({ empty }: Grid): readonly Rectangle[] {
  const rows = empty.length;
  const columns = empty[0].length;
  const isEmptyRow = (l: number, r0: number, r1: number) => l >= 0 && l < rows && empty[l].slice(r0, r1).every(Boolean);
  const found: Rectangle[] = [];
  for (let l0 = 0; l0 < rows; l0++) {
    const run = empty[l0].map(() => true);
    for (let l1 = l0 + 1; l1 <= rows; l1++) {
      for (let r = 0; r < columns; r++) run[r] &&= empty[l1 - 1][r];
      for (let r0 = 0; r0 < columns; r0++) {
        if (!run[r0] || (r0 > 0 && run[r0 - 1])) continue;
        const end = run.indexOf(false, r0);
        const r1 = end < 0 ? columns : end;
        if (!isEmptyRow(l0 - 1, r0, r1) && !isEmptyRow(l1, r0, r1)) found.push({ l0, l1, r0, r1 });
      }
    }
  }
  return found;
}

/** Share of the grid's area in a rectangle, without cells that are covered already. */
function areaOf(
  { loads, reserves }: Grid,
  { l0, l1, r0, r1 }: Rectangle,
  covered: readonly (readonly boolean[])[] | null,
): number {
  let area = 0;
  for (let l = l0; l < l1; l++) {
    for (let r = r0; r < r1; r++) {
      if (!covered?.[l][r]) area += (loads[l + 1] - loads[l]) * (reserves[r + 1] - reserves[r]);
    }
  }
  return area / ((MAPPED_LOAD.to - MAPPED_LOAD.from) * (MAPPED_RESERVE.to - MAPPED_RESERVE.from));
}

/** Whether the claim may go on beyond the grid: no point lies there. */
function reachBeyond({ load, reserve }: Pick<EmptyRegion, 'load' | 'reserve'>, points: readonly LoadAndReserve[]) {
  const isWithin = (value: number, [low, high]: readonly [number, number], last: number) =>
    value >= low && (value < high || (high === last && value === last));
  const beyondReserve = points.some(
    (point) => isWithin(point.load, load, MAPPED_LOAD.to) && point.reserve > MAPPED_RESERVE.to,
  );
  const anyMore = reserve[1] === MAPPED_RESERVE.to && !beyondReserve;
  // A claim without an end in reserve must hold below the grid's loads too.
  const belowLoad = points.some(
    (point) =>
      point.load < MAPPED_LOAD.from &&
      (anyMore ? point.reserve >= reserve[0] : isWithin(point.reserve, reserve, MAPPED_RESERVE.to)),
  );
  return { anyLighter: load[0] === MAPPED_LOAD.from && !belowLoad, anyMore };
}
