/**
 * The evidence map over what one more study would do: tiles shaded by how much narrower the interval of the target
 * would be expected to get. Where it would get wider, or nothing can be said, a tile has lines or a sign and no shade.
 */
import * as Plot from '@observablehq/plot';
import { cellOf, loadLines, reserveLines } from '../model/emptyRegions.ts';
import type { EvidenceMap, MapCell } from '../model/evidenceMap.ts';
import { CELL_COLUMNS, evidenceMap, tellCell } from './evidenceMap.ts';
import type { Figure, FigureTable } from './figure.ts';
import { type GainTile, lookOf } from './gainTiles.ts';
import { stateGains, stateShading, tellExpected, tellNarrowing } from './gainWords.ts';

/** Signs of tiles that have no width to be shaded by. */
export const TILE_SIGNS = { opens: '+', unsaid: '?' } as const;

/** Lines of a hatched tile: per cent of 1RM between them, and that they rise by over a repetition. */
const HATCH = { apart: 5, rise: 5 } as const;
/** Per cent of 1RM from the lower edge of a tile to its sign. */
const SIGN_ABOVE = 2.5;

/** @param people of the study */
export function gainMap(map: EvidenceMap, people: number, tiles: readonly GainTile[]): Figure {
  const figure = evidenceMap(map, {
    marks: [shadeMark(tiles), hatchMark(tiles), signMark(tiles)],
    caption: stateShading(people, tiles),
    table: tabulate(map, tiles),
  });
  return {
    ...figure,
    // Shades are named by the marks, also where no tile has one.
    plot: { ...figure.plot, color: { type: 'identity' } },
    alternative: `${figure.alternative} ${stateGains(people, tiles)}`,
  };
}

function shadeMark(tiles: readonly GainTile[]): Plot.Markish {
  const shaded = tiles.flatMap((tile) => {
    const look = lookOf(tile);
    return typeof look === 'number' ? [{ ...edgesOf(tile), narrowing: tile.narrowing, shade: look }] : [];
  });
  return Plot.rect(shaded, {
    x1: 'reserveFrom',
    x2: 'reserveTo',
    y1: 'loadFrom',
    y2: 'loadTo',
    fill: ({ shade }: (typeof shaded)[number]) => `var(--gain-${shade})`,
    // So that edges are seen where steps are small, as on paper.
    stroke: 'var(--gain-5)',
    strokeWidth: 0.75,
  });
}

function hatchMark(tiles: readonly GainTile[]): Plot.Markish {
  const lines = tiles.flatMap((tile) => (lookOf(tile) === 'wider' ? hatch(edgesOf(tile)) : []));
  return Plot.link(lines, { x1: 'x1', x2: 'x2', y1: 'y1', y2: 'y2', stroke: 'var(--quiet)', strokeWidth: 0.8 });
}

/** A sign a repetition, along the lower edge. */
function signMark(tiles: readonly GainTile[]): Plot.Markish {
  const signs = tiles.flatMap((tile) => {
    const look = lookOf(tile);
    if (look !== 'opens' && look !== 'unsaid') return [];
    const { reserveFrom, reserveTo, loadFrom } = edgesOf(tile);
    return Array.from({ length: reserveTo - reserveFrom }, (_, i) => ({
      reserve: reserveFrom + i + 0.5,
      load: loadFrom + SIGN_ABOVE,
      sign: TILE_SIGNS[look],
    }));
  });
  return Plot.text(signs, { x: 'reserve', y: 'load', text: 'sign', fill: 'var(--quiet)', fontWeight: 600 });
}

interface Edges {
  readonly reserveFrom: number;
  readonly reserveTo: number;
  readonly loadFrom: number;
  readonly loadTo: number;
}

function edgesOf({ reserve, load }: GainTile): Edges {
  return { reserveFrom: reserve[0], reserveTo: reserve[1], loadFrom: load[0], loadTo: load[1] };
}

/** Rising lines that end at the edges. */
function hatch({ reserveFrom, reserveTo, loadFrom, loadTo }: Edges) {
  const width = reserveTo - reserveFrom;
  const count = Math.ceil((loadTo - loadFrom + HATCH.rise * width) / HATCH.apart);
  return Array.from({ length: count }, (_, i) => {
    // Load of the line at the left edge.
    const start = loadTo - i * HATCH.apart;
    const reserveAt = (load: number) => reserveFrom + (load - start) / HATCH.rise;
    const [x1, x2] = [Math.max(reserveFrom, reserveAt(loadFrom)), Math.min(reserveTo, reserveAt(loadTo))];
    const loadAt = (reserve: number) => start + (reserve - reserveFrom) * HATCH.rise;
    return { x1, x2, y1: loadAt(x1), y2: loadAt(x2) };
  }).filter(({ x1, x2 }) => x1 < x2);
}

/** The map's cells with what is expected of them; empty cells of one tile beside one another are one row. */
function tabulate(map: EvidenceMap, tiles: readonly GainTile[]): FigureTable {
  const [loads, reserves] = [loadLines(map.split), reserveLines()];
  const occupied = new Map(map.cells.map((cell) => [placeOf(cell), cell]));
  const rows: { readonly cell: MapCell; readonly tile: GainTile }[] = [];
  for (const tile of tiles)
    for (let r = cellOf(reserves, tile.reserve[0]); reserves[r] < tile.reserve[1]; r++) {
      let isRun = false;
      for (let l = cellOf(loads, tile.load[0]); loads[l] < tile.load[1]; l++) {
        const here = { load: [loads[l], loads[l + 1]], reserve: [reserves[r], reserves[r + 1]] } as const;
        const found = occupied.get(placeOf(here));
        const last = rows.at(-1);
        if (!found && isRun && last) {
          const load = [last.cell.load[0], here.load[1]] as const;
          rows[rows.length - 1] = { tile, cell: { ...last.cell, load } };
        } else rows.push({ tile, cell: found ?? { ...here, arms: 0, people: 0, studies: 0 } });
        isRun = !found;
      }
    }
  rows.sort((a, b) => a.cell.load[0] - b.cell.load[0] || a.cell.reserve[0] - b.cell.reserve[0]);
  return {
    columns: [...CELL_COLUMNS, 'narrower by (repetitions)', 'interval expected (repetitions)'],
    rows: rows.map(({ cell, tile }) => [...tellCell(cell), tellNarrowing(tile), tellExpected(tile.after)]),
  };
}

function placeOf({ load, reserve }: Pick<MapCell, 'load' | 'reserve'>): string {
  return `${load[0]} ${reserve[0]}`;
}
