/** Figures of drawn tables: as they are drawn, mark for mark what the answers say, and words with their numbers. */
import { describe, expect, it } from 'vitest';
import { pointOut } from '../../src/figures/pointOut.ts';
import { drawnIntervals } from '../../src/figures/simulation/drawnIntervals.ts';
import { drawnTable } from '../../src/figures/simulation/drawnTable.ts';
import { runningCoverage } from '../../src/figures/simulation/runningCoverage.ts';
import { stateHeld, stateRefused } from '../../src/figures/simulation/words.ts';
import { summariseCoverage, type TableAnswer } from '../../src/model/coverage.ts';
import { describeFirst } from '../../src/model/drawnTable.ts';
import { inferShare } from '../../src/numerics/wilson.ts';
import { drawPlot } from '../../src/site/drawFigure.ts';
import { failOnWarnings } from '../support/failOnWarnings.ts';
import { settleSvg } from '../support/settleSvg.ts';

failOnWarnings();

const answer = (part: Partial<TableAnswer>): TableAnswer => ({
  furthest: 8,
  point: 2,
  low: 1,
  high: 4,
  refusal: null,
  holds: true,
  ...part,
});
const none = { point: null, low: null, high: null, holds: null } as const;
const held = answer({});
const missed = answer({ low: 3, high: 5, holds: false });
const open = answer({ low: 3, high: null, holds: false });
const refused = answer({ ...none, refusal: 'growth' });
const answers = [held, missed, held, open, refused, held];
const options = { curve: 'line', place: 0, tables: 6, trueTarget: 2.5 } as const;
const count = (svg: string, element: RegExp) => svg.match(element)?.length ?? 0;

describe('the intervals of drawn tables', () => {
  const figure = drawnIntervals(answers, options);

  it('are drawn as before', async () => {
    await expect(settleSvg(drawPlot(figure))).toMatchFileSnapshot('drawn-intervals.svg');
  });

  it('say how many hold the truth, and tell refusals apart', () => {
    expect(figure.title).toBe('Straight line: 3 of 5 intervals hold the truth: 60\u00a0% (23 to 88\u00a0%)');
    expect(figure.caption).toContain(
      '1 table gave no interval (1 growth at reserve 0 not told from nothing) and counts neither way. It has a ring at the left.',
    );
    expect(figure.caption).toContain('the true target, 2.50 in reserve');
    expect(figure.table.rows).toHaveLength(6);
    expect(figure.table.rows[3]).toEqual([4, '2.00', '3.00', 'no upper end', 'no']);
    expect(figure.table.rows[4]).toEqual([5, 'none', 'none', 'none', 'growth at reserve 0 not told from nothing']);
  });

  it('are said to span something where most of them have an end, and how the others count', () => {
    const captionOf = (list: readonly TableAnswer[]) =>
      drawnIntervals(list, { ...options, tables: list.length }).caption;
    expect(figure.caption).toContain(
      'A typical interval spans 3.0 repetitions. Lines that reach the right edge have no upper end; in that width they count up to the largest reserve of their table.',
    );
    expect(captionOf([open, open, held])).toContain(
      'A typical interval has no upper end. Lines that reach the right edge have no upper end.',
    );
    expect(captionOf([held, held])).not.toMatch(/no upper end/u);
    expect(captionOf([held, refused, refused])).toContain('They have a ring at the left.');
  });

  it('keep their places and their scales while tables come', () => {
    const some = drawnIntervals(answers.slice(0, 2), options);
    expect(some.plot.x).toEqual(figure.plot.x);
    expect(some.plot.y).toEqual(figure.plot.y);
    expect(some.plot.height).toBe(figure.plot.height);
    expect(some.caption).toMatch(/^2 of 6 tables drawn\./u);
    expect(some.table.rows).toEqual([]);
    expect(drawnIntervals([], options).title).toBe('Straight line: no table drawn yet');
    drawPlot(drawnIntervals([], options));
  });

  it('need no truth that can be drawn', () => {
    const without = drawnIntervals([open, held], { ...options, trueTarget: Number.POSITIVE_INFINITY });
    expect(without.caption).toContain('Every reserve keeps the share');
    expect(drawPlot(without)).not.toContain('truth ');
    expect(drawPlot(figure)).toContain('truth 2.50');
  });
});

describe('the running count', () => {
  const figure = runningCoverage(
    answers.map((one) => [one, held]),
    { curves: ['line', 'flexible'], tables: 6 },
  );

  it('is drawn as before', async () => {
    await expect(settleSvg(drawPlot(figure))).toMatchFileSnapshot('running-coverage.svg');
  });

  it('goes on to the last table, also where that gave none', () => {
    const list = [refused, ...Array<TableAnswer>(38).fill(held), refused].map((one) => [one]);
    const { rows } = runningCoverage(list, { curves: ['line'], tables: 40 }).table;
    expect(rows.map(([, table, given]) => [table, given])).toEqual([
      [20, 19],
      [40, 38],
    ]);
  });

  it('has the share and its interval after each table that gave one', () => {
    const { low, high } = inferShare(3, 5, 0.95);
    expect(figure.table.rows[0]).toEqual([
      'Straight line',
      6,
      5,
      3,
      '60.0',
      (100 * low).toFixed(1),
      (100 * high).toFixed(1),
    ]);
    expect(figure.table.rows[1].slice(0, 5)).toEqual(['Flexible curve', 6, 6, 6, '100.0']);
    drawPlot(runningCoverage([], { curves: ['line'], tables: 6 }));
    expect(runningCoverage([[refused]], { curves: ['line'], tables: 6 }).caption).toContain('no interval yet');
  });
});

describe('a drawn table', () => {
  const table = describeFirst({ truth: 'saturating', studies: 8, layout: 'near' }, ['line', 'flexible'], 1);

  it('is drawn as before, with both curves', async () => {
    await expect(settleSvg(drawPlot(drawnTable(table, 'fits')))).toMatchFileSnapshot('drawn-table.svg');
  });

  it('shows no more than is asked for', () => {
    const [curve, truth, rows, fits] = (['curve', 'truth', 'rows', 'fits'] as const).map((shown) =>
      drawnTable(table, shown),
    );
    expect(curve.alternative).not.toMatch(/0\.50/u);
    expect(drawPlot(curve)).not.toContain('truth 0.50');
    expect(truth.caption).toContain('Up to 0.50 in reserve it keeps 90\u00a0% of its growth at reserve 0.');
    expect(count(drawPlot(truth), /<circle/gu)).toBe(0);
    expect(count(drawPlot(rows), /<circle/gu)).toBe(table.rows.length);
    expect(rows.alternative).not.toMatch(/holds|misses/u);
    expect(fits.caption).toMatch(
      /Straight line, dashed: target 0\.\d\d \(0\.\d\d to \d\.\d\d\), which misses the truth\./u,
    );
  });

  it('says how many of its rows lie beyond the picture', () => {
    const far = describeFirst({ truth: 'line', studies: 60, layout: 'spread' }, [], 4);
    const beyond = far.rows.filter(({ effect }) => effect < Math.log(0.96) || effect > Math.log(1.18)).length;
    expect(beyond).toBeGreaterThan(0);
    expect(drawnTable(far, 'rows').caption).toContain(`with error, ${beyond} of them beyond the picture; larger`);
    expect(drawnTable(table, 'rows').caption).not.toMatch(/beyond/u);
  });

  it('of a truth that loses nothing has no place of the target', () => {
    const figure = drawnTable(describeFirst({ truth: 'no loss', studies: 8, layout: 'near' }, ['line'], 1), 'fits');
    expect(figure.caption).toContain('Every reserve keeps 90\u00a0% of its growth');
    drawPlot(figure);
  });
});

describe('words', () => {
  it('count one as one, and say where there is none', () => {
    const of = (list: readonly TableAnswer[]) => summariseCoverage(list, 2.5);
    expect(stateHeld(of([refused]))).toBe('no interval was given');
    expect(stateHeld(of([held, missed]))).toMatch(/^1 of 2 intervals holds the truth: 50\u00a0%/u);
    expect(stateRefused(of([held]))).toBe('');
    expect(stateRefused(of([refused, refused, answer({ ...none, refusal: 'fit' })]))).toBe(
      '3 tables gave no interval (1 no fit, 2 growth at reserve 0 not told from nothing) and count neither way.',
    );
  });
});

describe('a ring', () => {
  const figure = drawnIntervals(answers, options);
  it('is drawn at its place, and said to those who do not see it', () => {
    const ringed = pointOut(figure, [{ x: 3, y: 2, words: 'an interval that misses' }]);
    expect(ringed.alternative).toBe(`${figure.alternative} Ringed: an interval that misses.`);
    expect(count(drawPlot(ringed), /r="15"/gu)).toBe(2);
    expect(ringed.plot.marks?.length).toBe((figure.plot.marks?.length ?? 0) + 2);
    expect(pointOut(figure, [])).toBe(figure);
  });
});
