/**
 * Two bands against each other, and all loads in one fit: against the fits that they are made of, on a small table
 * whose studies stand in both bands.
 */
import { describe, expect, it } from 'vitest';
import { fitEffects, requireFit } from '../../src/model/bandFit.ts';
import { stackInference } from '../../src/model/cr2.ts';
import { curveWithKnots } from '../../src/model/curve.ts';
import { compareBands } from '../../src/model/difference.ts';
import { designRow, fitJoint } from '../../src/model/joint.ts';
import { splitByLoad } from '../../src/model/loads.ts';
import { applyContrast, inferContrast } from '../../src/model/robust.ts';
import { selectRows } from '../../src/model/selection.ts';
import { type SettingsInput, settingsSchema } from '../../src/model/settings.ts';
import { findTarget, SCAN_STEPS } from '../../src/model/target.ts';
import { makeRandom } from '../../src/numerics/random.ts';
import { expectRelative, expectWithin } from '../support/closeness.ts';
import { makeArms } from '../support/tables.ts';

const { normal } = makeRandom(8);
/** Ten studies with light and heavy loads, from 32 to 83 % of 1RM; light ones were studied up to reserve 6 only. */
const arms = makeArms(
  Array.from({ length: 60 }, (_, i) => {
    const load = (i % 6 < 3 ? 32 : 73) + Math.floor(i / 6);
    const reserve = (i % 3) * (load < 60 ? 3 : 4);
    const growth = 0.09 - (load < 60 ? 0.006 : 0.003) * reserve + 0.004 * normal();
    return {
      study: `Study ${Math.floor(i / 6)}`,
      arm: `arm ${i % 6}`,
      load_pct_1rm: String(load),
      attempted_failure: '',
      reserve_reps: String(reserve),
      followup_mean: String(40 * Math.exp(growth)),
      weeks: String(6 + (i % 5)),
    };
  }),
);
const fits = (chosen: SettingsInput = {}) => {
  const settings = settingsSchema.parse({ curve: 'line', ...chosen });
  const { effects } = selectRows(arms, settings);
  const { light, heavy } = splitByLoad(effects, 60);
  return { settings, effects, light: fitEffects(light, settings), heavy: fitEffects(heavy, settings) };
};

describe('the difference between bands', () => {
  it.each(['line', 'log', 'quadratic', 'flexible'] as const)(
    'is of mean slopes over what both studied: %s',
    (curve) => {
      const { settings, light, heavy } = fits({ curve });
      const found = compareBands(light, heavy, settings);
      const slope = (band: typeof light) => {
        const { coefficients } = requireFit(band).inference;
        return (applyContrast(band.at(6), coefficients) - applyContrast(band.at(0), coefficients)) / 6;
      };
      expectRelative(found.estimate ?? Number.NaN, slope(heavy) - slope(light), 1e-12, 'estimate');
      expect(found.term).toBe(curve === 'line' ? 'reserve' : 'mean slope from reserve 0 to 6');
      expect(found.reason).toBeNull();
    },
  );

  it('counts that a study stands in both', () => {
    const { settings, light, heavy } = fits();
    const stacked = stackInference(requireFit(light).inference, requireFit(heavy).inference);
    const { standardError, df, ciLow } = inferContrast(stacked, [0, -1, 0, 1], 0.95);
    expect(compareBands(light, heavy, settings)).toMatchObject({ standardError, df, ciLow });
    // The scores of a study in both, multiplied, are the covariance that two fits alone do not have.
    expect(Math.abs(stacked.covariance[1 * 4 + 3])).toBeGreaterThan(0);
  });

  it.each(['line', 'quadratic'] as const)('has shares with the error of their gradient: %s', (curve) => {
    const { settings, light, heavy } = fits({ curve });
    const { keptShares } = compareBands(light, heavy, settings);
    const inferences = [light, heavy].map((band) => requireFit(band).inference);
    const stacked = stackInference(inferences[0], inferences[1]);
    const { p } = inferences[0];
    const difference = (beta: Float64Array, reserve: number) => {
      const share = (band: typeof light, own: Float64Array) =>
        applyContrast(band.at(reserve), own) / applyContrast(band.at(0), own);
      return share(heavy, beta.subarray(p)) - share(light, beta.subarray(0, p));
    };
    // Every half repetition up to the largest reserve that both studied.
    expect(keptShares.map(({ reserve }) => reserve)).toEqual(Array.from({ length: 12 }, (_, i) => (i + 1) / 2));
    for (const { reserve, estimate, standardError, df, ciLow, ciHigh } of keptShares) {
      expectWithin(estimate, difference(stacked.coefficients, reserve), 1e-13, `share at ${reserve}`);
      // Central differences: their own error is some 1e-9 of the gradient.
      const gradient = Array.from(stacked.coefficients, (value, j) => {
        const step = 1e-5 * Math.abs(value);
        const moved = (by: number) => difference(stacked.coefficients.with(j, value + by), reserve);
        return (moved(step) - moved(-step)) / (2 * step);
      });
      const slow = inferContrast(stacked, gradient, 0.95);
      expectRelative(standardError, slow.standardError, 1e-6, `error at ${reserve}`);
      expectRelative(df, slow.df, 1e-5, `df at ${reserve}`);
      expectWithin((ciLow + ciHigh) / 2, estimate, 1e-13, 'middle');
      expectRelative(ciHigh - ciLow, slow.ciHigh - slow.ciLow, 1e-6, 'width');
    }
  });

  it('does not exist without both fits, and names what is missing', () => {
    const { settings, light, heavy } = fits();
    const none = fitEffects([], settings);
    const reason = (a: typeof light, b: typeof light) => compareBands(a, b, settings).reason;
    expect(reason(none, heavy)).toBe('no difference: there is no fit for light loads');
    expect(reason(light, none)).toBe('no difference: there is no fit for heavy loads');
    expect(reason(none, none)).toBe('no difference: there is no fit for light or heavy loads');
    expect(compareBands(none, heavy, settings)).toMatchObject({ estimate: null, standardError: null, keptShares: [] });
  });
});

describe('all loads in one fit', () => {
  const { settings, effects } = fits();
  const { fit } = fitJoint(effects, settings);
  if (!fit) throw new Error('expected a fit');
  const { joint } = fit;

  it('has a row of curve, load and their products', () => {
    expect(designRow(curveWithKnots('line', null), 3, -5)).toEqual([1, 3, -5, -15]);
    expect(designRow(curveWithKnots('quadratic', null), 3, 2)).toEqual([1, 3, 9, 2, 6, 18]);
    expect(joint.coefficients.map(({ term }) => term)).toEqual(['intercept', 'reserve', 'load', 'reserve × load']);
  });

  it('measures load from the mean of the rows, and knows what was studied', () => {
    const loads = effects.map(({ arm }) => arm.load_pct_1rm ?? Number.NaN);
    expectRelative(
      joint.meanLoad ?? Number.NaN,
      loads.reduce((sum, load) => sum + load, 0) / loads.length,
      1e-14,
      'mean',
    );
    expect(joint.studiedLoad).toEqual({ low: 32, high: 82 });
    expect(joint.studiedReserve).toEqual({ low: 0, high: 8 });
    expect(fit.at((joint.meanLoad ?? Number.NaN) + 10)(2)).toEqual([1, 2, 10, 20]);
  });

  it('lists targets at the round loads inside, each that of the curve at its load', () => {
    expect(joint.targets.map(({ load }) => load)).toEqual([35, 40, 45, 50, 55, 60, 65, 70, 75, 80]);
    for (const target of joint.targets) {
      const asked = { keptShare: 0.9, confidence: 0.95, furthest: 8, nearest: 0, studies: 10, step: SCAN_STEPS.coarse };
      expect(target).toEqual({ load: target.load, ...findTarget(fit.inference, fit.at(target.load), asked) });
    }
  });

  it('gives a target at the ends of what was studied, and none beyond', () => {
    expect([fit.targetAt(32)?.load, fit.targetAt(82)?.load]).toEqual([32, 82]);
    expect([fit.targetAt(31.9), fit.targetAt(82.1)]).toEqual([null, null]);
  });

  it('does not take load in twice, and holds other covariates at their means', () => {
    const adjusted = fitJoint(effects, settingsSchema.parse({ curve: 'line', adjust: ['load', 'weeks'] })).fit;
    expect(adjusted?.joint.coefficients.map(({ term }) => term)).toEqual([
      'intercept',
      'reserve',
      'load',
      'reserve × load',
      'weeks',
    ]);
    expect(adjusted?.at((joint.meanLoad ?? Number.NaN) + 1)(2)).toEqual([1, 2, 1, 2, 0]);
  });

  it('reads rows with a load alone, and says where there is none or reserve does not vary', () => {
    const without = effects.map((effect) => ({ ...effect, arm: { ...effect.arm, load_pct_1rm: null } }));
    expect(fitJoint([...effects, ...without], settings).fit?.joint.coefficients).toEqual(joint.coefficients);
    expect(fitJoint(without, settings).failure?.kind).toBe('no-rows');
    expect(fitJoint([], settings).failure?.kind).toBe('no-rows');
    const same = effects.filter(({ arm }) => arm.reserve_reps === 0);
    expect(fitJoint(same, settings).failure?.kind).toBe('reserve-does-not-vary');
  });
});
