/**
 * The evidence map over what one more study would do: shades, lines and signs by the numbers, what is said of them, and
 * pictures as before. The sub-tables are parts of the shipped one in which intervals widen, or have no upper end.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { evidenceMap } from '../../src/figures/evidenceMap.ts';
import { gainMap } from '../../src/figures/gainMap.ts';
import { type GainTile, lookOf, SHADES_FROM, tileGains } from '../../src/figures/gainTiles.ts';
import { listLegend, stateGains, stateUnsaid, tellNarrowing } from '../../src/figures/gainWords.ts';
import { viewGains } from '../../src/islands/analysis/gainsView.ts';
import { analyse } from '../../src/model/analyse.ts';
import { mapEvidence } from '../../src/model/evidenceMap.ts';
import { mapGains } from '../../src/model/plan/mapGains.ts';
import { openPlanning } from '../../src/model/plan/planningBase.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { drawPlot } from '../../src/site/drawFigure.ts';
import { failOnWarnings } from '../support/failOnWarnings.ts';
import { settleSvg } from '../support/settleSvg.ts';

const { arms } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const published = readArms(readFileSync(new URL('../../data/published/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const between = (from: string, to: string) => arms.filter(({ study }) => study[0] >= from && study[0] <= to);

function look(rows: typeof arms, people: number | null = null, settings = settingsSchema.parse({})) {
  const planning = openPlanning(rows, settings);
  const steps = viewGains(planning, people);
  let step = steps.next();
  while (!step.done) step = steps.next();
  const map = mapEvidence(rows, analyse(rows, settings));
  return { planning, map, ...step.value, figure: gainMap(map, step.value.people, step.value.tiles) };
}
const shipped = look(arms);

failOnWarnings();

describe('the tiles', () => {
  it('say of every cell of the grid what the model says of it', () => {
    for (const { name } of shipped.planning.bands) {
      const { cells } = mapGains(shipped.planning, name, shipped.people);
      const tiles = shipped.tiles.filter(({ band }) => band === name);
      expect(tiles).toHaveLength(10);
      for (const { load, reserve, narrowing, after } of cells) {
        const over = tiles.filter(
          (tile) => tile.load[0] <= load[0] && tile.load[1] >= load[1] && tile.reserve[0] === reserve[0],
        );
        expect(over).toHaveLength(1);
        expect(over[0]).toMatchObject({ narrowing, after });
      }
    }
  });

  it('where load is adjusted for tell the loads apart', () => {
    const settings = settingsSchema.parse({ adjust: ['load'] });
    const gains = mapGains(openPlanning(arms, settings), 'light', 50);
    const tiles = tileGains(gains, settings.split);
    expect(tiles.length).toBeGreaterThan(10);
    const area = ({ load, reserve }: Pick<GainTile, 'load' | 'reserve'>) =>
      (load[1] - load[0]) * (reserve[1] - reserve[0]);
    expect(tiles.reduce((sum, tile) => sum + area(tile), 0)).toBe(40 * 10);
  });

  it('are shaded from half of a tenth on, twice as much a step, and not where it is less, wider or without a width', () => {
    const before = { ...shipped.tiles[0].before };
    const at = (narrowing: number | null, after = before) => lookOf({ narrowing, before, after });
    expect(SHADES_FROM.map((from) => at(from))).toEqual([1, 2, 3, 4, 5]);
    expect([0.044, 0, -0.044, -0.05, -3].map((narrowing) => at(narrowing))).toEqual([
      'none',
      'none',
      'none',
      'wider',
      'wider',
    ]);
    // A number that is told as 0.05 has the shade that the legend gives 0.05.
    expect([0.046, 0.098, 0.198, 0.796, -0.046].map((narrowing) => at(narrowing))).toEqual([1, 2, 3, 5, 'wider']);
    const endless = { ...before, width: null, high: null, widthMissing: 'no-upper-end' } as const;
    expect(at(null, endless)).toBe('unsaid');
    expect(lookOf({ narrowing: null, before: endless, after: before })).toBe('opens');
    expect(lookOf({ narrowing: null, before: endless, after: null })).toBe('unsaid');
  });
});

describe('the map with them', () => {
  it('draws the shipped table as before', async () => {
    await expect(settleSvg(drawPlot(shipped.figure))).toMatchFileSnapshot('gain-map.svg');
  });

  it('keeps every mark and region of the map, and its words', () => {
    const plain = evidenceMap(shipped.map);
    const marks = (svg: string) => svg.match(/<circle|stroke-dasharray/gu)?.length;
    expect(marks(drawPlot(shipped.figure))).toBe(marks(drawPlot(plain)));
    expect(shipped.figure.title).toBe(plain.title);
    expect(shipped.figure.caption.startsWith(plain.caption)).toBe(true);
    expect(shipped.figure.alternative).toContain(stateGains(shipped.people, shipped.tiles));
  });

  it('has in its table each occupied cell as the map has it, every cell once, and the numbers of its tile', () => {
    const { figure, map, tiles } = shipped;
    const plain = evidenceMap(map).table.rows.map((row) => row.join());
    const rows = figure.table.rows.map((row) => row.slice(0, 5).join());
    expect(rows.filter((row) => plain.includes(row))).toEqual(plain);
    const span = (words: string | number) => {
      const [low, high] = String(words).match(/\d+/gu) ?? [];
      return Number(high) - Number(low);
    };
    // 80 per cent of 1RM by 10 repetitions.
    expect(figure.table.rows.reduce((sum, [load, reserve]) => sum + span(load) * span(reserve), 0)).toBe(800);
    for (const [load, reserve, , , , narrower, interval] of figure.table.rows) {
      const tile = tiles.find(
        (one) =>
          one.load[0] <= Number.parseInt(String(load), 10) &&
          one.load[1] > Number.parseInt(String(load), 10) &&
          one.reserve[0] === Number.parseInt(String(reserve), 10),
      );
      expect(narrower).toBe(tile?.narrowing?.toFixed(2).replace('-0.00', '0.00').replace('-', '−'));
      expect(interval).toBe(`${tile?.after?.low?.toFixed(2)} to ${tile?.after?.high?.toFixed(2)}`);
    }
  });

  it.each([10, 50, 200])('shades as the legend says of the number in its table, with %d people', (people) => {
    for (const tile of look(arms, people).tiles) {
      const told = Number(tellNarrowing(tile).replace('−', '-'));
      const one = lookOf(tile);
      const shade = SHADES_FROM.filter((from) => told >= from).length;
      expect(one, `${tile.narrowing} told as ${told}`).toBe(shade > 0 ? shade : told <= -0.05 ? 'wider' : 'none');
    }
  });

  it('shades more with more people, and nowhere less', () => {
    const shade = (tile: GainTile) => Number(lookOf(tile)) || 0;
    const more = look(arms, 200).tiles.map(shade);
    const few = look(arms, 10).tiles.map(shade);
    expect(more.every((one, i) => one >= few[i])).toBe(true);
    expect(more).not.toEqual(few);
  });
});

describe('intervals that would widen or have no end', () => {
  const odd = look(between('A', 'F'), 50);
  const opening = look(between('P', 'S'), 50);

  it('have lines or signs and no shade', async () => {
    const looks = odd.tiles.map(lookOf);
    expect(looks).toContain('wider');
    expect(looks.slice(0, 10)).toEqual(Array(10).fill('unsaid'));
    const svg = drawPlot(odd.figure);
    expect(svg.match(/>\?</gu)).toHaveLength(looks.filter((one) => one === 'unsaid').length);
    const shades = looks.filter((one) => typeof one === 'number');
    expect(svg.match(/fill="var\(--gain-\d\)"/gu)).toHaveLength(shades.length);
    await expect(settleSvg(svg)).toMatchFileSnapshot('gain-map-odd.svg');
    const opens = opening.tiles.map(lookOf).filter((one) => one === 'opens').length;
    expect(opens).toBeGreaterThan(0);
    expect(drawPlot(opening.figure).match(/>\+</gu)).toHaveLength(opens);
  });

  it('are drawn by browsers, which know no scheme of colours, where no tile at all has a shade', () => {
    const unshaded = odd.tiles.filter(({ band }) => band === 'light');
    expect(unshaded.map(lookOf)).toEqual(Array(10).fill('unsaid'));
    const figure = gainMap(odd.map, 50, unshaded);
    expect(drawPlot(figure).match(/>\?</gu)).toHaveLength(10);
    expect(figure.caption).toMatch(
      /No cell is shaded: nowhere can the interval .* narrower by 0\.05 repetitions or more/u,
    );
    expect(figure.caption).not.toMatch(/Shaded by/u);
    expect(odd.figure.caption).toMatch(/Shaded by/u);
  });

  it('are in the legend where they are on the map', () => {
    const others = (tiles: readonly GainTile[]) =>
      listLegend(tiles).flatMap(({ look: one, words }) => (typeof one === 'number' || one === 'none' ? [] : [words]));
    expect(others(shipped.tiles)).toEqual([]);
    expect(others(odd.tiles)).toEqual(['wider by 0.05 or more', 'no narrowing can be told']);
    expect(others(opening.tiles)[0]).toBe('an interval with an upper end, where there is none today');
  });

  it('are told with what is most', () => {
    expect(stateGains(50, odd.tiles)).toMatch(
      /^With 50 people: light loads, no upper end today, nor with it; heavy loads, today 0\.12 to 4\.83, most at 4 in reserve: about \d\.\d\d to \d\.\d\d, \d\.\d\d narrower\.$/u,
    );
    expect(stateGains(50, opening.tiles)).toMatch(
      /heavy loads, no upper end today, and an interval with an upper end where the other arm leaves 6 or 7 in reserve\.$/u,
    );
    // Where loads are told apart, a reserve is named once.
    expect(stateGains(50, [...opening.tiles, ...opening.tiles])).toBe(stateGains(50, opening.tiles));
    const flat = shipped.tiles.map((tile) => ({ ...tile, narrowing: 0.04 }));
    expect(stateGains(50, flat)).toMatch(/light loads, today 0\.20 to 1\.11, nowhere narrower by 0\.05 or more;/u);
  });
});

describe('a table without a curve', () => {
  const { tiles, figure, map } = look(published.arms);

  it('is told why, and has one tile for each band of loads', () => {
    expect(tiles.map(({ load, reserve, band }) => [band, ...load, ...reserve])).toEqual([
      ['light', 20, 60, 0, 10],
      ['heavy', 60, 100, 0, 10],
    ]);
    expect(stateUnsaid(tiles)).toBe(
      'The map is not shaded: no curve is fitted today, so that no interval can be foreseen.',
    );
    expect(stateUnsaid(shipped.tiles)).toBeNull();
    const [light, heavy] = tiles;
    expect(stateUnsaid([light, { ...heavy, reason: 'no row has a standard deviation' }])).toBe(
      'The map is not shaded: light loads, no curve is fitted today, so that no interval can be foreseen; heavy loads, no row has a standard deviation.',
    );
  });

  it('keeps its cells, whatever can be told of them', () => {
    expect(figure.table.rows.filter(([, , count]) => count !== 0)).toHaveLength(map.cells.length);
    expect(new Set(figure.table.rows.map((row) => row.slice(5).join()))).toEqual(new Set(['cannot be told,none']));
  });
});
