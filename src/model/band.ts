/**
 * One band of loads as plain numbers: coefficients, curve, target and the rows behind them.
 */
import { intervalOf } from '../evidence/effectInterval.ts';
import type { Effect } from '../evidence/effects.ts';
import { RESTS_ON } from '../evidence/vocabulary.ts';
import { dot } from '../numerics/dot.ts';
import { type BandFit, fitEffects, rangeOf, targetOf } from './bandFit.ts';
import { listCoefficients } from './coefficients.ts';
import { countDistinctStudies, countPeople } from './counts.ts';
import { compareCurves } from './curveComparison.ts';
import { drawCurve } from './curvePoints.ts';
import type { FittedRow, UnfittedRow } from './fittedRow.ts';
import type { Fit } from './mixed.ts';
import { findReserveDifference } from './reserveDifference.ts';
import { type Band, isUnreliable } from './result.ts';
import { inferContrast } from './robust.ts';
import type { Settings } from './settings.ts';
import { studyWeights } from './studyWeights.ts';
import { NEAR_FAILURE } from './target.ts';
import { splitReserve } from './withinBetween.ts';

/** A band with the fit behind it. */
export interface SummarisedBand {
  readonly band: Band;
  readonly source: BandFit;
}

/** @param effects of the band's rows; there may be none, and the band then has a reason and no numbers */
export function summariseBand(effects: readonly Effect[], settings: Settings): SummarisedBand {
  const source = fitEffects(effects, settings);
  const { fit, failure } = source.outcome;
  const comparison = {
    curves: compareCurves(source, settings),
    withinBetween: splitReserve(effects, settings),
  };
  const common = { ...countRows(source), target: targetOf(source, settings), ...comparison };
  if (!fit) {
    return {
      source,
      band: {
        ...common,
        failure,
        coefficients: [],
        tau2: null,
        omega2: null,
        boundary: { tau2: false, omega2: false },
        likelihoodMaxima: null,
        logLikelihood: { reml: null, ml: null },
        aicc: null,
        atFailure: null,
        difference: { less: null, more: null },
        curvePoints: [],
        fitted: [],
        unfitted: listUnfittedRows(effects, settings.confidence),
        unreliable: false,
      },
    };
  }
  const { confidence } = settings;
  const { low: nearest, high: furthest } = rangeOf(source.reserves) ?? { low: 0, high: 0 };
  // Nothing is said of reserve 0 where nobody trained near it.
  const from = nearest > NEAR_FAILURE ? nearest : 0;
  const coefficients = listCoefficients(source.terms, fit, confidence);
  return {
    source,
    band: {
      ...common,
      failure: null,
      coefficients,
      tau2: fit.components?.tau2 ?? null,
      omega2: fit.components?.omega2 ?? null,
      boundary: fit.components?.boundary ?? { tau2: false, omega2: false },
      likelihoodMaxima: fit.components?.maxima ?? null,
      logLikelihood: fit.logLikelihood,
      aicc: fit.aicc,
      atFailure: from > 0 ? null : inferContrast(fit.inference, source.at(0), confidence),
      difference: findReserveDifference(fit.inference, source.at, furthest, confidence, from),
      curvePoints: drawCurve(fit, source.at, furthest, confidence, from),
      fitted: listFittedRows(effects, fit),
      unreliable: isUnreliable(coefficients),
    },
  };
}

function countRows({ effects, reserves, basis }: BandFit) {
  return {
    studies: countDistinctStudies(effects),
    rows: effects.length,
    restsOn: countRestsOn(effects),
    participants: countPeople(effects.map(({ arm }) => arm)),
    curve: basis.curve,
    studiedReserve: rangeOf(reserves),
    studiedLoad: rangeOf(effects.flatMap(({ arm }) => (arm.load_pct_1rm === null ? [] : [arm.load_pct_1rm]))),
  };
}

function countRestsOn(effects: readonly Effect[]): Band['restsOn'] {
  const counts = RESTS_ON.map((word) => [word, effects.filter(({ restsOn }) => restsOn === word).length] as const);
  return Object.fromEntries(counts.filter(([, count]) => count > 0));
}

/**
 * Rows as drawn. A study's weight is 1'Σ⁻¹1 of its block, what it counts for in a pooled mean; its
 * rows share it in proportion to their own precision. In the order of the table.
 */
function listFittedRows(effects: readonly Effect[], fit: Fit): FittedRow[] {
  const { data, whitening } = fit;
  const weights = new Float64Array(data.n);
  for (const [k, share] of studyWeights(fit).entries()) {
    const own = whitening.rootWeight.subarray(data.studyStart[k], data.studyStart[k + 1]);
    const precision = dot(own, own);
    own.forEach((root, i) => {
      weights[data.source[data.studyStart[k] + i]] = (share * root ** 2) / precision;
    });
  }
  const rows = effects.map((effect, index) => ({ ...drawRow(effect), weight: weights[index] }));
  return rows.sort((a, b) => a.line - b.line);
}

function listUnfittedRows(effects: readonly Effect[], confidence: number): UnfittedRow[] {
  const rows = effects.map((effect) => ({ ...drawRow(effect), ...intervalOf(effect, confidence) }));
  return rows.sort((a, b) => a.line - b.line);
}

function drawRow({ arm, y, v, restsOn }: Effect): Omit<FittedRow, 'weight'> {
  return {
    line: arm.line,
    study: arm.study,
    arm: arm.arm,
    year: arm.year,
    reserve: arm.reserve_reps ?? Number.NaN,
    load: arm.load_pct_1rm,
    n: arm.n,
    effect: y,
    standardError: Math.sqrt(v),
    restsOn,
  };
}
