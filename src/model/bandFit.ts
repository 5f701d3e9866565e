/**
 * The fit of one band of loads: effects to design to regression. Everything that refits (curve
 * shapes, leaving a study out, one year more, the sweep) comes through here.
 */
import { mean } from 'simple-statistics';
import type { Effect } from '../evidence/effects.ts';
import { fitCarriedArranged } from './carriedFit.ts';
import { type CurveBasis, makeCurve } from './curve.ts';
import { refuseDesign } from './designRefusal.ts';
import type { Fit, FitOptions, FitOutcome } from './mixed.ts';
import { arrangeObservations, type Observations } from './observations.ts';
import type { Estimate, Target, TargetSummary } from './result.ts';
import { inferContrast } from './robust.ts';
import { COVARIATES } from './selection.ts';
import type { Adjustment, Settings } from './settings.ts';
import { findTarget, noTarget, SCAN_STEPS } from './target.ts';

/** What of the settings decides a fit. */
export interface FitSettings
  extends Pick<Settings, 'curve' | 'weighting' | 'rho' | 'adjust'>,
    Pick<FitOptions, 'answerOnly'> {}

export interface BandFit {
  readonly effects: readonly Effect[];
  /** The effects as the regression reads them, for other fits of the same rows. */
  readonly data: Observations;
  /** Reserve of every effect, repetitions. */
  readonly reserves: readonly number[];
  readonly basis: CurveBasis;
  /** Names of the design's columns. */
  readonly terms: readonly string[];
  /** The design, one column a term, rows in the order of the effects. */
  readonly columns: readonly (readonly number[])[];
  /** The same columns for other rows: curve, knots and means of covariates stay those of this fit. */
  readonly columnsOf: (effects: readonly Effect[]) => readonly (readonly number[])[];
  /** Design row at a reserve, covariates at their means. */
  readonly at: CurveBasis['at'];
  readonly outcome: FitOutcome;
}

/** @param data of the same effects, where they are arranged already */
export function fitEffects(
  effects: readonly Effect[],
  settings: FitSettings,
  data: Observations = arrangeEffects(effects),
): BandFit {
  const reserves = reservesOf(effects);
  const basis = makeCurve(settings.curve, reserves);
  const covariates = centreCovariates(effects, settings.adjust);
  const refusal = refuseDesign(reserves, basis);
  const columnsOf = (of: readonly Effect[]) => {
    const rows = reservesOf(of).map(basis.at);
    return [
      ...basis.terms.map((_, j) => rows.map((row) => row[j])),
      ...covariates.map(({ centred }) => of.map(centred)),
    ];
  };
  const columns = columnsOf(effects);
  return {
    effects,
    data,
    reserves,
    basis,
    terms: [...basis.terms, ...covariates.map(({ name }) => name)],
    columns,
    columnsOf,
    at: (reserve) => [...basis.at(reserve), ...covariates.map(() => 0)],
    outcome: refusal ? { fit: null, failure: refusal } : fitCarriedArranged(data, columns, settings),
  };
}

/** Reserve of every effect, repetitions. */
export function reservesOf(effects: readonly Effect[]): readonly number[] {
  return effects.map(({ arm }) => arm.reserve_reps ?? Number.NaN);
}

/** Xβ: what a fit foretells of each row of a design, analysis scale. */
export function foretell(columns: BandFit['columns'], { inference }: Fit): number[] {
  return columns[0].map((_, i) => columns.reduce((sum, column, j) => sum + column[i] * inference.coefficients[j], 0));
}

/** Effects in the order of a regression. */
export function arrangeEffects(effects: readonly Effect[]): Observations {
  return arrangeObservations(toObservations(effects));
}

/** Effects as the regression reads them. */
export function toObservations(effects: readonly Effect[]) {
  return effects.map(({ arm, y, v }) => ({ study: arm.study, cohort: arm.cohort, y, v }));
}

/** Smallest and largest of a list; null of an empty one. */
export function rangeOf(values: readonly number[]): { low: number; high: number } | null {
  if (values.length === 0) return null;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return { low, high };
}

/** The contrast whose value is the curve's mean slope from reserve 0 to `reserve` (a line's slope). */
export function meanSlopeContrast(at: CurveBasis['at'], reserve: number): readonly number[] {
  const start = at(0);
  return at(reserve).map((value, j) => (value - start[j]) / reserve);
}

/** Mean slope over the studied range of reserve; null where there is no fit. */
export function slopeOf(band: BandFit, confidence: number): Estimate | null {
  const { fit } = band.outcome;
  const studied = rangeOf(band.reserves);
  if (!fit || !studied) return null;
  return inferContrast(fit.inference, meanSlopeContrast(band.at, studied.high), confidence);
}

/** Target of a band's fit among those of many fits: what a table of them shows, by a coarse scan. */
export function summariseTarget(band: BandFit, settings: Pick<Settings, 'keptShare' | 'confidence'>): TargetSummary {
  const { point, low, high, shown, whole, reason } = targetOf(band, settings, SCAN_STEPS.coarse);
  return { point, low, high, shown, whole, reason };
}

/** Target of a band's fit, or the reason why there is none. */
export function targetOf(
  band: BandFit,
  settings: Pick<Settings, 'keptShare' | 'confidence'>,
  step: number = SCAN_STEPS.fine,
): Target {
  const studied = rangeOf(band.reserves);
  if (!band.outcome.fit || !studied) {
    const reason = band.outcome.failure?.reason ?? 'no row is left to fit';
    return noTarget(settings.keptShare, `no target: no fit was possible, since ${reason}`);
  }
  return findTarget(band.outcome.fit.inference, band.at, {
    keptShare: settings.keptShare,
    confidence: settings.confidence,
    furthest: studied.high,
    nearest: studied.low,
    studies: band.outcome.fit.data.studies.length,
    step,
  });
}

interface CentredCovariate {
  readonly name: string;
  /** Value of a row, of these or others, minus the mean over these. */
  readonly centred: (effect: Effect) => number;
  readonly column: readonly number[];
}

/**
 * Centred, so that the curve is that of rows with average covariates. One that is the same in every row
 * says nothing and would only make the design singular: it is left out.
 */
export function centreCovariates(
  effects: readonly Effect[],
  adjustments: readonly Adjustment[],
): readonly CentredCovariate[] {
  return adjustments
    .map((adjustment) => {
      const { name, of } = COVARIATES[adjustment];
      const raw = ({ arm }: Effect) => of(arm) ?? Number.NaN;
      const centre = effects.length > 0 ? mean(effects.map(raw)) : Number.NaN;
      const centred = (effect: Effect) => raw(effect) - centre;
      return { name, centred, column: effects.map(centred) };
    })
    .filter(({ column }) => column.some((value) => value !== column[0]));
}

/** The fit of a band, for callers that have checked that it was made. */
export function requireFit(band: BandFit): Fit {
  if (!band.outcome.fit) throw new Error(`invalid call: band without a fit: ${band.outcome.failure.reason}`);
  return band.outcome.fit;
}
