/** A band as plain numbers, strength, work beyond failure and fatigue: each against the fit that it is made of, or counted by hand. */
import { describe, expect, it } from 'vitest';
import { summariseBand } from '../../src/model/band.ts';
import { fitEffects, requireFit, targetOf } from '../../src/model/bandFit.ts';
import { compareBeyondFailure } from '../../src/model/beyondFailure.ts';
import { countDistinctStudies, countPeople } from '../../src/model/counts.ts';
import { analyseFatigue } from '../../src/model/fatigue.ts';
import { fitModel } from '../../src/model/mixed.ts';
import { isUnreliable } from '../../src/model/result.ts';
import { inferContrast } from '../../src/model/robust.ts';
import { selectRows } from '../../src/model/selection.ts';
import { type SettingsInput, settingsSchema } from '../../src/model/settings.ts';
import { analyseStrength } from '../../src/model/strength.ts';
import { SCAN_STEPS } from '../../src/model/target.ts';
import { makeRandom } from '../../src/numerics/random.ts';
import { expectRelative, expectWithin } from '../support/closeness.ts';
import { type Cells, makeArms } from '../support/tables.ts';

const { normal } = makeRandom(21);
const table = (outcome: Cells = {}, growth = (reserve: number, load: number) => 0.09 - 0.005 * reserve + 0 * load) =>
  Array.from({ length: 30 }, (_, i): Cells => {
    const reserve = 3 * (i % 3);
    const load = 60 + 2 * ((i * 7) % 11);
    return {
      study: `Study ${Math.floor(i / 3)}`,
      arm: `arm ${i % 3}`,
      cohort: i % 2 ? 'same' : '',
      n: String(10 + (i % 4)),
      attempted_failure: '',
      reserve_reps: String(reserve),
      load_pct_1rm: String(load),
      followup_mean: String(40 * Math.exp(growth(reserve, load) + 0.02 * normal())),
      ...outcome,
    };
  });
const rows = makeArms(table());
const described = (chosen: SettingsInput = {}) => {
  const settings = settingsSchema.parse({ split: null, curve: 'line', ...chosen });
  const { effects } = selectRows(rows, settings);
  return { settings, effects, ...summariseBand(effects, settings) };
};

describe('people', () => {
  const person = (study: string, cohort: string | null, arm: string, n: number) => ({ study, cohort, arm, n });

  it('of a cohort are counted once, the most of them; those of an arm without one are its own', () => {
    expect(countPeople([person('A', 'a', 'one', 10), person('A', 'a', 'two', 12), person('A', 'a', 'three', 9)])).toBe(
      12,
    );
    expect(countPeople([person('A', null, 'one', 10), person('A', null, 'two', 12)])).toBe(22);
    expect(countPeople([person('A', null, 'one', 10), person('A', null, 'one', 12)])).toBe(12);
    expect(countPeople([person('A', 'a', 'one', 10), person('B', 'a', 'one', 12)])).toBe(22);
    // A cohort named as an arm is another group of people; an empty name is none.
    expect(countPeople([person('A', 'one', 'x', 10), person('A', null, 'one', 12)])).toBe(22);
    expect(countPeople([person('A', '', 'one', 10), person('A', '', 'two', 12)])).toBe(22);
    expect(countPeople([])).toBe(0);
  });

  it('and studies are those that stand behind the rows', () => {
    expect(countDistinctStudies([{ arm: { study: 'A' } }, { arm: { study: 'B' } }, { arm: { study: 'A' } }])).toBe(2);
  });
});

describe('a band', () => {
  it('has the numbers of its fit', () => {
    const { band, source, effects, settings } = described();
    const fit = requireFit(source);
    expect(band).toMatchObject({
      failure: null,
      rows: 30,
      studies: 10,
      participants: countPeople(effects.map(({ arm }) => arm)),
      curve: 'line',
      studiedReserve: { low: 0, high: 6 },
      studiedLoad: { low: 60, high: 80 },
      tau2: fit.components?.tau2,
      omega2: fit.components?.omega2,
      boundary: fit.components?.boundary,
      likelihoodMaxima: fit.components?.maxima,
      logLikelihood: fit.logLikelihood,
      aicc: fit.aicc,
      atFailure: inferContrast(fit.inference, [1, 0], 0.95),
      target: targetOf(source, settings),
    });
    expect(band.coefficients.map(({ term }) => term)).toEqual(['intercept', 'reserve']);
    expect(band.coefficients.map((one) => one.modelStandardError)).toEqual(Array.from(fit.modelStandardErrors));
    expect(band.unreliable).toBe(isUnreliable(band.coefficients));
  });

  it('says nothing of reserve 0 where nobody trained near it', () => {
    const { effects, settings, band: before } = described({ curve: 'line' });
    const further = effects.map((effect) => ({
      ...effect,
      arm: { ...effect.arm, reserve_reps: (effect.arm.reserve_reps ?? 0) + 2 },
    }));
    const { band } = summariseBand(further, settings);
    expect(band.failure).toBeNull();
    expect(band.studiedReserve).toEqual({ low: 2, high: 8 });
    expect(band.atFailure).toBeNull();
    expect(band.curvePoints[0].reserve).toBe(2);
    expect(band.curvePoints.at(-1)?.reserve).toBe(8);
    // A line's difference is its slope, from wherever it is asked.
    expect(before.difference.less ?? before.difference.more).not.toBeNull();
    const [is, was] = [band, before].map(({ difference: { less, more } }) => (less ?? more)?.estimate ?? Number.NaN);
    expectRelative(is, was, 1e-6, 'difference');
  });

  it('draws its curve over what was studied, with a band for a new study', () => {
    const { band, source } = described({ confidence: 0.9 });
    const fit = requireFit(source);
    const { tau2 = 0, omega2 = 0 } = fit.components ?? {};
    expect(tau2 + omega2).toBeGreaterThan(0);
    expect(band.curvePoints.map(({ reserve }) => reserve)).toEqual(Array.from({ length: 81 }, (_, i) => (6 * i) / 80));
    for (const point of band.curvePoints) {
      const here = inferContrast(fit.inference, [1, point.reserve], 0.9);
      expect(point).toMatchObject({ estimate: here.estimate, ciLow: here.ciLow, ciHigh: here.ciHigh, df: here.df });
      // Wider than the interval by as much as its spread is than the standard error.
      const wider = Math.sqrt(1 + (tau2 + omega2) / here.standardError ** 2);
      expectRelative(
        (point.predictionHigh ?? Number.NaN) - here.estimate,
        wider * (here.ciHigh - here.estimate),
        1e-9,
        'upper',
      );
      expectRelative(
        here.estimate - (point.predictionLow ?? Number.NaN),
        wider * (here.estimate - here.ciLow),
        1e-9,
        'lower',
      );
    }
  });

  it('without a model of variances has none, and no band for a new study', () => {
    for (const weighting of ['precision', 'equal'] as const) {
      const { band } = described({ weighting });
      expect(band).toMatchObject({
        tau2: null,
        omega2: null,
        boundary: { tau2: false, omega2: false },
        likelihoodMaxima: null,
      });
      expect(band.curvePoints.every((point) => point.predictionLow === null && point.predictionHigh === null)).toBe(
        true,
      );
    }
  });

  it('lists its rows with their shares of the weight', () => {
    const precise = described({ weighting: 'precision', rho: 0 });
    const total = precise.effects.reduce((sum, { v }) => sum + 1 / v, 0);
    const { fitted } = precise.band;
    const inTable = [...precise.effects].sort((a, b) => a.arm.line - b.arm.line);
    inTable.forEach(({ arm, y, v }, i) => {
      expect(fitted[i]).toMatchObject({ line: arm.line, study: arm.study, reserve: arm.reserve_reps, effect: y });
      expectRelative(fitted[i].standardError, Math.sqrt(v), 1e-15, 'error');
      expectRelative(fitted[i].weight, 1 / v / total, 1e-12, `weight of row ${i}`);
    });
    expect(described({ weighting: 'equal' }).band.fitted.map(({ weight }) => weight.toFixed(12))).toEqual(
      Array.from({ length: 30 }, () => (1 / 30).toFixed(12)),
    );
  });

  it('under equal weights has errors from the sampling variances alone: Σ w² v, w what a row adds to the slope', () => {
    const { band, effects } = described({ weighting: 'equal' });
    const reserves = effects.map(({ arm }) => arm.reserve_reps ?? Number.NaN);
    const centre = reserves.reduce((sum, reserve) => sum + reserve, 0) / reserves.length;
    const square = reserves.reduce((sum, reserve) => sum + (reserve - centre) ** 2, 0);
    const variance = effects.reduce((sum, { v }, i) => sum + v * ((reserves[i] - centre) / square) ** 2, 0);
    expectRelative(band.coefficients[1].modelStandardError, Math.sqrt(variance), 1e-12, 'slope');
    const atFailure = effects.reduce(
      (sum, { v }, i) => sum + v * (1 / 30 - (centre * (reserves[i] - centre)) / square) ** 2,
      0,
    );
    expectRelative(band.coefficients[0].modelStandardError, Math.sqrt(atFailure), 1e-12, 'intercept');
  });

  it('that cannot be fitted has a reason and no numbers', () => {
    const { band } = summariseBand([], settingsSchema.parse({}));
    expect(band).toMatchObject({
      failure: { kind: 'no-rows' },
      rows: 0,
      studies: 0,
      participants: 0,
      studiedReserve: null,
      studiedLoad: null,
      coefficients: [],
      tau2: null,
      boundary: { tau2: false, omega2: false },
      logLikelihood: { reml: null, ml: null },
      aicc: null,
      atFailure: null,
      curvePoints: [],
      fitted: [],
      unreliable: false,
    });
  });

  it('compares the four shapes by AICc, each with its own target', () => {
    const { band, effects, settings } = described({ curve: 'log' });
    const best = Math.min(...band.curves.map(({ aicc }) => aicc ?? Number.NaN));
    for (const { curve, aicc, aboveBest, logLikelihood, parameters, target } of band.curves) {
      const own = fitEffects(effects, { ...settings, curve });
      expect([aicc, logLikelihood, parameters]).toEqual([
        requireFit(own).aicc,
        requireFit(own).logLikelihood.ml,
        requireFit(own).parameters,
      ]);
      expectWithin(aboveBest ?? Number.NaN, (aicc ?? Number.NaN) - best, 1e-12, curve);
      expect(targetOf(own, settings, SCAN_STEPS.coarse)).toMatchObject(target);
    }
  });

  it('is unreliable below 4 degrees of freedom, not at them', () => {
    expect([isUnreliable([{ df: 9 }, { df: 3.99 }]), isUnreliable([{ df: 4 }]), isUnreliable([])]).toEqual([
      true,
      false,
      false,
    ]);
  });
});

describe('strength', () => {
  const strong = makeArms([
    ...table(
      { outcome: 'strength', measure: '1RM', unit: 'kg' },
      (reserve, load) => 0.2 - 0.002 * reserve + 0.004 * (load - 70),
    ),
    { study: 'Wren 2020', year: '2020', outcome: 'strength', measure: '1RM', unit: 'kg', load_pct_1rm: '' },
  ]);
  const run = (chosen: SettingsInput = {}) => analyseStrength(strong, settingsSchema.parse(chosen));

  it('is a plane of reserve and load, load from its mean', () => {
    const settings = settingsSchema.parse({ outcome: 'strength' });
    const { effects } = selectRows(strong, settings);
    const loads = effects.map(({ arm }) => arm.load_pct_1rm ?? Number.NaN);
    const centre = loads.reduce((sum, load) => sum + load, 0) / loads.length;
    const columns = [
      loads.map(() => 1),
      effects.map(({ arm }) => arm.reserve_reps ?? 0),
      loads.map((load) => load - centre),
    ];
    const observations = effects.map(({ arm, y, v }) => ({ study: arm.study, cohort: arm.cohort, y, v }));
    const { fit } = fitModel(observations, columns, settings);
    if (!fit) throw new Error('expected a fit');
    const found = run();
    expect(found).toMatchObject({ rows: 30, studies: 10, failure: null });
    [found.atFailure, found.reserve, found.load].forEach((estimate, j) => {
      const own = inferContrast(
        fit.inference,
        [0, 1, 2].map((k) => (k === j ? 1 : 0)),
        0.95,
      );
      expectWithin(estimate?.estimate ?? Number.NaN, own.estimate, 1e-12, `coefficient ${j}`);
      expectRelative(estimate?.standardError ?? Number.NaN, own.standardError, 1e-9, `error ${j}`);
    });
    expect(run({ split: null }).excluded).toEqual([{ line: 32, reason: 'load is not known, which this model needs' }]);
  });

  it('is judged against the margin by two one-sided tests', () => {
    const { equivalence } = run();
    if (!equivalence) throw new Error('expected a judgement');
    expectRelative(equivalence.margin, Math.log(1.02), 1e-12, 'margin');
    const verdict = (per: number) => run({ smallestWorthwhile: { 'log-ratio': per } }).equivalence?.verdict ?? '';
    const { estimate } = equivalence.difference;
    // The 90 % interval decides: a margin just beyond its further end holds it, one just inside does not.
    const furthest = Math.max(Math.abs(equivalence.low), Math.abs(equivalence.high));
    expect(verdict(100 * Math.expm1(furthest * 1.0001))).toMatch(/^inside/u);
    expect(verdict(100 * Math.expm1(furthest * 0.9999))).not.toMatch(/inside/u);
    expectWithin((equivalence.low + equivalence.high) / 2, estimate, 1e-12, 'middle');
    // At the further end the larger one-sided p is what the level leaves.
    const at = run({ smallestWorthwhile: { 'log-ratio': 100 * Math.expm1(furthest) } }).equivalence;
    expectWithin(at?.p ?? Number.NaN, 0.05, 1e-9, 'p');
    const beyond = run({ smallestWorthwhile: { 'log-ratio': 1e-6 } }).equivalence;
    expect(beyond?.p).toBeGreaterThan(0.5);
    const apart = equivalence.difference.ciLow > 0 || equivalence.difference.ciHigh < 0;
    expect(verdict(1e-6)).toBe(apart ? 'apart from 0' : 'open');
    expect(verdict(90)).toBe(apart ? 'inside and apart from 0' : 'inside');
  });

  it('is refused where reserve does not vary', () => {
    expect(analyseStrength(strong.slice(-1), settingsSchema.parse({ split: null })).failure).not.toBeNull();
    const same = strong.filter(({ reserve_reps }) => reserve_reps === 0);
    expect(analyseStrength(same, settingsSchema.parse({}))).toMatchObject({
      failure: { kind: 'reserve-does-not-vary' },
      reserve: null,
      equivalence: null,
    });
  });
});

describe('work beyond failure', () => {
  const pair = (study: string, beyond: number, kind = 'partials', level = 43): Cells[] => [
    { study, arm: 'failure', followup_mean: String(level) },
    { study, arm: 'beyond', followup_mean: String(level * Math.exp(beyond)), beyond_failure: kind },
  ];
  const compare = (of: readonly Cells[]) => compareBeyondFailure(makeArms(of), settingsSchema.parse({}));

  it('is compared with failure inside studies that had both', () => {
    const [partials, drops] = compare(
      [
        ...pair('Wren 2001', 0.02),
        ...pair('Rail 2002', 0.025, 'partials', 44),
        ...pair('Teal 2003', 0.015, 'partials', 42.5),
        // Twice at failure: its mean is another, which only deviations from it take no note of.
        { study: 'Wren 2001', arm: 'failure again', followup_mean: '43' },
        // One of another kind, one without failure alone, one that stopped short: none of them counts.
        ...pair('Crane 2004', 0.5, 'load-drops'),
        { study: 'Heron 2005', arm: 'beyond', followup_mean: '60', beyond_failure: 'partials' },
        { study: 'Wren 2001', arm: 'short', attempted_failure: 'no', reserve_reps: '3', followup_mean: '60' },
      ].map((row) => ({ ...row, year: /\d{4}/u.exec(row.study ?? '')?.[0] ?? '' })),
    );
    expect(partials).toMatchObject({ kind: 'partials', studies: 3, rows: 7, failure: null });
    // The mean of the three, of which the one with two arms at failure weighs more.
    expectWithin(partials.difference?.estimate ?? Number.NaN, 0.02, 2e-3, 'difference');
    expect(drops).toMatchObject({ kind: 'load-drops', studies: 1, rows: 2, difference: null });
    expect(drops.failure?.kind).toBe('too-few-studies');
  });
});

describe('fatigue that cannot be fitted', () => {
  const drops = (change: (i: number) => Cells) =>
    analyseFatigue(
      makeArms(
        Array.from({ length: 16 }, (_, i) => ({
          study: `Study ${Math.floor(i / 4)}`,
          arm: `arm ${i % 2}`,
          attempted_failure: '',
          reserve_reps: String(3 * (i % 2)),
          outcome: 'fatigue',
          measure: 'jump height',
          unit: 'cm',
          hours_after: String(1 + 23 * (Math.floor(i / 2) % 2)),
          followup_mean: '38',
          ...change(i),
        })),
      ),
      settingsSchema.parse({}),
    ).byStatus.find(({ status }) => status === 'trained')?.failure;

  it('says which of studies, reserves and hours are too few', () => {
    expect(drops((i) => ({ study: 'Wren 2001', arm: `arm ${i}` }))).toMatchObject({ kind: 'too-few-studies' });
    expect(drops((i) => ({ reserve_reps: '2', arm: `arm ${i}` }))).toMatchObject({ kind: 'reserve-does-not-vary' });
    expect(drops((i) => ({ hours_after: '24', arm: `arm ${i}` }))).toEqual({
      kind: 'rank-deficient',
      reason: 'every row was measured after 24 hours; a return needs at least two times',
    });
    expect(drops(() => ({}))?.kind).not.toBe('too-few-studies');
  });
});
