/**
 * All loads in one fit: the curve of reserve may change steadily with load.
 *
 *     y = f(r) + (load − L₀) g(r) + …    f, g of the chosen shape, L₀ the mean load
 *
 * It serves loads near the split, where light and heavy rows both have something to say, and shows
 * whether cutting loads in two hides something: the interaction is the change of the slope with load.
 */
import { mean } from 'simple-statistics';
import type { Effect } from '../evidence/effects.ts';
import { centreCovariates, rangeOf, reservesOf, toObservations } from './bandFit.ts';
import { fitCarried } from './carriedFit.ts';
import { listCoefficients } from './coefficients.ts';
import type { RobustInference } from './cr2.ts';
import { type CurveBasis, makeCurve } from './curve.ts';
import { refuseDesign } from './designRefusal.ts';
import type { FitFailure, Joint, JointTarget } from './result.ts';
import type { Settings } from './settings.ts';
import { findTarget, SCAN_STEPS } from './target.ts';

/** Per cent of 1RM between the loads that targets are listed for. */
const LOAD_STEP = 5;

export interface JointFit {
  readonly basis: CurveBasis;
  readonly inference: RobustInference;
  readonly joint: Joint;
  /** Target at any load inside the studied range; null outside it. */
  readonly targetAt: (load: number) => JointTarget | null;
  /** Design row at a reserve and a load in per cent of 1RM, other covariates at their means. */
  readonly at: (load: number) => CurveBasis['at'];
}

export type JointOutcome =
  | { readonly fit: JointFit; readonly failure: null }
  | { readonly fit: null; readonly failure: FitFailure };

/** @param all effects of the rows selected; those without a load are not read */
export function fitJoint(all: readonly Effect[], settings: Settings): JointOutcome {
  const effects = all.filter(({ arm }) => arm.load_pct_1rm !== null);
  const reserves = reservesOf(effects);
  const loads = effects.map(({ arm }) => arm.load_pct_1rm ?? Number.NaN);
  const studiedLoad = rangeOf(loads);
  const studiedReserve = rangeOf(reserves);
  if (!studiedLoad || !studiedReserve) {
    return { fit: null, failure: { kind: 'no-rows', reason: 'no row with a load is left to fit' } };
  }
  const basis = makeCurve(settings.curve, reserves);
  const refusal = refuseDesign(reserves, basis);
  if (refusal) return { fit: null, failure: refusal };
  const meanLoad = mean(loads);
  // Load is in the design already; the other covariates are held at their means.
  const adjustments = settings.adjust.filter((name) => name !== 'load');
  const covariates = centreCovariates(effects, adjustments);
  const row = (reserve: number, load: number) => designRow(basis, reserve, load - meanLoad);
  const rows = reserves.map((reserve, i) => row(reserve, loads[i]));
  const columns = [
    ...rows[0].map((_, j) => rows.map((values) => values[j])),
    ...covariates.map(({ column }) => column),
  ];
  const outcome = fitCarried(toObservations(effects), columns, settings);
  if (!outcome.fit) return { fit: null, failure: outcome.failure };
  const { inference, components } = outcome.fit;
  const at = (load: number) => (reserve: number) => [...row(reserve, load), ...covariates.map(() => 0)];
  const targetAt = (load: number, step: number = SCAN_STEPS.fine): JointTarget | null => {
    if (load < studiedLoad.low || load > studiedLoad.high) return null;
    const target = findTarget(inference, at(load), {
      keptShare: settings.keptShare,
      confidence: settings.confidence,
      furthest: studiedReserve.high,
      nearest: studiedReserve.low,
      studies: inference.parts.length,
      step,
    });
    return { load, ...target };
  };
  const terms = [...jointTerms(basis), ...covariates.map(({ name }) => name)];
  const joint: Joint = {
    meanLoad,
    studiedLoad,
    studiedReserve,
    coefficients: listCoefficients(terms, outcome.fit, settings.confidence),
    tau2: components?.tau2 ?? null,
    omega2: components?.omega2 ?? null,
    aicc: outcome.fit.aicc,
    targets: listLoads(studiedLoad).flatMap((load) => targetAt(load, SCAN_STEPS.coarse) ?? []),
    failure: null,
  };
  return { fit: { basis, inference, joint, targetAt, at }, failure: null };
}

/** 1, f(r), load, load × f(r), with load as the distance from its mean. */
export function designRow(basis: CurveBasis, reserve: number, load: number): number[] {
  const curve = basis.at(reserve);
  return [...curve, load, ...curve.slice(1).map((value) => value * load)];
}

function jointTerms(basis: CurveBasis): string[] {
  return [...basis.terms, 'load', ...basis.terms.slice(1).map((term) => `${term} × load`)];
}

/** Round loads inside the studied range. */
function listLoads({ low, high }: { low: number; high: number }): number[] {
  const first = Math.ceil(low / LOAD_STEP);
  const last = Math.floor(high / LOAD_STEP);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * LOAD_STEP);
}
