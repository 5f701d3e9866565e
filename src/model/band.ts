/**
 * One band of loads: its fit, curve and target, from effects to plain numbers.
 */
import type { Effect } from '../evidence/effects.ts';
import { studentQuantile } from '../numerics/distributions.ts';
import { type CurveBasis, hasDistinctKnots, makeCurve } from './curve.ts';
import { type Fit, type FitOutcome, fitModel } from './mixed.ts';
import type { Band, Coefficient, CurvePoint, FitFailure, FittedRow } from './result.ts';
import { inferContrast } from './robust.ts';
import { COVARIATES } from './selection.ts';
import type { Adjustment, Settings } from './settings.ts';
import { findTarget, noTarget } from './target.ts';

/** Points of the drawn curve: steps of an eighth of a repetition over a range of 10. */
const CURVE_POINTS = 81;

/** Below this df a Satterthwaite interval is not to be relied on (Tipton 2015, Psychol Methods 20:375). */
const LEAST_RELIABLE_DF = 4;

/** A band with what other parts of the analysis need of its fit; `fit` is null where it failed. */
export interface FittedBand {
  readonly band: Band;
  readonly fit: Fit | null;
  /** Design row at a reserve, covariates at their means. */
  readonly at: CurveBasis['at'];
}

export function fitBand(effects: readonly Effect[], settings: Settings): FittedBand {
  const reserves = effects.map(({ arm }) => arm.reserve_reps ?? Number.NaN);
  const basis = makeCurve(settings.curve, reserves);
  const covariates = settings.adjust.map((name) => centredCovariate(effects, name));
  const at = (reserve: number) => [...basis.at(reserve), ...covariates.map(() => 0)];
  const outcome = fitEffects(effects, reserves, basis, covariates, settings);
  const band =
    outcome.fit === null
      ? failedBand(effects, reserves, settings, outcome.failure)
      : describe(effects, reserves, settings, outcome.fit, at, [...basis.terms, ...covariates.map(({ name }) => name)]);
  return { band, fit: outcome.fit, at };
}

interface Covariate {
  readonly name: string;
  /** Value minus the mean over the rows. */
  readonly column: readonly number[];
}

/** Centred, so that the curve is that of rows with average covariates. */
function centredCovariate(effects: readonly Effect[], adjustment: Adjustment): Covariate {
  const { name, of } = COVARIATES[adjustment];
  const values = effects.map(({ arm }) => of(arm) ?? Number.NaN);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return { name, column: values.map((value) => value - mean) };
}

function fitEffects(
  effects: readonly Effect[],
  reserves: readonly number[],
  basis: CurveBasis,
  covariates: readonly Covariate[],
  settings: Settings,
): FitOutcome {
  const range = rangeOf(reserves);
  if (range && range.low === range.high) {
    return refused('reserve-does-not-vary', `every row has reserve ${range.low}; a slope needs at least two`);
  }
  if (range && basis.knots && !hasDistinctKnots(basis.knots)) {
    return refused(
      'knots-coincide',
      `the spline's knots coincide (${basis.knots.join(', ')}): too many rows share one reserve`,
    );
  }
  const columns = basis.terms.map((_, j) => reserves.map((reserve) => basis.at(reserve)[j]));
  return fitModel(
    effects.map(({ arm, y, v }) => ({ study: arm.study, cohort: arm.cohort, y, v })),
    [...columns, ...covariates.map(({ column }) => column)],
    settings,
  );
}

function refused(kind: FitFailure['kind'], reason: string): FitOutcome {
  return { fit: null, failure: { kind, reason } };
}

function describe(
  effects: readonly Effect[],
  reserves: readonly number[],
  settings: Settings,
  fit: Fit,
  at: CurveBasis['at'],
  terms: readonly string[],
): Band {
  const { inference, components } = fit;
  const studied = rangeOf(reserves) ?? { low: Number.NaN, high: Number.NaN };
  const coefficients = terms.map((term, j): Coefficient => {
    const unit = terms.map((_, i) => (i === j ? 1 : 0));
    return {
      term,
      ...inferContrast(inference, unit, settings.confidence),
      modelStandardError: fit.modelStandardErrors[j],
    };
  });
  return {
    ...counts(effects, reserves, settings),
    failure: null,
    coefficients,
    tau2: components?.tau2 ?? null,
    omega2: components?.omega2 ?? null,
    boundary: components?.boundary ?? { tau2: false, omega2: false },
    logLikelihood: fit.logLikelihood,
    aicc: fit.aicc,
    target: findTarget(inference, at, {
      keptShare: settings.keptShare,
      confidence: settings.confidence,
      furthest: studied.high,
      nearest: studied.low,
    }),
    atFailure: inferContrast(inference, at(0), settings.confidence),
    curvePoints: drawCurve(fit, at, studied.high, settings.confidence),
    fitted: describeRows(effects, fit),
    unreliable: coefficients.some(({ df }) => df < LEAST_RELIABLE_DF),
  };
}

function failedBand(
  effects: readonly Effect[],
  reserves: readonly number[],
  settings: Settings,
  failure: FitFailure,
): Band {
  return {
    ...counts(effects, reserves, settings),
    failure,
    coefficients: [],
    tau2: null,
    omega2: null,
    boundary: { tau2: false, omega2: false },
    logLikelihood: { reml: null, ml: null },
    aicc: null,
    target: noTarget(settings.keptShare, `no target: no fit was possible, since ${failure.reason}`),
    atFailure: null,
    curvePoints: [],
    fitted: [],
    unreliable: false,
  };
}

function counts(effects: readonly Effect[], reserves: readonly number[], settings: Settings) {
  const loads = effects.flatMap(({ arm }) => (arm.load_pct_1rm === null ? [] : [arm.load_pct_1rm]));
  return {
    studies: new Set(effects.map(({ arm }) => arm.study)).size,
    rows: effects.length,
    participants: countParticipants(effects),
    curve: settings.curve,
    studiedReserve: rangeOf(reserves),
    studiedLoad: rangeOf(loads),
  };
}

/** Rows of a cohort are the same people; a row without one is its arm's people. */
function countParticipants(effects: readonly Effect[]): number {
  const people = new Map<string, number>();
  for (const { arm } of effects) {
    const group = JSON.stringify([arm.study, arm.cohort ? 'cohort' : 'arm', arm.cohort || arm.arm]);
    people.set(group, Math.max(people.get(group) ?? 0, arm.n));
  }
  return [...people.values()].reduce((sum, n) => sum + n, 0);
}

function drawCurve(fit: Fit, at: CurveBasis['at'], furthest: number, confidence: number): CurvePoint[] {
  const { components, inference } = fit;
  return Array.from({ length: CURVE_POINTS }, (_, i) => {
    const reserve = (furthest * i) / (CURVE_POINTS - 1);
    const { estimate, standardError, df, ciLow, ciHigh } = inferContrast(inference, at(reserve), confidence);
    const spread = components ? Math.sqrt(standardError ** 2 + components.tau2 + components.omega2) : null;
    const reach = spread === null ? null : studentQuantile((1 + confidence) / 2, df) * spread;
    return {
      reserve,
      estimate,
      ciLow,
      ciHigh,
      df,
      predictionLow: reach === null ? null : estimate - reach,
      predictionHigh: reach === null ? null : estimate + reach,
    };
  });
}

/**
 * Rows as drawn. A study's weight is 1'Σ⁻¹1 of its block, what it counts for in a pooled mean; its
 * rows share it in proportion to their own precision.
 */
function describeRows(effects: readonly Effect[], fit: Fit): FittedRow[] {
  const { data, whitening } = fit;
  const weights = new Float64Array(data.n);
  let total = 0;
  for (let k = 0; k < data.studies.length; k++) {
    let study = 0;
    let precision = 0;
    for (let i = data.studyStart[k]; i < data.studyStart[k + 1]; i++) {
      study += whitening.whitenedOnes[i] ** 2;
      precision += whitening.rootWeight[i] ** 2;
    }
    total += study;
    for (let i = data.studyStart[k]; i < data.studyStart[k + 1]; i++) {
      weights[data.source[i]] = (study * whitening.rootWeight[i] ** 2) / precision;
    }
  }
  return effects.map(({ arm, y, v }, index) => ({
    line: arm.line,
    study: arm.study,
    arm: arm.arm,
    year: arm.year,
    reserve: arm.reserve_reps ?? Number.NaN,
    load: arm.load_pct_1rm,
    n: arm.n,
    effect: y,
    standardError: Math.sqrt(v),
    weight: weights[index] / total,
  }));
}

function rangeOf(values: readonly number[]): { low: number; high: number } | null {
  if (values.length === 0) return null;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return { low, high };
}
