/**
 * What one more study would do to an interval, over the evidence map: cells of which the same can be said as one tile,
 * and what a tile looks like.
 */
import { loadLines, MAPPED_RESERVE } from '../model/emptyRegions.ts';
import { bandOfLoad } from '../model/loads.ts';
import type { ExpectedTarget } from '../model/plan/expectedTarget.ts';
import type { CellGain, MapGains } from '../model/plan/mapGains.ts';
import type { BandName } from '../model/result.ts';

/** Cells of one band and reserve, next to one another in load. A band of which nothing can be said is one tile. */
export interface GainTile extends CellGain {
  readonly band: BandName;
  /** The target today. */
  readonly before: ExpectedTarget;
}

/**
 * Repetitions of narrowing from which each shade begins, the palest first: half of a tenth, in which intervals are
 * told, since less is not seen in one; each next begins at twice the one before.
 */
export const SHADES_FROM = [0.05, 0.1, 0.2, 0.4, 0.8] as const;

/** How a tile looks: one of the shades from 1 on; `opens` where the interval has no width today and would have one. */
export type TileLook = 1 | 2 | 3 | 4 | 5 | 'none' | 'wider' | 'opens' | 'unsaid';

/** Digits that a narrowing and the ends expected are told with: one more than targets, since they are compared. */
export const GAIN_DIGITS = 2;

/** By the narrowing as it is told, so that shade, legend and number are of one another. */
export function lookOf({ narrowing, before, after }: Pick<GainTile, 'narrowing' | 'before' | 'after'>): TileLook {
  if (narrowing === null) return before.width === null && after?.width != null ? 'opens' : 'unsaid';
  const told = Number(narrowing.toFixed(GAIN_DIGITS));
  if (told <= -SHADES_FROM[0]) return 'wider';
  const shade = SHADES_FROM.filter((from) => told >= from).length;
  return shade === 0 ? 'none' : (shade as 1 | 2 | 3 | 4 | 5);
}

/** @param split per cent of 1RM; null where loads are not told apart */
export function tileGains({ band, before, cells, reason }: MapGains, split: number | null): readonly GainTile[] {
  if (cells.length === 0) {
    const lines = loadLines(split);
    const inside = lines.slice(1).flatMap((high, l) => (bandOfLoad((lines[l] + high) / 2, split) === band ? [l] : []));
    const load = [lines[inside[0] ?? 0], lines[(inside.at(-1) ?? -1) + 1]] as const;
    const reserve = [MAPPED_RESERVE.from, MAPPED_RESERVE.to] as const;
    return inside.length === 0
      ? []
      : [{ band, before, load, reserve, after: null, narrowing: null, share: null, reason }];
  }
  const tiles: GainTile[] = [];
  for (const cell of [...cells].sort((a, b) => a.reserve[0] - b.reserve[0] || a.load[0] - b.load[0])) {
    const last = tiles.at(-1);
    if (last && last.reserve[0] === cell.reserve[0] && isSame(last, cell))
      tiles[tiles.length - 1] = { ...last, load: [last.load[0], cell.load[1]] };
    else tiles.push({ band, before, ...cell });
  }
  return tiles;
}

function isSame(a: CellGain, b: CellGain): boolean {
  return a.narrowing === b.narrowing && a.reason === b.reason && JSON.stringify(a.after) === JSON.stringify(b.after);
}
