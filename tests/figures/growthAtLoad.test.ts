/** The figure of the calculator: the curve of the fit that answers, at the load asked about, with what is advised. */
import { describe, expect, it } from 'vitest';
import { growthAtLoad } from '../../src/figures/growthAtLoad.ts';
import { bandOf } from '../../src/model/bands.ts';
import { analyseInFull } from '../../src/model/full.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { fitNear, targetNear } from '../../src/practice/targetTable.ts';
import { drawPlot } from '../../src/site/drawFigure.ts';
import { arms } from '../practice/programme/shipped.ts';
import { failOnWarnings } from '../support/failOnWarnings.ts';
import { settleSvg } from '../support/settleSvg.ts';

failOnWarnings();
const analysis = analyseInFull(arms, settingsSchema.parse({}));
const draw = (load: number, advised: { least: number; most: number } | null = { least: 2, most: 3 }) => {
  const near = fitNear(analysis, load);
  if (!near) throw new Error('expected a fit');
  return growthAtLoad(analysis, near, { load, target: targetNear(analysis, load).target, advised });
};

describe('growth at the load of a set', () => {
  it('is drawn as before', async () => {
    await expect(settleSvg(drawPlot(draw(80)))).toMatchFileSnapshot('growth-at-load.svg');
  });

  it('away from the split is the curve of the band', () => {
    const { curvePoints } = bandOf(analysis, 'heavy');
    for (const [reserve, growth, low, high] of draw(85).table.rows) {
      const point = curvePoints.find((one) => Math.abs(one.reserve - Number(reserve)) < 1e-9);
      if (!point) throw new Error(`expected a point at ${reserve}`);
      const shown = [point.estimate, point.ciLow, point.ciHigh].map((value) => (100 * Math.expm1(value)).toFixed(1));
      expect([growth, low, high]).toEqual(shown);
    }
  });

  it('near the split moves with the load', () => {
    const growthAtFive = (load: number) => Number(draw(load).table.rows[5][1]);
    expect(growthAtFive(64)).not.toBe(growthAtFive(56));
    expect(draw(64).caption).toMatch(/read from the fit of all loads\. /u);
  });

  it('says what is advised, or that nothing is', () => {
    expect(draw(80).caption).toMatch(
      /Advised: 2 to 3 in reserve, shaded\. Target \d+\.\d \(.*\), the bar at the foot\.$/u,
    );
    expect(draw(80, null).caption).toMatch(/No number is advised\./u);
    expect(drawPlot(draw(80, { least: 2, most: 2 }))).toContain('advised 2');
  });
});
