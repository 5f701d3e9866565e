/**
 * The checks against slow, obvious versions of themselves: a study left out is a fit of the others; a
 * bootstrap resample is a regression run again; a correction for error in reserve recovers a slope that
 * error had flattened.
 */
import { readFileSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import {
  fitEffects,
  meanSlopeContrast,
  requireFit,
  slopeOf,
  targetOf,
  toObservations,
} from '../../src/model/bandFit.ts';
import { compareBeyondFailure } from '../../src/model/beyondFailure.ts';
import { bootstrapContrast } from '../../src/model/checks/bootstrap.ts';
import { accumulateByYear } from '../../src/model/checks/cumulative.ts';
import { measureInfluence } from '../../src/model/checks/influence.ts';
import { correctForReserveError } from '../../src/model/checks/reserveError.ts';
import { testSmallStudies } from '../../src/model/checks/smallStudies.ts';
import { compareWeightings, measureDeviations } from '../../src/model/checks/studies.ts';
import {
  levelsOf,
  SWEEP_CHOICES,
  type SweepOutcome,
  type SweepProgress,
  sweepChoices,
} from '../../src/model/checks/sweep.ts';
import { analyseFatigue } from '../../src/model/fatigue.ts';
import { analyseInFull } from '../../src/model/full.ts';
import { splitByLoad } from '../../src/model/loads.ts';
import { fitModel } from '../../src/model/mixed.ts';
import { applyContrast, inferContrast } from '../../src/model/robust.ts';
import { selectRows } from '../../src/model/selection.ts';
import { type SettingsInput, settingsSchema } from '../../src/model/settings.ts';
import { simulateTable } from '../../src/model/simulation.ts';
import { makeRandom } from '../../src/numerics/random.ts';
import { expectRelative, expectWithin } from '../support/closeness.ts';
import { makeArms } from '../support/tables.ts';

const { arms } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const settings = settingsSchema.parse({});
const { heavy } = splitByLoad(selectRows(arms, settings).effects, 60);
const band = fitEffects(heavy, settings);
const fit = requireFit(band);

describe('influence', () => {
  const { studies, residuals } = measureInfluence(band, settings);

  it('without a study is the fit of the others', () => {
    expect(studies.map(({ study }) => study)).toEqual(fit.data.studies);
    for (const { study, slopeWithout, targetWithout } of studies.slice(0, 4)) {
      const rest = fitEffects(
        heavy.filter(({ arm }) => arm.study !== study),
        settings,
      );
      expect(slopeWithout).toEqual(slopeOf(rest, 0.95));
      expectWithin(targetWithout.point ?? Number.NaN, targetOf(rest, settings).point ?? Number.NaN, 1e-9, study);
    }
  });

  it('has weights that sum to 1 and distances above 0', () => {
    expectWithin(
      studies.reduce((sum, { weight }) => sum + weight, 0),
      1,
      1e-12,
      'weights',
    );
    expect(studies.every(({ cooksDistance }) => cooksDistance !== null && cooksDistance > 0)).toBe(true);
  });

  it('measures Cook’s distance between the curves themselves, whatever knots and means of covariates the fit without the study has', () => {
    // The same space of curves in another basis, in which coefficients compare.
    const compare = (chosen: SettingsInput) => {
      const asked = settingsSchema.parse(chosen);
      const whole = fitEffects(heavy, asked);
      const { p, modelCovariance } = requireFit(whole).inference;
      const m = inverse(new Matrix(Array.from({ length: p }, (_, i) => [...modelCovariance.slice(i * p, i * p + p)])));
      const found = measureInfluence(whole, asked).studies;
      for (const { study, cooksDistance } of found.slice(0, 4)) {
        const rest = heavy.filter(({ arm }) => arm.study !== study);
        const kept = whole.columns.map((column) => column.filter((_, i) => heavy[i].arm.study !== study));
        const { fit: without } = fitModel(toObservations(rest), kept, asked);
        const shift = Matrix.columnVector(
          requireFit(whole).inference.coefficients.map(
            (value, j) => value - (without?.inference.coefficients[j] ?? Number.NaN),
          ),
        );
        const slow = shift.transpose().mmul(m).mmul(shift).get(0, 0) / p;
        expectRelative(cooksDistance ?? Number.NaN, slow, 1e-6, study);
      }
      return found;
    };
    compare({ curve: 'line', adjust: ['load', 'training-status', 'weeks', 'weekly-sets'] });
    compare({ curve: 'quadratic', weighting: 'precision', adjust: ['weeks'] });
    // Knots that move: a curve that is nearly the same lies near, where coefficients of the same name lie far apart.
    const asked = settingsSchema.parse({ curve: 'spline' });
    const { light } = splitByLoad(selectRows(arms, asked).effects, 60);
    const chough = measureInfluence(fitEffects(light, asked), asked).studies.find(
      ({ study }) => study === 'Chough 2012',
    );
    expect(chough?.cooksDistance).toBeLessThan(0.05);
  });

  it('measures distances and residuals under equal weights in the residual variance, whatever unit effects are in', () => {
    const asked = settingsSchema.parse({ weighting: 'equal', curve: 'line' });
    const found = measureInfluence(fitEffects(heavy, asked), asked);
    const squares = found.residuals.reduce((sum, { standardised }) => sum + standardised ** 2, 0);
    // Internally standardised residuals have a mean square of about 1.
    expectWithin(squares / heavy.length, 1, 0.05, 'mean square');
    const tenfold = heavy.map((effect) => ({ ...effect, y: 10 * effect.y, v: 100 * effect.v }));
    const larger = measureInfluence(fitEffects(tenfold, asked), asked);
    larger.studies.forEach(({ study, cooksDistance }, k) => {
      expectRelative(cooksDistance ?? Number.NaN, found.studies[k].cooksDistance ?? Number.NaN, 1e-9, study);
    });
  });

  it('standardises residuals as whole matrices do', () => {
    const { tau2 = 0, omega2 = 0 } = fit.components ?? {};
    const n = heavy.length;
    const sigma = new Matrix(
      heavy.map((a, i) =>
        heavy.map((b, j) => {
          if (a.arm.study !== b.arm.study) return 0;
          const shared = a.arm.cohort !== null && a.arm.cohort === b.arm.cohort;
          return tau2 + (i === j ? a.v + omega2 : shared ? 0.5 * Math.sqrt(a.v * b.v) : 0);
        }),
      ),
    );
    const x = new Matrix(heavy.map(({ arm }) => [...band.basis.at(arm.reserve_reps ?? 0)]));
    const w = inverse(sigma);
    const m = inverse(x.transpose().mmul(w).mmul(x));
    const y = Matrix.columnVector(heavy.map((effect) => effect.y));
    const e = Matrix.sub(y, x.mmul(m).mmul(x.transpose()).mmul(w).mmul(y));
    const spread = Matrix.sub(sigma, x.mmul(m).mmul(x.transpose()));
    expect(residuals).toHaveLength(n);
    heavy.forEach(({ arm }, i) => {
      const found = residuals.find(({ line }) => line === arm.line)?.standardised ?? Number.NaN;
      expectRelative(found, e.get(i, 0) / Math.sqrt(spread.get(i, i)), 1e-8, `line ${arm.line}`, 1);
    });
  });
});

describe('the studies one by one', () => {
  it('lie from the curve as whole matrices say, with an interval of 1.96 of those errors', () => {
    const { omega2 = 0 } = fit.components ?? {};
    const deviations = measureDeviations(band, settings);
    expect(deviations.map(({ study }) => study)).toEqual(fit.data.studies);
    let withCohorts = 0;
    for (const { study, rows, deviation, low, high } of deviations) {
      const own = heavy.filter(({ arm }) => arm.study === study);
      expect(rows).toBe(own.length);
      const sigma = new Matrix(
        own.map((a, i) =>
          own.map((b, j) => {
            if (i === j) return a.v + omega2;
            return a.arm.cohort !== null && a.arm.cohort === b.arm.cohort ? 0.5 * Math.sqrt(a.v * b.v) : 0;
          }),
        ),
      );
      if (sigma.sum() > sigma.trace()) withCohorts++;
      const w = inverse(sigma);
      const beta = fit.inference.coefficients;
      const e = Matrix.columnVector(
        own.map(({ arm, y }) => y - applyContrast(band.at(arm.reserve_reps ?? Number.NaN), beta)),
      );
      const mean = w.mmul(e).sum() / w.sum();
      expectRelative(deviation, mean, 1e-9, study, Math.sqrt(1 / w.sum()));
      expectRelative(high - low, 2 * 1.959963984540054 * Math.sqrt(1 / w.sum()), 1e-9, `width of ${study}`);
      expectRelative((high + low) / 2, deviation, 1e-9, `middle of ${study}`, high - low);
    }
    expect(withCohorts).toBeGreaterThan(5);
  });

  it('share all weight under each weighting, equal weights by their rows, the chosen one with its own slope', () => {
    const comparisons = compareWeightings(band, settings);
    expect(comparisons.map(({ weighting }) => weighting)).toEqual(['mixed', 'precision', 'equal']);
    for (const { weighting, shares } of comparisons) {
      expectWithin(
        shares.reduce((sum, { share }) => sum + share, 0),
        1,
        1e-12,
        weighting,
      );
      expect(shares.map(({ study }) => study)).toEqual(fit.data.studies);
    }
    const [mixed, , equal] = comparisons;
    expect(mixed.slope).toEqual(slopeOf(band, 0.95));
    for (const { study, share } of equal.shares) {
      expectWithin(share, heavy.filter(({ arm }) => arm.study === study).length / heavy.length, 1e-12, study);
    }
  });
});

describe('the wild cluster bootstrap', () => {
  it('is the same for the same seed and near the t approximation on the shipped table', () => {
    const contrast = meanSlopeContrast(band.at, 5);
    const first = bootstrapContrast(fit, contrast, 1);
    expect(bootstrapContrast(fit, contrast, 1)).toEqual(first);
    expect(first.p).toBeLessThan(0.01);
    expect(first.weights).toBe('signs');
  });

  it('with few studies takes six points, and its p is that of resamples fitted one by one', () => {
    const { observations, reserves } = simulateTable(
      { intercept: 0.07, slope: -0.001, tau: 0.02, omega: 0.008, rho: 0 },
      8,
      makeRandom(5),
    );
    // Precision weights: the refit of a resample is then an ordinary call of the model.
    const options = { rho: 0, weighting: 'precision' } as const;
    const columns = [reserves.map(() => 1), [...reserves]];
    const small = fitModel(observations, columns, options).fit;
    if (!small) throw new Error('expected a fit');
    const test = bootstrapContrast(small, [0, 1], 1);
    expect(test.weights).toBe('six points');
    // The null: a weighted mean, its residuals multiplied study by study.
    const total = observations.reduce((sum, { v }) => sum + 1 / v, 0);
    const mean = observations.reduce((sum, { y, v }) => sum + y / v, 0) / total;
    const { uniform } = makeRandom(99);
    const points = [-Math.sqrt(1.5), -1, -Math.sqrt(0.5), Math.sqrt(0.5), 1, Math.sqrt(1.5)];
    const RESAMPLES = 1500;
    let extreme = 0;
    for (let b = 0; b < RESAMPLES; b++) {
      const weights = new Map(small.data.studies.map((study) => [study, points[Math.floor(6 * uniform())]]));
      const resample = observations.map((one) => ({
        ...one,
        y: mean + (weights.get(one.study) ?? 0) * (one.y - mean),
      }));
      const again = fitModel(resample, columns, options).fit;
      if (!again) throw new Error('expected a fit');
      const { estimate, standardError } = inferContrast(again.inference, [0, 1], 0.95);
      if (Math.abs(estimate / standardError) >= Math.abs(test.t)) extreme++;
    }
    // Two simulations of a share: four standard errors of their difference.
    const p = extreme / RESAMPLES;
    expectWithin(test.p, p, 4 * Math.sqrt(p * (1 - p) * (1 / RESAMPLES + 1 / test.resamples)) + 0.001, 'p');
  });
});

describe('the correction for error in reserve', () => {
  /** Arms whose reserve is reported with an SD of 2 around the truth. */
  function noisyArms(seed: number) {
    const { normal, uniform } = makeRandom(seed);
    return makeArms(
      Array.from({ length: 240 }, (_, i) => {
        const trueReserve = 3 + 9 * uniform();
        const reported = Math.min(30, Math.max(0, trueReserve + 2 * normal()));
        const growth = 0.1 - 0.006 * trueReserve + 0.002 * normal();
        return {
          study: `Study ${Math.floor(i / 4)}`,
          arm: `arm ${i % 4}`,
          attempted_failure: '',
          reserve_reps: String(reported),
          reserve_sd: '2',
          followup_mean: String(40 * Math.exp(growth)),
          followup_sd: '6',
          correlation: '0.995',
        };
      }),
    );
  }

  it('takes back most of the flattening that a known error made', () => {
    const effects = selectRows(noisyArms(4), settings).effects;
    const check = correctForReserveError(fitEffects(effects, settings), settings);
    // Reliability 6.75 / (6.75 + 4) flattens −0.006 to about −0.0038; a parabola takes back most of it.
    expectWithin(check.naive ?? Number.NaN, -0.0038, 0.0005, 'as fitted');
    expect(check.corrected).toBeLessThan(-0.005);
    expect(check.corrected).toBeGreaterThan(-0.0067);
    expect(check.ratio).toBeGreaterThan(1.3);
    expect(check.rowsTakenAsExact).toBe(0);
  });

  it('says so where no row states its error, and corrects nothing', () => {
    const exact = selectRows(
      arms.map((arm) => ({ ...arm, reserve_sd: null })),
      settings,
    ).effects;
    const check = correctForReserveError(fitEffects(exact, settings), settings);
    expect(check.corrected).toBeNull();
    expect(check.reason).toMatch(/no row says/u);
  });
});

describe('the small-study pattern', () => {
  it('finds a slope on the standard error that was put in', () => {
    const tilted = heavy.map((effect) => ({ ...effect, y: effect.y + 3 * Math.sqrt(effect.v) }));
    const before = testSmallStudies(band, settings).slope?.estimate ?? Number.NaN;
    const after = testSmallStudies(fitEffects(tilted, settings), settings).slope;
    // The variance components may move a little with the tilt, so not to the last digit.
    expectWithin(after?.estimate ?? Number.NaN, before + 3, 1e-6, 'slope');
  });

  it('reads the precision of a standardised change alike from a printed variance and from a computed one', () => {
    const asked = settingsSchema.parse({ metric: 'standardised', curve: 'line' });
    const { effects } = selectRows(arms, asked);
    const computed = splitByLoad(effects, 60).heavy.filter(({ correlation }) => correlation !== null);
    // The same rows with their effect and variance as a paper would print them.
    const printed = computed.map((effect, i) => (i % 2 ? effect : { ...effect, correlation: null }));
    const [one, other] = [computed, printed].map((rows) => testSmallStudies(fitEffects(rows, asked), asked));
    expect(other).toEqual(one);
    computed.forEach(({ arm, correlation }) => {
      const shown = one.rows.find(({ line }) => line === arm.line)?.standardError ?? Number.NaN;
      expectRelative(shown, Math.sqrt((2 * (1 - (correlation ?? 0))) / (arm.n ?? 0)), 1e-12, `line ${arm.line}`);
    });
    // Equal people and equal correlations are equally precise, whatever their effects.
    const even = computed.map((effect) => ({
      ...effect,
      arm: { ...effect.arm, n: 20 },
      v: 0.01 + effect.y ** 2 / 40,
    }));
    expect(testSmallStudies(fitEffects(even, asked), asked).reason).toBe('every row has standard error 0.100');
  });

  it('is refused where every row is equally precise', () => {
    const even = fitEffects(
      heavy.map((effect) => ({ ...effect, v: 1e-4 })),
      settings,
    );
    expect(testSmallStudies(even, settings).reason).toMatch(/every row has standard error/u);
  });
});

describe('the cumulative answer', () => {
  it('ends at the answer of all studies, and begins with a reason', () => {
    const years = accumulateByYear(band, settings);
    expect(years.map(({ year }) => year)).toEqual([...years.map(({ year }) => year)].sort((a, b) => a - b));
    expect(years[0].reason).toMatch(/at least 3 are needed/u);
    expectWithin(
      years.at(-1)?.target.point ?? Number.NaN,
      targetOf(band, settings).point ?? Number.NaN,
      1e-9,
      'target',
    );
  });
});

describe('the sweep', () => {
  /** A whole sweep, with what it reported on its way. */
  const finish = (chosen: SettingsInput = {}) => {
    const steps = sweepChoices(arms, settingsSchema.parse(chosen));
    const reports: SweepProgress[] = [];
    let step = steps.next();
    while (!step.done) {
      reports.push(step.value);
      step = steps.next();
    }
    return { reports, sweep: step.value };
  };
  const { reports, sweep } = finish();

  it('covers every combination once, and reports progress', () => {
    const total = Object.values(SWEEP_CHOICES).reduce((product, levels) => product * levels.length, 1);
    expect(total).toBeGreaterThanOrEqual(1024);
    expect(reports.length).toBeGreaterThan(20);
    expect(reports).toEqual(reports.map((_, i) => ({ done: i * reports[1].done, total })));
    for (const { outcomes } of [sweep.light, sweep.heavy]) {
      expect(outcomes).toHaveLength(total);
      expect(new Set(outcomes.map(({ combination }) => JSON.stringify(combination))).size).toBe(total);
    }
  });

  it.each([
    ['as the site has it', {}, {}],
    [
      'all choices otherwise',
      { metric: 'standardised', correlation: 0.7, rho: 0.2, split: 70, curve: 'log', weighting: 'equal' },
      { metric: 'standardised', rho: 0.2, split: 70, curve: 'log', weighting: 'equal', growth: 0.7 },
    ],
    ['adjusted', { adjust: 'load and training status' }, { adjust: ['load', 'training-status'] }],
    ['fewer studies', { inclusion: 'without high concerns' }, { include: { concerns: ['low', 'some'] } }],
  ] as const)('finds the target of the settings themselves: %s', (_, levels, chosen) => {
    const combination: SweepOutcome['combination'] = {
      metric: 'log-ratio',
      correlation: 0.9,
      rho: 0.8,
      split: 60,
      curve: 'flexible',
      weighting: 'mixed',
      adjust: 'nothing',
      inclusion: 'all studies',
      ...levels,
    };
    const { growth = 0.9, ...rest } = { growth: 0.9, ...chosen };
    const asked = settingsSchema.parse({ rho: 0.8, split: 60, ...rest, assumedCorrelation: { growth } });
    const parts = splitByLoad(selectRows(arms, asked).effects, combination.split);
    for (const name of ['light', 'heavy'] as const) {
      const own = sweep[name].outcomes.filter((outcome) => isDeepStrictEqual(outcome.combination, combination));
      const target = targetOf(fitEffects(parts[name], asked), asked);
      expect(own).toHaveLength(1);
      expectWithin(own[0].point ?? Number.NaN, target.point ?? Number.NaN, 1e-9, name);
      expect(own[0].reachedEdge).toBe(target.reachedEdge);
    }
  });

  it.each(['light', 'heavy'] as const)('shares the variance of targets out as an analysis of variance: %s', (name) => {
    const { outcomes, shares, withoutTarget, atEdge } = sweep[name];
    const found = outcomes
      .filter(({ point }) => point !== null)
      .map(({ point, ...rest }) => ({ ...rest, y: Number(point) }));
    expect(found.length).toBeGreaterThan(500);
    expect(withoutTarget).toBe(outcomes.length - found.length);
    expect(atEdge).toBe(outcomes.filter(({ point, reachedEdge }) => point !== null && reachedEdge).length);
    const squares = (values: readonly number[]) => {
      let sum = 0;
      for (const a of values) for (const b of values) sum += (a - b) ** 2;
      // The sum of squares about the mean, from all pairs, so that no mean is taken.
      return sum / (2 * values.length);
    };
    const total = squares(found.map(({ y }) => y));
    expect(shares.map(({ choice }) => choice).sort()).toEqual(Object.keys(SWEEP_CHOICES).sort());
    for (const { choice, share } of shares) {
      const within = new Set<unknown>(found.map(({ combination }) => combination[choice]));
      expect(within.size).toBe(levelsOf(choice).length);
      let residual = 0;
      for (const level of within) {
        residual += squares(found.filter(({ combination }) => combination[choice] === level).map(({ y }) => y));
      }
      // Differences of sums of a million squares: 1e-10 of the whole.
      expectWithin(share, 1 - residual / total, 1e-10, choice);
    }
    expect(shares.map(({ share }) => share)).toEqual(shares.map(({ share }) => share).sort((a, b) => b - a));
    expect(shares[0].share).toBeGreaterThan(0.1);
  });

  it.each(['light', 'heavy'] as const)('gives quantiles that so many targets lie below: %s', (name) => {
    const points = sweep[name].outcomes.flatMap(({ point }) => (point === null ? [] : [point]));
    [0.05, 0.25, 0.5, 0.75, 0.95].forEach((share, i) => {
      const quantile = sweep[name].quantiles[i];
      const below = points.filter((point) => point < quantile).length;
      const notAbove = points.filter((point) => point <= quantile).length;
      // Of n sorted values the quantile lies between those at places share (n − 1) and the next.
      expect(below).toBeLessThanOrEqual(Math.ceil(share * (points.length - 1)));
      expect(notAbove).toBeGreaterThanOrEqual(Math.floor(share * (points.length - 1)) + 1);
    });
    expect(sweep[name].quantiles).toHaveLength(5);
  });

  it('counts at the largest reserve studied targets alone, also where most combinations see no difference by reserve', () => {
    const { light, heavy } = finish({ outcome: 'strength', confidence: 0.8 }).sweep;
    for (const { outcomes, withoutTarget, atEdge } of [light, heavy]) {
      expect(withoutTarget).toBeGreaterThan(outcomes.length / 3);
      expect(outcomes.some(({ point, reachedEdge }) => point === null && reachedEdge)).toBe(true);
      expect(atEdge).toBe(outcomes.filter(({ point, reachedEdge }) => point !== null && reachedEdge).length);
      expect(atEdge).toBeLessThanOrEqual(outcomes.length - withoutTarget);
    }
  });

  it('keeps the reader’s own filter of concerns, and gives a reasoned result where no row is left', () => {
    const low = finish({ include: { concerns: ['low'] } }).sweep.heavy;
    const points = (inclusion: string) =>
      low.outcomes.filter(({ combination }) => combination.inclusion === inclusion).map(({ point }) => point);
    expect(points('all studies')).toEqual(points('without high concerns'));
    const none = finish({ include: { muscle: ['no such muscle'] } }).sweep.heavy;
    expect([none.withoutTarget, none.atEdge, none.quantiles]).toEqual([none.outcomes.length, 0, []]);
    expect(none.shares.map(({ share }) => share)).toEqual(Object.keys(SWEEP_CHOICES).map(() => 0));
  });

  it('keeps a filter on high concerns alone, which leaving those out would empty', () => {
    const { outcomes } = finish({ include: { concerns: ['high'] } }).sweep.heavy;
    const points = (inclusion: string) =>
      outcomes.filter(({ combination }) => combination.inclusion === inclusion).map(({ point }) => point);
    expect(points('all studies')).toEqual(points('without high concerns'));
    expect(points('all studies').some((point) => point !== null)).toBe(true);
  });

  it('can be stopped between its steps', () => {
    const steps = sweepChoices(arms, settings);
    steps.next();
    expect(steps.return(undefined as never).done).toBe(true);
    expect(steps.next().done).toBe(true);
  });
});

describe('the whole analysis', () => {
  const full = analyseInFull(arms, settings);

  it('is plain JSON', () => {
    expect(JSON.parse(JSON.stringify(full))).toEqual(full);
  });

  it('finds no effect of reserve on strength that matters, but one of load (the invented truth)', () => {
    expect(full.strength.reserve?.p).toBeGreaterThan(0.05);
    expect(full.strength.load?.ciLow).toBeGreaterThan(0);
    expect(full.strength.equivalence?.verdict).toBe('inside');
    expect(full.strength.equivalence?.p).toBeLessThan(0.05);
  });

  it.each([
    ['untrained', 48],
    ['trained', 24],
  ])('finds the fatigue of %s people gone in about %d h (the invented truth)', (status, hours) => {
    const atFailure = full.fatigue.byStatus.find((one) => one.status === status)?.recovery[0];
    expect(atFailure?.reserve).toBe(0);
    expect(atFailure?.low).toBeLessThan(hours);
    expect(atFailure?.high).toBeGreaterThan(hours);
  });

  it('compares work beyond failure with failure in the studies that did both', () => {
    expect(full.beyondFailure.map(({ kind }) => kind)).toEqual(['partials', 'load-drops']);
    for (const { kind, studies, difference, failure } of full.beyondFailure) {
      const did = (chosen: (arm: (typeof arms)[number]) => boolean) =>
        new Set(
          arms
            .filter((arm) => arm.outcome === 'growth' && arm.effect_metric !== 'standardised' && chosen(arm))
            .map(({ study }) => study),
        );
      const atFailure = did((arm) => arm.reserve_reps === 0 && (arm.beyond_failure ?? 'none') === 'none');
      const both = [...did((arm) => arm.beyond_failure === kind)].filter((study) => atFailure.has(study));
      expect(studies).toBe(both.length);
      expect(difference?.df).toBeGreaterThan(4);
      expect(failure).toBeNull();
    }
  });

  it('compares no work beyond failure where two studies did both, and says that they are too few', () => {
    const names = [...new Set(arms.filter((arm) => arm.beyond_failure === 'partials').map(({ study }) => study))];
    const few = arms.filter((arm) => arm.beyond_failure !== 'partials' || names.indexOf(arm.study) < 2);
    const [partials] = compareBeyondFailure(few, settings);
    expect(partials).toMatchObject({ studies: 2, difference: null, failure: { kind: 'too-few-studies' } });
  });
});

describe('fatigue', () => {
  const drop = (status: string, study: number, reserve: number, hours: number) => {
    // Effects that lie exactly on a curve have no error to infer from: 5 millionths either way.
    const error = 5e-6 * (((study * (1 + reserve / 3) + hours) % 3) - 1);
    const fraction = (0.15 - 0.01 * reserve) * Math.exp(-hours / 20) + error;
    return {
      study: `${status} ${study}`,
      training_status: status,
      arm: `reserve ${reserve}`,
      attempted_failure: '',
      reserve_reps: String(reserve),
      outcome: 'fatigue',
      measure: 'jump height',
      hours_after: String(hours),
      followup_mean: String(40 * Math.exp(-fraction)),
      followup_sd: '6',
      correlation: '0.99',
    };
  };
  const rows = [1, 2, 3, 4].flatMap((study) =>
    [0, 3].flatMap((reserve) => [1, 24, 48].map((hours) => drop('trained', study, reserve, hours))),
  );
  const [untrained, trained] = analyseFatigue(makeArms(rows), settings).byStatus;

  it('recovers start, slope and decay from data with hardly an error', () => {
    expectRelative(trained.decay?.hours ?? Number.NaN, 20, 1e-4, 'T');
    expectRelative(trained.start?.estimate ?? Number.NaN, 0.15, 1e-4, 'start');
    expectRelative(trained.perReserve?.estimate ?? Number.NaN, -0.01, 1e-3, 'per repetition');
    // T ln(0.15 / margin), the margin of 2 % being −ln 0.98.
    expectRelative(trained.recovery[0].hours, 20 * Math.log(0.15 / -Math.log(0.98)), 1e-3, 'recovery');
  });

  it('is a typed refusal where a status has no study', () => {
    expect(untrained.failure?.kind).toBe('too-few-studies');
    expect(untrained.recovery).toEqual([]);
  });
});
