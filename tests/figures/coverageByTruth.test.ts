/** Which intervals keep their promise: drawn as shipped, and words that follow the numbers. */
import { describe, expect, it } from 'vitest';
import { coverageByTruth } from '../../src/figures/coverageByTruth.ts';
import type { CoverageCell } from '../../src/figures/coverageCells.ts';
import type { CurveCoverage } from '../../src/model/coverage.ts';
import { calibration, measured } from '../../src/site/calibration.ts';
import { drawPlot } from '../../src/site/drawFigure.ts';
import { failOnWarnings } from '../support/failOnWarnings.ts';
import { settleSvg } from '../support/settleSvg.ts';

failOnWarnings();

/** A curve's coverage with 100 tables, of which some were refused. */
const coverage = (held: number | null, medianWidth: number, given = 100): CurveCoverage => ({
  given,
  held,
  heldError: held === null ? null : 0.01,
  refused: { fit: 0, growth: 0, noDifference: 100 - given },
  withoutUpperEnd: 0.25,
  medianWidth,
  medianBias: -0.5,
});

const cell = (studies: number, flexible: CurveCoverage, line: CurveCoverage): CoverageCell => ({
  truth: 'log',
  studies,
  layout: 'spread',
  trueTarget: 0.38,
  tables: 100,
  shapes: { flexible, line },
});

describe('coverage by truth', () => {
  it('draws the shipped calibration as before', async () => {
    await expect(settleSvg(drawPlot(calibration.byTruth, 340))).toMatchFileSnapshot('coverage-by-truth.svg');
    await expect(settleSvg(drawPlot(calibration.byFurtherTruth, 640))).toMatchFileSnapshot(
      'coverage-by-further-truth.svg',
    );
  });

  it('has a mark and a line of the table for every cell and curve that gave intervals', () => {
    const cells = [...measured.shapes.cells, ...measured.shapes.fewest];
    const svg = drawPlot(calibration.byTruth);
    expect(svg.match(/<circle/gu)).toHaveLength(cells.length);
    expect(calibration.byTruth.table.rows).toHaveLength(2 * cells.length);
    for (const { columns, rows } of [calibration.byTruth.table, calibration.byFurtherTruth.table]) {
      for (const row of rows) expect(row).toHaveLength(columns.length);
    }
  });

  it('says the promise kept where it is, the widths, and that a wrong shape is not mended', () => {
    const cells = [
      cell(8, coverage(0.95, 4), coverage(0.3, 1.5)),
      cell(15, coverage(0.96, 3), coverage(0.1, 1)),
      cell(30, coverage(0.93, 2, 80), coverage(0, 0.5)),
    ];
    const { title, caption, alternative } = coverageByTruth(cells, 0.95);
    expect(title).toBe(
      'Over 1 truth the flexible curve’s 95\u00a0% interval held the target in 93 to 96\u00a0% of tables, the straight line’s in 0 to 30\u00a0%',
    );
    expect(caption).toContain('Nowhere here does the flexible curve’s interval hold it in fewer than 90\u00a0%.');
    expect(caption).toContain('around log the line’s interval narrows about a wrong place');
    expect(caption).toContain('with 15 studies a typical interval spans 3.0 repetitions, the line’s 1.0.');
    expect(caption).toContain('0\u00a0% with 8 studies, 0\u00a0% with 15 studies and 20\u00a0% with 30 studies');
    expect(alternative).toContain(title);
  });

  it('names the truths around which the promise is broken, and blames no line that holds', () => {
    const cells = [
      cell(15, coverage(0.95, 3), coverage(0.95, 1)),
      cell(30, coverage(0.701, 2), coverage(0.95, 1)),
      { ...cell(30, coverage(null, 0, 0), coverage(null, 0, 0)), truth: 'no loss' as const, trueTarget: null },
    ];
    const { caption, table } = coverageByTruth(cells, 0.95);
    expect(caption).toContain(
      'does not keep its promise, and holds the truth in fewer than 90\u00a0%, around “log” (70.1\u00a0% with 30 studies).',
    );
    expect(caption).not.toContain('More studies do not mend');
    expect(table.rows.at(-1)?.slice(0, 7)).toEqual([
      'no loss',
      'every reserve',
      30,
      '1 to 10',
      'straight line',
      'none',
      'none',
    ]);
    expect(drawPlot(coverageByTruth(cells, 0.95)).match(/<circle/gu)).toHaveLength(2);
  });
});
