/**
 * The target on curves that are known: straight lines whose interval Fieller's quadratic gives, a bent one whose
 * interval is in pieces, and the edges of what was studied. Quantiles of t: published tables (Fisher & Yates).
 */
import { describe, expect, it } from 'vitest';
import { findTarget, NEAR_FAILURE, noTarget, SCAN_STEPS, type TargetQuestion } from '../../src/model/target.ts';
import { expectWithin } from '../support/closeness.ts';
import { fieller, knownInference } from '../support/knownInference.ts';

/** t of 95 % with 10 degrees of freedom, as printed. */
const T = 2.228139;
const LINE = (r: number) => [1, r];
const QUESTION: TargetQuestion = { keptShare: 0.9, confidence: 0.95, furthest: 10, nearest: 0, studies: 10 };

/** Growth 0.08 at failure that falls by 0.004 a repetition: 90 % are kept up to reserve 2. */
const target = (
  change: Partial<TargetQuestion> = {},
  { slope = -0.004, slopeError = 0.0008, growthError = 0.006, together = -3e-7, growth = 0.08 } = {},
) =>
  findTarget(
    knownInference(
      [growth, slope],
      [
        [growthError ** 2, together],
        [together, slopeError ** 2],
      ],
      10,
    ),
    LINE,
    { ...QUESTION, ...change },
  );

describe('the target of a straight line', () => {
  const found = target();

  it('is where the share of the growth is lost, and its interval Fieller’s', () => {
    const kept = 0.1;
    const { low, high } = fieller([0.08 * kept, -0.004], [(kept * 0.006) ** 2, kept * -3e-7, 0.0008 ** 2], T);
    expectWithin(found.point ?? Number.NaN, 2, 1e-9, 'point');
    // Seven printed digits of t.
    expectWithin(found.low ?? Number.NaN, low, 1e-6, 'low');
    expectWithin(found.high ?? Number.NaN, high, 1e-6, 'high');
    expect(found.set).toEqual([[found.low, found.high]]);
    expect(found).toMatchObject({
      keptShare: 0.9,
      shown: { point: 2, low: Math.round(10 * low) / 10, high: Math.round(10 * high) / 10 },
      whole: { least: 2, most: 2 },
      reachedEdge: false,
      reason: null,
    });
  });

  it('is the same by a coarse scan', () => {
    const coarse = target({ step: SCAN_STEPS.coarse });
    expectWithin(coarse.point ?? Number.NaN, found.point ?? Number.NaN, 1e-9, 'point');
    expectWithin(coarse.high ?? Number.NaN, found.high ?? Number.NaN, 1e-9, 'high');
    expectWithin(coarse.low ?? Number.NaN, found.low ?? Number.NaN, 1e-9, 'low');
  });

  it('is narrower at a lower confidence', () => {
    const narrow = target({ confidence: 0.5 });
    expect(narrow.low).toBeGreaterThan(found.low ?? Number.NaN);
    expect(narrow.high).toBeLessThan(found.high ?? Number.NaN);
  });

  it('has no upper end where the slope may be none, and says so', () => {
    const open = target({}, { slopeError: 0.0025 });
    expect(open).toMatchObject({ high: null, reachedEdge: false, reason: 'this evidence sets no upper end' });
    expectWithin(open.point ?? Number.NaN, 2, 1e-9, 'point');
    expect(open.set.at(-1)?.[1]).toBe(10);
  });

  it('has no upper end where its interval ends with the studied range, but has one just inside', () => {
    const { high } = found;
    if (high === null) throw new Error('expected an end');
    expect(target({ furthest: high - 0.01 }).high).toBeNull();
    expectWithin(target({ furthest: high + 0.01 }).high ?? Number.NaN, high, 1e-9, 'high');
  });

  it('is the furthest reserve studied where less than the share is seen to be lost up to it, and says both', () => {
    const edge = target({ furthest: 1.5 });
    expect(edge).toMatchObject({ point: 1.5, high: null, reachedEdge: true });
    expect(edge.reason).toBe(
      'the edge of the studied range is reached: the share is kept up to the largest reserve studied, 1.5; this evidence sets no upper end',
    );
  });

  it('does not exist where reserve makes no difference that can be seen, whatever the sign', () => {
    for (const slope of [0.001, 0, -0.0001]) {
      const flat = target({}, { slope });
      expect(flat).toMatchObject({ point: null, whole: null, high: null, reachedEdge: true });
      expect(flat.reason).toBe(
        'no target: reserve makes no difference that this table can see, up to 10, the most studied',
      );
    }
    // What is surely kept is told all the same.
    const { low, set } = target({}, { slope: -0.0001 });
    expect(low).toBe(set[0][0]);
    expect(low).toBeGreaterThan(2);
  });

  it('is found on a range narrower than a step', () => {
    // Nothing so near to failure can have cost a tenth: every contrast is rejected, and all that was studied is kept.
    expect(target({ furthest: 0.01 })).toMatchObject({
      point: 0.01,
      low: 0.01,
      high: null,
      reachedEdge: true,
      set: [],
    });
    expectWithin(target({ furthest: 0.01, keptShare: 0.9999 }).point ?? Number.NaN, 0.002, 1e-9, 'point');
  });

  it('reaches the whole number that it misses by less than is shown, and else the one below', () => {
    // 0.08 · 0.3 / 0.008 is 3 but for its last digit.
    const whole = target({ keptShare: 0.7 }, { slope: -0.008 });
    expectWithin(whole.point ?? Number.NaN, 3, 1e-9, 'point');
    expect(whole.whole?.most).toBe(3);
    // 2.9 reaches 2, which lies below its interval: the first number inside is told.
    expect(target({ keptShare: 0.7 }, { slope: -0.0083 }).whole).toEqual({ least: 3, most: 3 });
    expect(target({ keptShare: 0.7 }, { slope: -0.00799 }).whole?.most).toBe(3);
  });

  it('lies in its interval also where that is narrower than a step', () => {
    // Between grid points 0.2 and 0.22, from 0.1999 to 0.2001.
    const near = target({ keptShare: 0.99 }, { slopeError: 1e-6, growthError: 1e-5, together: 0 });
    expectWithin(near.point ?? Number.NaN, 0.2, 1e-9, 'point');
    expect(near.low).toBeLessThanOrEqual(near.point ?? Number.NaN);
    expect(near.reason).toBeNull();
  });
});

describe('a target that does not exist', () => {
  it('where nobody trained near failure', () => {
    const far = target({ nearest: NEAR_FAILURE + 0.1 });
    expect(far).toMatchObject({ point: null, low: null, high: null, shown: null, whole: null });
    expect(far.reason).toBe('no target: nobody here trained to reserve 0; the least reserve studied is 0.6');
    expect(target({ nearest: NEAR_FAILURE }).point).not.toBeNull();
  });

  it('where growth at reserve 0 may be none, with the pieces that are not rejected all the same', () => {
    // 0.08 / 2.228139 = 0.035905: an error above it lets the interval reach 0.
    const none = target({}, { growthError: 0.036 });
    expect(none.point).toBeNull();
    expect(none.reason).toMatch(/^no target: the change at reserve 0 is not distinguishable .*\(95\u00a0% interval/u);
    expect(none.set.length).toBeGreaterThan(0);
    expect(target({}, { growthError: 0.0358 }).point).not.toBeNull();
    expect(target({}, { growth: -0.08, slope: 0.004 }).point).toBeNull();
  });

  it('is nothing but its reason and the share that was asked', () => {
    expect(noTarget(0.8, 'no target: so it is')).toEqual({
      keptShare: 0.8,
      point: null,
      low: null,
      high: null,
      set: [],
      shown: null,
      whole: null,
      reachedEdge: false,
      reason: 'no target: so it is',
    });
  });
});

describe('the target of a curve that falls and rises', () => {
  /** Growth 0.08 (1 − r/5 + r²/25), least at 2.5; 90 % where r² − 5 r + 2.5 = 0. */
  const bend = (error: number) =>
    findTarget(
      knownInference(
        [0.08, -0.016, 0.0032],
        [
          [error ** 2, 0, 0],
          [0, 1e-12, 0],
          [0, 0, 1e-12],
        ],
        10,
      ),
      (r) => [1, r, r * r],
      { ...QUESTION, furthest: 8 },
    );
  const [first, second] = [-1, 1].map((side) => 2.5 + side * Math.sqrt(2.5 ** 2 - 2.5));

  it('is the first place where the share is lost, not the last', () => {
    const found = bend(0.001);
    expectWithin(found.point ?? Number.NaN, first, 1e-9, 'point');
    expect(found.reachedEdge).toBe(false);
  });

  it('has an interval that ends before the loss is certain: where the curve turns up again nothing is won back', () => {
    const found = bend(0.001);
    expect(found.set).toHaveLength(2);
    expect([found.low, found.high]).toEqual(found.set[0]);
    expect(found.set[0][0]).toBeLessThan(first);
    expect(found.set[0][1]).toBeGreaterThan(first);
    expect(found.set[1][0]).toBeLessThan(second);
    expect(found.set[1][1]).toBeGreaterThan(second);
    expect(found.set[1][1]).toBeLessThan(8);
    // Where the curve itself turns up, at 2.5, the loss is still certain.
    expect(found.reason).toMatch(
      /^from 4\.4 in reserve on it is no longer sure that less is kept; .* so the interval ends where it is first sure$/u,
    );
  });

  it('says where the loss is no longer sure without “on” where it is sure again further out', () => {
    // Of the share kept: 0.008 (1 − r)(1 − r/4)(1 − r/6), lost from 1 to 4 and from 6 on.
    const cubic = findTarget(
      knownInference(
        [0.08, -0.008 * (1.25 + 1 / 6), 0.008 * (0.25 + 1.25 / 6), (-0.008 * 0.25) / 6],
        [0.001, 1e-6, 1e-6, 1e-6].map((error, i) => [0, 1, 2, 3].map((j) => (i === j ? error ** 2 : 0))),
        10,
      ),
      (r) => [1, r, r * r, r ** 3],
      { ...QUESTION, furthest: 8 },
    );
    expect(cubic.set).toHaveLength(3);
    expect(cubic.point).toBeCloseTo(1, 6);
    expect(cubic.reason).toMatch(/^from (?:3\.9|4\.0) in reserve it is no longer sure that less is kept; /u);
  });
});
