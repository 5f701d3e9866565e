/** What stands beside the curve of growth: what a move left, where a new study would lie; and where there is nothing. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { writeEquation } from '../../src/figures/equation.ts';
import { formatSlope } from '../../src/figures/format.ts';
import { growthByReserve } from '../../src/figures/growthByReserve.ts';
import { analyse } from '../../src/model/analyse.ts';
import { bandOf } from '../../src/model/bands.ts';
import { type SettingsInput, settingsSchema } from '../../src/model/settings.ts';
import { drawPlot } from '../../src/site/drawFigure.ts';
import { coefficientCells } from '../../src/ui/coefficientWords.ts';
import { failOnWarnings } from '../support/failOnWarnings.ts';
import { settleSvg } from '../support/settleSvg.ts';

const { arms } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const fit = (changes: SettingsInput = {}, rows = arms) => analyse(rows, settingsSchema.parse(changes));
const start = fit();
const line = fit({ curve: 'line' });
const dashes = (svg: string, of: string) => svg.split(`stroke-dasharray="${of}"`).length - 1;

failOnWarnings();

describe('what a move left', () => {
  it('is drawn pale and dashed under the curve, and its numbers stand in the table', async () => {
    const figure = growthByReserve(line, { band: 'heavy', former: start });
    await expect(settleSvg(drawPlot(figure))).toMatchFileSnapshot('growth-heavy-moved.svg');
    expect(figure.caption).toMatch(/Pale and dashed: before the move, target 3\.2 \(1\.6 to 4\.2\)\.$/u);
    const [now, before] = ['now', 'before, heavy loads'].map((name) =>
      figure.table.rows.filter(([one]) => one === name),
    );
    expect([now.length, before.length]).toEqual([11, 11]);
    expect(before.map((row) => row.slice(1))).toEqual(growthByReserve(start, { band: 'heavy' }).table.rows);
  });

  it('of two bands is both of them under one', () => {
    const figure = growthByReserve(fit({ split: null }), { band: 'all', former: start });
    expect(dashes(drawPlot(figure), '6,4')).toBe(2);
    expect(figure.caption).toMatch(/before the move \(light loads and heavy loads\)\.$/u);
  });

  it('in another unit is not drawn, and said not to be', () => {
    const figure = growthByReserve(fit({ metric: 'standardised' }), { band: 'heavy', former: start });
    expect(dashes(drawPlot(figure), '6,4')).toBe(0);
    expect(figure.caption).toMatch(/of another outcome or unit, and is not drawn\.$/u);
  });

  it('without a fit is said', () => {
    const none = fit({ include: { withoutStudies: arms.map(({ study }) => study) } });
    expect(growthByReserve(start, { band: 'heavy', former: none }).caption).toMatch(/Before, there was no curve\.$/u);
    const emptied = growthByReserve(none, { band: 'heavy', former: start });
    expect(dashes(drawPlot(emptied), '6,4')).toBe(1);
    expect(emptied.title).toBe('Heavy loads: no curve could be fitted');
  });

  it('shares the axes, so that neither curve is cut off', () => {
    const alone = growthByReserve(start, { band: 'light' }).plot.y?.domain as number[];
    const wide = fit({ confidence: 0.999 });
    const shared = growthByReserve(start, { band: 'light', former: wide }).plot.y?.domain as number[];
    expect(shared[1]).toBeGreaterThan(alone[1]);
    expect(shared).toEqual(growthByReserve(start, { band: 'light', beside: [wide] }).plot.y?.domain);
  });
});

describe('where a new study would lie', () => {
  it('is dotted about the band, with what each says and what it is for', async () => {
    const figure = growthByReserve(start, { band: 'light', showsNewStudy: true });
    await expect(settleSvg(drawPlot(figure))).toMatchFileSnapshot('growth-light-new-study.svg');
    expect(figure.caption).toMatch(
      /shaded band is for the average .* choose a reserve .* dotted lines .* one new study/u,
    );
    const [, growth, low, high, from, to] = figure.table.rows[0].map(Number);
    const { curvePoints } = bandOf(start, 'light');
    expect(low).toBeLessThan(growth);
    expect(growth).toBeLessThan(high);
    expect(from).toBeLessThan(low);
    expect(to).toBeGreaterThan(high);
    expect(from).toBeCloseTo(100 * Math.expm1(curvePoints[0].predictionLow ?? Number.NaN), 0);
  });

  it('is not drawn by a weighting that estimates no spread between studies, and said not to be', () => {
    const figure = growthByReserve(fit({ weighting: 'equal' }), { band: 'light', showsNewStudy: true });
    expect(dashes(drawPlot(figure), '1,3')).toBe(0);
    expect(figure.caption).toMatch(/estimates no spread between studies, so that nothing can be said of a new one/u);
  });
});

describe('with nothing to draw', () => {
  it('says in the picture that there is no fit and why, without axes about 0', () => {
    const figure = growthByReserve(fit({ include: { withoutStudies: arms.map(({ study }) => study) } }), {
      band: 'heavy',
    });
    const svg = drawPlot(figure);
    expect(svg).not.toMatch(/−0\.|>0\.0/u);
    expect(svg.replace(/<[^>]+>/gu, ' ').replace(/\s+/gu, ' ')).toContain('Nothing to draw:');
    expect(figure.caption).toMatch(/^Not fitted: /u);
    expect(figure.table.rows).toEqual([]);
  });
});

describe('coefficients', () => {
  it.each(['log-ratio', 'standardised'] as const)('are in one unit in the table and in the equation (%s)', (metric) => {
    const analysis = fit({ metric });
    const band = bandOf(analysis, 'heavy');
    const [intercept] = band.coefficients;
    const shown = formatSlope(intercept.estimate, metric);
    expect(coefficientCells(intercept, metric)[0]).toBe(shown);
    expect(writeEquation(band, analysis)).toContain(`= ${shown} `);
  });
});
