/**
 * Calibration over truths: what the site shows was measured with the present truths and cells, the flexible
 * curve keeps its promise in every cell that it is held to, and the engine still gives what was stored.
 */
import { describe, expect, it } from 'vitest';
import { SEED } from '../../scripts/measure/calibration.ts';
import { calibrateCell, SHAPE_TABLES } from '../../scripts/measure/shapeCalibration.ts';
import { CELLS, FEWEST_CELLS, FURTHER_CELLS, seedOf } from '../../scripts/measure/shapeCells.ts';
import { type CoverageCell, PROMISE } from '../../src/figures/coverageCells.ts';
import type { Cell } from '../../src/model/coverage.ts';
import { ALL_TRUTHS, trueTargetOf } from '../../src/model/truths.ts';
import { measured } from '../../src/site/calibration.ts';

const { cells, fewest, further } = measured.shapes;
const all: readonly CoverageCell[] = [...cells, ...fewest, ...further];
const nameCell = ({ truth, studies, layout }: Cell) => ({ truth, studies, layout });

describe('the truths of data/calibration.json', () => {
  it('were measured with the present cells and truths (else: npm run calibrate)', () => {
    expect(cells.map(nameCell)).toEqual(CELLS);
    expect(fewest.map(nameCell)).toEqual(FEWEST_CELLS);
    expect(further.map(nameCell)).toEqual(FURTHER_CELLS);
    expect(SHAPE_TABLES).toBeGreaterThanOrEqual(2000);
    for (const { truth, trueTarget, tables } of all) {
      const target = trueTargetOf(ALL_TRUTHS[truth], measured.keptShare);
      expect(trueTarget).toBe(Number.isFinite(target) ? target : null);
      expect(tables).toBe(SHAPE_TABLES);
    }
  });

  it('have a seed of their own in every cell', () => {
    const seeds = [...CELLS, ...FEWEST_CELLS, ...FURTHER_CELLS].map((cell) => seedOf(cell, SEED));
    expect(new Set(seeds).size).toBe(seeds.length);
    expect(seeds.length).toBeGreaterThan(70);
  });

  it('count every table once: an interval that was given, or a refusal by its reason', () => {
    for (const { tables, shapes } of all) {
      for (const { given, refused } of Object.values(shapes)) {
        expect(given + refused.fit + refused.growth + refused.noDifference).toBe(tables);
      }
    }
  });

  it.each(cells)('$truth, $studies studies, reserves $layout: the flexible curve holds 90 to 99 %', ({ shapes }) => {
    expect(shapes.flexible.held).toBeGreaterThanOrEqual(PROMISE.least);
    expect(shapes.flexible.held).toBeLessThanOrEqual(PROMISE.most);
  });

  it('are held in 93 % or more on average by the flexible curve, and by the line only where they are lines', () => {
    const mean = cells.reduce((sum, { shapes }) => sum + (shapes.flexible.held ?? Number.NaN), 0) / cells.length;
    expect(mean).toBeGreaterThanOrEqual(PROMISE.average);
    for (const { truth, studies, layout, shapes } of cells) {
      const { held } = shapes.line;
      if (truth === 'line' || truth === 'shallow line') expect(held).toBeGreaterThanOrEqual(PROMISE.least);
      else if (studies === 30 && layout === 'spread') expect(held).toBeLessThan(0.05);
    }
  });
});

describe('the engine now', () => {
  const TABLES = 100;
  it.each<Cell>([
    { truth: 'saturating', studies: 8, layout: 'near' },
    { truth: 'plateau', studies: 8, layout: 'spread' },
    { truth: 'parabola', studies: 15, layout: 'spread' },
    { truth: 'log', studies: 15, layout: 'near' },
  ])('gives what is stored, within four errors of 100 new tables: $truth, $studies studies, $layout', (cell) => {
    const again = calibrateCell(cell, TABLES, seedOf(cell, SEED + 1));
    const stored = cells.find(
      ({ truth, studies, layout }) => truth === cell.truth && studies === cell.studies && layout === cell.layout,
    );
    for (const shape of ['flexible', 'line'] as const) {
      const held = stored?.shapes[shape].held ?? Number.NaN;
      // Where nearly every table or none holds it, one in a hundred is the least that can be told.
      const error = Math.max(0.01, Math.sqrt((held * (1 - held)) / TABLES));
      expect(Math.abs((again.shapes[shape].held ?? Number.NaN) - held)).toBeLessThan(4 * error);
    }
    expect(again.shapes.flexible.given).toBeGreaterThan(0.9 * TABLES);
  });

  it('gives the same for the same seed', () => {
    const cell = { truth: 'log', studies: 8, layout: 'spread' } as const;
    expect(calibrateCell(cell, 10, 1)).toEqual(calibrateCell(cell, 10, 1));
  });
});
