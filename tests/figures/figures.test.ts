/**
 * Figures: what their words say is what the analysis holds, and they draw without a warning. The
 * pictures are held as snapshots with numbers rounded to 3 decimals.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { NARROW_DRAWING } from '../../src/figures/drawingWidths.ts';
import { stateRobustness } from '../../src/figures/findings.ts';
import { formatNumber, formatP, formatRange } from '../../src/figures/format.ts';
import { growthByReserve } from '../../src/figures/growthByReserve.ts';
import { RESERVE_FRAME } from '../../src/figures/looks.ts';
import { stateBeyondFailure, stateStrength } from '../../src/figures/outcomeFindings.ts';
import { listPlotted } from '../../src/figures/plotted.ts';
import { recoveryByHours } from '../../src/figures/recoveryByHours.ts';
import { analyse } from '../../src/model/analyse.ts';
import { bandOf } from '../../src/model/bands.ts';
import { sweepChoices } from '../../src/model/checks/sweep.ts';
import { analyseInFull } from '../../src/model/full.ts';
import type { Analysis, Band, Target } from '../../src/model/result.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { writePercent } from '../../src/numerics/percent.ts';
import { drawPlot } from '../../src/site/drawFigure.ts';
import { failOnWarnings } from '../support/failOnWarnings.ts';
import { settleSvg } from '../support/settleSvg.ts';

const { arms } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const settings = settingsSchema.parse({});
const analysis = analyseInFull(arms, settings);
const steps = sweepChoices(arms, settings);
let step = steps.next();
while (!step.done) step = steps.next();
const sweep = step.value;

failOnWarnings();

describe('growth by reserve', () => {
  it.each(['light', 'heavy'] as const)('with %s loads draws the shipped analysis as before', async (band) => {
    await expect(settleSvg(drawPlot(growthByReserve(analysis, { band })))).toMatchFileSnapshot(`growth-${band}.svg`);
  });

  it('has one mark a row and its numbers in the words', () => {
    const figure = growthByReserve(analysis, { band: 'heavy' });
    if (!('heavy' in analysis.bands)) throw new Error('expected two bands');
    const { rows, studies, target } = analysis.bands.heavy;
    // The target's mark is one circle more.
    expect(drawPlot(figure).match(/<circle/gu)).toHaveLength(rows + 1);
    for (const text of [figure.caption, figure.alternative]) {
      expect(text).toContain(`${rows} rows of ${studies} studies`);
      expect(text).toContain(
        `${target.point?.toFixed(1)} in reserve keep 90\u00a0% of it (${target.low?.toFixed(1)} to ${target.high?.toFixed(1)})`,
      );
    }
  });

  it.each([
    [true, false, 'less growth with more in reserve'],
    [false, false, 'no difference of growth by reserve distinguishable from none'],
    [false, true, 'more growth with more in reserve'],
    [true, true, 'less growth at some reserves, more at others'],
  ])('claims only what is sure at some reserve: less %s, more %s', (isLess, isMore, claim) => {
    if (!('heavy' in analysis.bands)) throw new Error('expected two bands');
    const { light, heavy } = analysis.bands;
    const sure = { estimate: 0.01, standardError: 0.001, df: 12, ciLow: 0.008, ciHigh: 0.012, p: 1e-6 };
    const moved = { ...heavy, difference: { less: isLess ? sure : null, more: isMore ? sure : null } };
    const figure = growthByReserve({ ...analysis, bands: { light, heavy: moved } }, { band: 'heavy' });
    expect(figure.title).toBe(`Heavy loads: ${claim}`);
  });

  it('says that the intervals of a few studies are unreliable', () => {
    const few = analyseInFull(
      arms.filter(({ study }) => /^[A-F]/u.test(study)),
      settings,
    );
    expect(growthByReserve(few, { band: 'heavy' }).caption).toMatch(/fewer than 4 degrees of freedom: .* unreliable/u);
    expect(growthByReserve(analysis, { band: 'heavy' }).caption).not.toMatch(/unreliable/u);
  });

  it.each([
    ['line', 'Light loads: less growth with more in reserve'],
    ['log', 'Light loads: less growth with more in reserve'],
    ['quadratic', 'Light loads: less growth with more in reserve'],
    ['spline', 'Light loads: less growth with more in reserve'],
    ['flexible', 'Light loads: less growth with more in reserve'],
  ] as const)('with the curve %s is titled by what it can claim: %s', (curve, title) => {
    const other = analyse(arms, settingsSchema.parse({ curve }));
    expect(growthByReserve(other, { band: 'light' }).title).toBe(title);
  });

  it('says what is open about the target: an end that is not limited, an interval in pieces', () => {
    if (!('heavy' in analysis.bands)) throw new Error('expected two bands');
    const { light, heavy } = analysis.bands;
    const captionWith = (change: Partial<typeof heavy.target>) =>
      growthByReserve(
        { ...analysis, bands: { light, heavy: { ...heavy, target: { ...heavy.target, ...change } } } },
        { band: 'heavy' },
      ).caption;
    const shown = { point: 3.5, low: 2.6, high: null };
    expect(captionWith({ high: null, shown, reason: 'this evidence sets no upper end' })).toMatch(
      /keep 90\u00a0% of it \(at least 2\.6\), the bar at the foot\. This evidence sets no upper end\.$/u,
    );
    expect(captionWith({ reason: 'from 7.0 in reserve on it is so' })).toMatch(
      /\. From 7\.0 in reserve on it is so\./u,
    );
    expect(
      captionWith({ point: null, low: null, high: null, shown: null, whole: null, reason: 'no target: it is so' }),
    ).toMatch(/\)\. No target: it is so\.$/u);
  });

  it('draws the interval of the target as it is told, also where that is down to a whole repetition', () => {
    if (!('heavy' in analysis.bands)) throw new Error('expected two bands');
    for (const name of ['light', 'heavy'] as const) {
      const { shown, low } = analysis.bands[name].target;
      const figure = growthByReserve(analysis, { band: name, former: { ...analysis, settings } });
      const bars = listPlotted(figure.plot)
        .flatMap(({ rows }) => rows)
        .filter((row) => 'target' in row || 'before' in row);
      expect(bars.length).toBeGreaterThan(1);
      for (const bar of bars) {
        expect(Math.abs(Number(bar.low) - (shown?.low ?? Number.NaN))).toBeLessThanOrEqual(0.05);
        expect(Math.abs(Number(bar.high) - (shown?.high ?? Number.NaN))).toBeLessThanOrEqual(0.05);
      }
      // Of the light loads it is told from further down than where it ends.
      if (name === 'light') expect((low ?? 0) - (shown?.low ?? 0)).toBeGreaterThan(0.1);
    }
  });

  it('says in words that a simpler curve was fitted where too few reserves were studied', () => {
    const few = analyse(
      arms.filter(({ reserve_reps: reserve }) => reserve !== null && [0, 2, 7].includes(reserve)),
      settings,
    );
    if (!('heavy' in few.bands)) throw new Error('expected two bands');
    expect(few.bands.heavy.curve).toBe('quadratic');
    expect(few.bands.heavy.curves.map(({ curve }) => curve)).toEqual(['line', 'log', 'quadratic', 'spline']);
    expect(growthByReserve(few, { band: 'heavy' }).caption).toContain(
      'A parabola was fitted: a flexible curve needs four different reserves.',
    );
    expect(growthByReserve(analysis, { band: 'heavy' }).caption).not.toMatch(/was fitted/u);
  });

  it('titles a difference with few degrees of freedom with a doubt', () => {
    if (!('heavy' in analysis.bands)) throw new Error('expected two bands');
    const { light, heavy } = analysis.bands;
    const rising = { estimate: 0.01, standardError: 0.001, df: 2, ciLow: 0.005, ciHigh: 0.015, p: 0.01 };
    const odd = { ...analysis, bands: { light, heavy: { ...heavy, difference: { less: null, more: rising } } } };
    expect(growthByReserve(odd, { band: 'heavy' }).title).toBe(
      'Heavy loads: more growth with more in reserve, if so few studies can be relied on',
    );
  });

  it('of strength is of gains, and of fatigue of performance, which less fatigue makes better', () => {
    const of = (outcome: 'strength' | 'fatigue') => {
      const one = analyse(arms, settingsSchema.parse({ outcome, split: null, curve: 'line' }));
      return { one, figure: growthByReserve(one, { band: 'all' }) };
    };
    const { one, figure } = of('fatigue');
    if (!('all' in one.bands)) throw new Error('expected one band');
    const { difference, atFailure } = one.bands.all;
    // Performance is lost at reserve 0, and less of it with more in reserve.
    expect(atFailure?.ciHigh).toBeLessThan(0);
    expect([difference.less, (difference.more?.ciLow ?? 0) > 0]).toEqual([null, true]);
    expect(figure.title).toBe('All loads: better performance with more in reserve');
    expect(figure.caption).toMatch(
      /At reserve 0 the change of performance is −\d\.\d\u00a0% \(−\d\.\d to −\d\.\d\)\./u,
    );
    expect(figure.plot.y?.label).toBe('change of performance, %');
    const turned = { ...one.bands.all, difference: { less: difference.more, more: null } };
    expect(growthByReserve({ ...one, bands: { all: turned } }, { band: 'all' }).title).toBe(
      'All loads: worse performance with more in reserve',
    );
    const strength = of('strength').figure;
    expect(strength.title).toBe('All loads: no difference of strength gain by reserve distinguishable from none');
    expect(strength.caption).toMatch(/At reserve 0 the strength gain is \d/u);
    expect(strength.table.columns).toContain('strength gain (%)');
  });

  it('tells no growth at reserve 0 where nobody trained near it, which the curve is only continued to', () => {
    const far = arms.filter(({ reserve_reps: reserve }) => reserve === null || reserve >= 2);
    const one = analyse(far, settings);
    for (const name of ['light', 'heavy'] as const) {
      expect(bandOf(one, name).atFailure).toBeNull();
      const { caption } = growthByReserve(one, { band: name });
      expect(caption).not.toMatch(/At reserve 0/u);
      expect(caption).toMatch(/No target: nobody here trained to reserve 0; the least reserve studied is 2\./u);
    }
    expect(bandOf(analysis, 'heavy').atFailure).not.toBeNull();
  });

  it('has the marks at reserve 0 whole on a phone, too', () => {
    const svg = drawPlot(growthByReserve(analysis, { band: 'heavy' }), NARROW_DRAWING);
    const marks = [...svg.matchAll(/<circle[^>]*>/gu)].map(([mark]) =>
      ['cx', 'r'].map((name) => Number(new RegExp(`\\b${name}="([\\d.]+)"`, 'u').exec(mark)?.[1])),
    );
    // The target's mark is among them.
    expect(marks.length).toBe(bandOf(analysis, 'heavy').fitted.length + 1);
    for (const [x, radius] of marks) {
      expect(x - radius).toBeGreaterThan(RESERVE_FRAME.marginLeft);
      expect(x + radius).toBeLessThan(NARROW_DRAWING - RESERVE_FRAME.marginRight);
    }
  });

  it('shows both ends of the target’s interval, however near they are to its mark, and none that is not there', () => {
    const half = 9;
    const endsIn = (svg: string) =>
      [...svg.matchAll(/<path[^>]*>/gu)].flatMap(([mark]) =>
        mark.includes(` d="M0,-${half}L0,${half}"`) ? [Number(/translate\(([\d.]+),/u.exec(mark)?.[1])] : [],
      );
    const draw = (target: Partial<Target>) => {
      const { light } = analysis.bands as Record<'light', Band>;
      const bands = {
        ...analysis.bands,
        light: { ...light, target: { ...light.target, ...target } },
      } as Analysis['bands'];
      return drawPlot(growthByReserve({ ...analysis, bands }, { band: 'light' }), NARROW_DRAWING);
    };
    const svg = draw({ point: 0.3, low: 0.29, high: 0.31 });
    const [circle] = /<circle[^>]*>/u.exec(svg) ?? [''];
    const [mark, radius] = ['cx', 'r'].map((name) =>
      Number(new RegExp(`\\b${name}="([\\d.]+)"`, 'u').exec(circle)?.[1]),
    );
    const [low, high, ...more] = endsIn(svg);
    expect(more).toEqual([]);
    expect(low).toBeLessThan(mark);
    expect(high).toBeGreaterThan(mark);
    // The mark hides where they are, so they are taller than it with the paper round it.
    expect(half).toBeGreaterThan(radius + 2);
    expect(endsIn(draw({ high: null }))).toHaveLength(1);
  });

  it('lists the curve up to the largest reserve studied', () => {
    if (!('heavy' in analysis.bands)) throw new Error('expected two bands');
    const { light, heavy } = analysis.bands;
    const short = { ...heavy, curvePoints: heavy.curvePoints.slice(0, 14) };
    const { rows } = growthByReserve({ ...analysis, bands: { light, heavy: short } }, { band: 'heavy' }).table;
    expect(rows.at(-1)?.[0]).toBe(formatNumber(short.curvePoints[13].reserve, 2));
  });

  it('of a band that could not be fitted says so and draws nothing false', () => {
    const empty = analyseInFull([], settings);
    const figure = growthByReserve(empty, { band: 'light' });
    expect(figure.title).toBe('Light loads: no curve could be fitted');
    expect(figure.caption).toMatch(/Not fitted: no row is left/u);
    expect(drawPlot(figure)).toMatch(/^<svg/u);
  });

  it('of a band with rows and no fit has the rows as they are, in the picture and in its table', () => {
    const rows = arms.filter(({ study }) => study === 'Plover 1996');
    const alone = analyseInFull(rows, settings);
    const figure = growthByReserve(alone, { band: 'heavy' });
    const { unfitted = [] } = bandOf(alone, 'heavy');
    expect(unfitted.length).toBeGreaterThan(1);
    expect(figure.caption).toMatch(
      new RegExp(`^Not fitted: .* The marks are the ${unfitted.length} rows of 1 study that there are\\.`, 'u'),
    );
    expect(drawPlot(figure).match(/<circle/gu)).toHaveLength(unfitted.length);
    expect(figure.table.columns.slice(0, 3)).toEqual(['study', 'arm', 'reserve (repetitions)']);
    expect(figure.table.rows).toHaveLength(unfitted.length);
    expect(bandOf(analysis, 'heavy').unfitted).toBeUndefined();
  });
});

describe('recovery by hours', () => {
  it('draws the shipped analysis as before', async () => {
    await expect(settleSvg(drawPlot(recoveryByHours(analysis, { status: 'trained' })))).toMatchFileSnapshot(
      'recovery-trained.svg',
    );
  });

  it('calls the effect of reserve unreliable where few degrees of freedom stand behind it', () => {
    for (const { status, perReserve } of analysis.fatigue.byStatus) {
      const { caption } = recoveryByHours(analysis, { status });
      expect((perReserve?.df ?? Number.NaN) < 4).toBe(/unreliable/u.test(caption));
    }
  });

  it('says so where more in reserve took longer, and draws what was studied', () => {
    const trained = analysis.fatigue.byStatus[1];
    if (!trained.perReserve) throw new Error('expected an effect of reserve');
    const turned = { ...trained.perReserve, estimate: 0.01, ciLow: 0.005, ciHigh: 0.015, df: 9 };
    const few = trained.recovery.filter(({ reserve }) => reserve === 1 || reserve === 2);
    const odd = { ...analysis.fatigue, byStatus: [{ ...trained, perReserve: turned, recovery: few }] };
    const figure = recoveryByHours({ ...analysis, fatigue: odd }, { status: 'trained' });
    expect(figure.title).toBe('Trained: back later with more in reserve');
    const svg = drawPlot(figure);
    expect(svg).toMatch(/>1 in reserve</u);
    expect(svg).toMatch(/>2 in reserve</u);
  });

  it('says the hours of the analysis', () => {
    const { caption } = recoveryByHours(analysis, { status: 'untrained' });
    expect(caption).toContain(`${Math.ceil(analysis.fatigue.byStatus[0].recovery[0].hours)} hours`);
  });
});

describe('findings', () => {
  it('state strength with its verdict', () => {
    expect(stateStrength(analysis.strength, settings)).toMatch(
      /By a straight line 5 more repetitions in reserve change strength by −?\d.* inside the 2\u00a0% .* Heavier loads bring more/u,
    );
  });

  it('call an interval with few degrees of freedom unreliable', () => {
    const [contrast] = analysis.beyondFailure;
    if (!contrast?.difference) throw new Error('expected a difference');
    const few = { ...contrast, difference: { ...contrast.difference, df: 2 } };
    expect(stateBeyondFailure(few, settings)).toMatch(/unreliable/u);
    expect(stateBeyondFailure(contrast, settings)).not.toMatch(/unreliable/u);
  });

  it('name the study, the curve and the choice that move a target most', () => {
    const [influence, curves, choices] = stateRobustness('heavy', analysis, sweep);
    expect(influence).toMatch(/leaving out \w+ \d{4}/u);
    expect(curves).toMatch(/^The curve: .* with a parabola/u);
    expect(curves).not.toMatch(/AICc/u);
    expect(choices).toMatch(/over 1,440 combinations .* moves them most/u);
  });
});

describe('numbers', () => {
  it('show a share in per cent, and none below 1 as 100 %', () => {
    expect([0.9, 0.999, 0.9996].map(writePercent)).toEqual(['90\u00a0%', '99.9\u00a0%', '99.96\u00a0%']);
  });
  it('have a true minus sign, and none on a rounded 0', () => {
    expect(formatNumber(-1.25, 1)).toBe('−1.3');
    expect(formatNumber(-0.01, 1)).toBe('0.0');
  });
  it('name what is missing instead of showing it', () => {
    expect(formatRange(1.2, null, 1)).toBe('at least 1.2');
    expect(formatRange(null, null, 1)).toBe('none');
    expect(formatP(0.0001)).toBe('<0.001');
  });
});
