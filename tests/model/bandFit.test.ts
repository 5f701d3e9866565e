/** What is asked of a band's fit: slopes, ranges, centred covariates, and why a band has none; by hand. */
import { describe, expect, it } from 'vitest';
import {
  centreCovariates,
  fitEffects,
  meanSlopeContrast,
  rangeOf,
  requireFit,
  slopeOf,
  summariseTarget,
  targetOf,
} from '../../src/model/bandFit.ts';
import { curveWithKnots, hasDistinctKnots, makeCurve } from '../../src/model/curve.ts';
import { refuseConstantReserve, refuseDesign } from '../../src/model/designRefusal.ts';
import { inferContrast } from '../../src/model/robust.ts';
import { selectRows } from '../../src/model/selection.ts';
import { type SettingsInput, settingsSchema } from '../../src/model/settings.ts';
import { findTarget, SCAN_STEPS } from '../../src/model/target.ts';
import { splitReserve, studyMeans } from '../../src/model/withinBetween.ts';
import { expectRelative, expectWithin } from '../support/closeness.ts';
import { makeArms } from '../support/tables.ts';

/** Six studies of three arms, reserves 0.25 to 6.25, with growth that falls by a half per cent a repetition and a little unrest. */
const rows = Array.from({ length: 18 }, (_, i) => {
  const reserve = 0.25 + 3 * (i % 3);
  const unrest = 0.004 * Math.sin(3 * i) + 0.006 * Math.cos(Math.floor(i / 3));
  return {
    study: `Study ${Math.floor(i / 3)}`,
    arm: `arm ${i % 3}`,
    attempted_failure: 'no',
    reserve_reps: String(reserve),
    followup_mean: String(40 * Math.exp(0.09 - 0.005 * reserve + unrest)),
    weeks: String(6 + (i % 4)),
  };
});
// Of a straight line, whose numbers can be worked out by hand.
const settings = settingsSchema.parse({ curve: 'line' });
const effectsOf = (chosen: SettingsInput = {}, of = rows) =>
  selectRows(makeArms(of), settingsSchema.parse(chosen)).effects;
const effects = effectsOf();
const band = fitEffects(effects, settings);

describe('a range', () => {
  it('is from the smallest to the largest, and null of nothing', () => {
    expect(rangeOf([3, -1, 2])).toEqual({ low: -1, high: 3 });
    expect(rangeOf([2])).toEqual({ low: 2, high: 2 });
    expect(rangeOf([])).toBeNull();
  });
});

describe('a curve', () => {
  it('has the terms that its name says', () => {
    const at = (curve: 'line' | 'log' | 'quadratic') => curveWithKnots(curve, null).at(3);
    expect([at('line'), at('log'), at('quadratic')]).toEqual([
      [1, 3],
      [1, Math.log(4)],
      [1, 3, 9],
    ]);
    const spline = makeCurve('spline', [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(spline.knots).toEqual([1, 5, 9]);
    expect(spline.at(1)).toEqual([1, 1, 0]);
    expect(makeCurve('line', [0, 1]).knots).toBeNull();
    expect(() => curveWithKnots('spline', null)).toThrow('invalid curve; a spline needs its knots');
  });

  it('needs knots that are distinct', () => {
    expect([hasDistinctKnots([0, 1, 2]), hasDistinctKnots([0, 0, 2]), hasDistinctKnots([0, 2, 2])]).toEqual([
      true,
      false,
      false,
    ]);
  });

  it('has the mean slope between failure and a reserve', () => {
    expect(meanSlopeContrast((r) => [1, r, r * r], 4)).toEqual([0, 1, 4]);
  });
});

describe('a band', () => {
  it('has a slope over the range studied, from 0 to the largest reserve', () => {
    const { inference } = requireFit(band);
    expect(slopeOf(band, 0.9)).toEqual(inferContrast(inference, [0, 1], 0.9));
    const bent = fitEffects(effects, { ...settings, curve: 'quadratic' });
    const [, b, c] = requireFit(bent).inference.coefficients;
    expectRelative(slopeOf(bent, 0.9)?.estimate ?? Number.NaN, b + 6.25 * c, 1e-12, 'slope');
    expect(slopeOf(fitEffects([], settings), 0.9)).toBeNull();
  });

  it('has the target of its curve between the nearest and the furthest reserve', () => {
    const question = {
      keptShare: 0.9,
      confidence: 0.95,
      furthest: 6.25,
      nearest: 0.25,
      studies: band.data.studies.length,
    };
    const fine = findTarget(requireFit(band).inference, band.at, question);
    expect(targetOf(band, settings)).toEqual(fine);
    const { point, low, high, shown, whole, reason } = findTarget(requireFit(band).inference, band.at, {
      ...question,
      step: SCAN_STEPS.coarse,
    });
    expect(summariseTarget(band, settings)).toEqual({ point, low, high, shown, whole, reason });
    expect(fine.point).toBeGreaterThan(1);
  });

  it('without a row has neither fit nor target, and says why', () => {
    const empty = fitEffects([], settings);
    expect(targetOf(empty, settings)).toMatchObject({
      point: null,
      keptShare: 0.9,
      reason: 'no target: no fit was possible, since no row is left to fit',
    });
    expect(() => requireFit(empty)).toThrow(/^invalid call: band without a fit: no row/u);
  });

  it('keeps design and terms together, covariates at their means', () => {
    const adjusted = fitEffects(effects, { ...settings, adjust: ['weeks'] });
    expect(adjusted.terms).toEqual(['intercept', 'reserve', 'weeks']);
    expect(adjusted.columns.map((column) => column.length)).toEqual([18, 18, 18]);
    expect(adjusted.columns[1]).toEqual(adjusted.reserves);
    expect(adjusted.at(2)).toEqual([1, 2, 0]);
  });
});

describe('a covariate', () => {
  it('is centred, and left out where it is the same in every row', () => {
    const [weeks, ...others] = centreCovariates(effects, ['weeks', 'load', 'training-status']);
    expect(others).toEqual([]);
    expect(weeks.name).toBe('weeks');
    // 6, 7, 8, 9, … of 18 rows: the mean is 133/18.
    effects.forEach(({ arm }, i) => {
      expectWithin(weeks.column[i], (arm.weeks ?? Number.NaN) - 133 / 18, 1e-12, `row ${i}`);
    });
    expect(centreCovariates([], ['weeks'])).toEqual([]);
  });
});

describe('a refusal', () => {
  it('is of reserves that are all the same, not of none or of two that differ', () => {
    expect(refuseConstantReserve([2, 2])).toEqual({
      kind: 'reserve-does-not-vary',
      reason: 'every row has reserve 2; a slope needs at least two values',
    });
    expect([refuseConstantReserve([]), refuseConstantReserve([2, 2.1])]).toEqual([null, null]);
  });

  it('is of knots that coincide, where there are rows', () => {
    const of = (reserves: readonly number[]) => refuseDesign(reserves, makeCurve('spline', reserves));
    const many = [0, 0, 0, 0, 0, 0, 0, 0, 0, 3];
    expect(of(many)?.kind).toBe('knots-coincide');
    expect(of(many)?.reason).toMatch(/^the spline's knots coincide \(0, 0, /u);
    expect(of([])).toBeNull();
    expect(of([0, 1, 2, 3, 4])).toBeNull();
    expect(of([1, 1])?.kind).toBe('reserve-does-not-vary');
    expect(refuseDesign(many, makeCurve('line', many))).toBeNull();
    expect(
      fitEffects(
        effectsOf(
          {},
          rows.map((row, i) => ({ ...row, reserve_reps: i < 17 ? '1' : '2' })),
        ),
        { ...settings, curve: 'spline' },
      ).outcome.failure?.kind,
    ).toBe('knots-coincide');
  });
});

describe('slopes within and between studies', () => {
  it('are of deviations and of means by study', () => {
    expect(studyMeans(effects.slice(0, 4), [1, 2, 6, 9])).toEqual([3, 3, 3, 9]);
  });

  it('are refused where all studies have one mean, or none has two reserves', () => {
    expect(splitReserve(effects, settings).reason).toBe('the mean reserve is the same in every study');
    const single = effects.filter((_, i) => i % 3 === Math.floor(i / 3) % 3);
    expect(splitReserve(single, settings).reason).toBe('reserve does not vary inside any study');
  });

  it('differ by what the difference says', () => {
    const moved = effectsOf(
      {},
      rows.map((row, i) => ({ ...row, reserve_reps: String(Number(row.reserve_reps) + Math.floor(i / 3)) })),
    );
    const { within, between, difference, reason } = splitReserve(moved, settings);
    expect(reason).toBeNull();
    expectWithin(
      difference?.estimate ?? Number.NaN,
      (within?.estimate ?? Number.NaN) - (between?.estimate ?? Number.NaN),
      1e-15,
      'difference',
    );
    // Inside a study growth falls by 0.005 a repetition, but for the unrest; between them the shift costs nothing.
    expectWithin(within?.estimate ?? Number.NaN, -0.005, 0.0015, 'within');
    expect(Math.abs(between?.estimate ?? Number.NaN)).toBeLessThan(0.003);
  });
});
