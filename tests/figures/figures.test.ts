/**
 * Figures: what their words say is what the analysis holds, and they draw without a warning. The
 * pictures are held as snapshots with numbers rounded to 3 decimals.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { drawPlot } from '../../src/components/drawPlot.ts';
import { readArms } from '../../src/evidence/table.ts';
import { deviationsByStudy } from '../../src/figures/deviationsByStudy.ts';
import {
  describeBeyondFailure,
  describeRobustness,
  describeStrength,
  describeSweep,
} from '../../src/figures/findings.ts';
import { formatNumber, formatP, formatRange, formatSlope } from '../../src/figures/format.ts';
import { growthByReserve } from '../../src/figures/growthByReserve.ts';
import { describeReserveError } from '../../src/figures/panels.ts';
import { recoveryByHours } from '../../src/figures/recoveryByHours.ts';
import { targetsByRange } from '../../src/figures/targetsByRange.ts';
import { targetsByYear } from '../../src/figures/targetsByYear.ts';
import { targetsWithoutStudies } from '../../src/figures/targetsWithoutStudies.ts';
import { analyse } from '../../src/model/analyse.ts';
import { sweepChoices } from '../../src/model/checks/sweep.ts';
import { analyseInFull, type BandChecks } from '../../src/model/full.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { writePercent } from '../../src/numerics/percent.ts';
import { listTargets } from '../../src/practice/targetTable.ts';
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
        `${target.point?.toFixed(1)} in reserve keep 90 % of it (${target.low?.toFixed(1)} to ${target.high?.toFixed(1)})`,
      );
    }
  });

  it('claims less growth only where the slope’s interval lies below 0', () => {
    const flat = analyseInFull(arms, settingsSchema.parse({ confidence: 0.999 }));
    const title = growthByReserve(flat, { band: 'heavy' }).title;
    if (!('heavy' in flat.bands)) throw new Error('expected two bands');
    const below = flat.bands.heavy.coefficients[1].ciHigh < 0;
    expect(title).toBe(
      below
        ? 'Heavy loads: less growth with more in reserve'
        : 'Heavy loads: no slope of growth distinguishable from none',
    );
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
    ['quadratic', 'Light loads: growth by reserve'],
    ['spline', 'Light loads: growth by reserve'],
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
    expect(captionWith({ high: null, reason: 'upper end not limited by this evidence' })).toMatch(
      /keep 90 % of it \(at least 2\.6\), the bar at the foot\. Upper end not limited by this evidence\.$/u,
    );
    expect(captionWith({ reason: 'the interval has 2 separate pieces' })).toMatch(/\. The interval has 2 separate/u);
    expect(captionWith({ point: null, low: null, high: null, reason: 'no target: it is so' })).toMatch(
      /\)\. No target: it is so\.$/u,
    );
  });

  it('titles a slope with few degrees of freedom with a doubt', () => {
    if (!('heavy' in analysis.bands)) throw new Error('expected two bands');
    const { light, heavy } = analysis.bands;
    const [intercept, slope] = heavy.coefficients;
    const rising = { ...slope, df: 2, estimate: 0.01, ciLow: 0.005, ciHigh: 0.015 };
    const odd = { ...analysis, bands: { light, heavy: { ...heavy, coefficients: [intercept, rising] } } };
    expect(growthByReserve(odd, { band: 'heavy' }).title).toBe(
      'Heavy loads: more growth with more in reserve, if so few studies can be relied on',
    );
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
    expect(caption).toContain(`${analysis.fatigue.byStatus[0].recovery[0].hours.toFixed(0)} hours`);
  });
});

describe('findings', () => {
  it('state strength with its verdict', () => {
    expect(describeStrength(analysis.strength, settings)).toMatch(
      /5 more repetitions in reserve change strength by −?\d.* inside the 2 % .* Heavier loads bring more/u,
    );
  });

  it('call an interval with few degrees of freedom unreliable', () => {
    expect(describeBeyondFailure(analysis.beyondFailure[0], settings)).toMatch(/unreliable/u);
  });

  it('name the study, the curve and the choice that move a target most', () => {
    const [influence, curves, choices] = describeRobustness('heavy', analysis, sweep);
    expect(influence).toMatch(/leaving out \w+ \d{4}/u);
    expect(curves).toMatch(/By AICc/u);
    expect(choices).toMatch(/over 1152 combinations .* moves them most/u);
  });
});

describe('findings of odd tables', () => {
  const heavyOf = (change: (checks: BandChecks) => Partial<BandChecks>) => {
    const { heavy } = analysis.checks;
    if (!heavy) throw new Error('expected checks');
    return { ...analysis, checks: { ...analysis.checks, heavy: { ...heavy, ...change(heavy) } } };
  };
  const influenceWith = (points: readonly (number | null)[]) =>
    heavyOf(({ influence }) => ({
      influence: {
        ...influence,
        studies: points.map((point, i) => ({
          ...influence.studies[i],
          targetWithout: { ...influence.studies[i].targetWithout, point, low: point, high: point },
        })),
      },
    }));

  it('name the studies without which there is no target, in words and in the title', () => {
    const all = 'light' in analysis.bands ? analysis.bands.heavy.target : null;
    if (!all) throw new Error('expected two bands');
    const said = (points: readonly (number | null)[]) => describeRobustness('heavy', influenceWith(points), sweep)[0];
    expect(said([all.point, 2])).toMatch(/^One study: leaving out \S+ \d+ moves the target .* to 2\.0 from 3\.5\.$/u);
    expect(said([all.point, all.point])).toBe(
      'One study: the target for heavy loads stays at 3.5 whichever is left out.',
    );
    expect(said([null, 2])).toMatch(/^One study: without one of them there is no target at all; leaving out/u);
    expect(said([null, null])).toBe('One study: whichever is left out, there is no target for heavy loads.');
    const titled = (points: readonly (number | null)[]) => {
      const { heavy } = influenceWith(points).checks;
      return targetsWithoutStudies(heavy.influence, all, 10, 'heavy').title;
    };
    expect(titled([3, 3])).toBe('Without any one study the target lies at 3.0');
    expect(titled([null, 2, 3])).toBe('Without one study the target lies from 2.0 to 3.0, or is lost (1 of 3)');
  });

  it('call no choice the one that moves targets most where all targets are one', () => {
    const { heavy } = sweep;
    const still = {
      ...heavy,
      atEdge: heavy.outcomes.length,
      quantiles: heavy.quantiles.map(() => 8),
      shares: heavy.shares.map(({ choice }) => ({ choice, share: 0 })),
    };
    expect(describeSweep('heavy', { ...sweep, heavy: still })).toMatch(
      /nine in ten targets for heavy loads lie at 8\.0, 1152 at the largest reserve studied\.$/u,
    );
  });

  it('list a curve without a target, and say how far the next one is', () => {
    const { bands } = analysis;
    if (!('heavy' in bands)) throw new Error('expected two bands');
    const curves = bands.heavy.curves.map((one) =>
      one.curve === 'log' ? { ...one, target: { ...one.target, point: null } } : one,
    );
    const odd = { ...analysis, bands: { ...bands, heavy: { ...bands.heavy, curves } } };
    expect(describeRobustness('heavy', odd, sweep)[1]).toMatch(
      /none with a logarithm, .* By AICc a logarithm describes the rows best, by \d\.\d before a \w+, too little to choose by\.$/u,
    );
  });

  it('of the years name the last one where it gives no target, and one year once', () => {
    const cumulative = analysis.checks.heavy?.cumulative ?? [];
    const last = cumulative[cumulative.length - 1];
    const none = { ...last, year: 2030, target: { ...last.target, point: null, low: null, high: null } };
    expect(targetsByYear([last, none], 10, 'heavy').title).toBe('The target by year: 3.5 in 2024, none in 2030');
    expect(targetsByYear([last], 10, 'heavy').title).toBe('The target by year: 3.5 in 2024');
    expect(targetsByYear([last, none], 10, 'heavy').caption).toMatch(/1 of 2 years gives none\.$/u);
  });

  it('count one study as one', () => {
    const [deviation] = analysis.checks.heavy?.deviations ?? [];
    expect(deviationsByStudy([{ ...deviation, low: 0.01, high: 0.02 }], 'heavy', settings).title).toBe(
      '1 of 1 study lies off the curve by more than its own error',
    );
    expect(describeStrength({ ...analysis.strength, rows: 1, studies: 1 }, settings)).toMatch(/\(1 row, 1 study\)/u);
  });

  it('of what a set can leave: no title allows more than the repetitions possible but one', () => {
    const wide = analyseInFull(arms, settingsSchema.parse({ keptShare: 0.5 }));
    const rows = listTargets(wide);
    const { title, caption } = targetsByRange(rows, { ...wide.settings, furthest: 10 });
    expect(rows[0].target.practical).toBe(10);
    expect(title).toMatch(/: 5 where below 10 are possible, 10 where 10 to 20/u);
    expect(caption).toMatch(/no set leaves more than those possible but one/u);
  });

  it('show slopes in baseline SDs with a digit more, in one unit', () => {
    expect(formatSlope(-0.01234, 'log-ratio')).toBe('−1.23');
    expect(formatSlope(-0.01234, 'standardised')).toBe('−0.012');
    const check = analysis.checks.heavy?.reserveError;
    if (!check) throw new Error('expected a check');
    expect(describeReserveError({ ...check, corrected: 0.001, ratio: -0.5, rowsWithError: 1 }, 'log-ratio')).toMatch(
      /hundredths of the log ratio a repetition becomes 0\.10 .* of the other sign\. 1 row states an error; \d+ do not/u,
    );
  });
});

describe('numbers', () => {
  it('show a share in per cent, and none below 1 as 100 %', () => {
    expect([0.9, 0.999, 0.9996].map(writePercent)).toEqual(['90 %', '99.9 %', '99.96 %']);
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
