/**
 * The shape of an `Analysis`: plain JSON, the one thing that pages, figures, downloads and the
 * command line read.
 *
 * Growth, strength and fatigue are on the analysis scale: natural log of the ratio follow-up to
 * baseline under the log-ratio metric (per cent change = 100 (exp y − 1)), baseline SDs under the
 * standardised metric. Reserve is in repetitions, load in per cent of 1RM. A number that does not
 * exist is null and a `reason` beside it says why in words.
 */
import type { RestsOn } from '../evidence/vocabulary.ts';
import type { BandDifference } from './differenceResult.ts';
import type { FittedRow, UnfittedRow } from './fittedRow.ts';
import type { Curve, Settings } from './settings.ts';
import type { TargetInterval, WholeRange } from './wholeRepetitions.ts';

/** Names of the parts an analysis is made of: loads below and at or above the split, or all loads. */
export type BandName = 'light' | 'heavy' | 'all';

export interface ExcludedRow {
  /** Physical line in the table file, 1 is the header. */
  readonly line: number;
  readonly reason: string;
}

/** Satterthwaite degrees of freedom below which an interval is unreliable (Tipton 2015, Psychol Methods 20:375). */
export const LEAST_RELIABLE_DF = 4;

/** True where a coefficient has too few degrees of freedom for its interval. */
export function isUnreliable(coefficients: readonly { readonly df: number }[]): boolean {
  return coefficients.some(({ df }) => df < LEAST_RELIABLE_DF);
}

/** A contrast of coefficients with its robust inference (CR2, Satterthwaite). */
export interface Estimate {
  readonly estimate: number;
  /** Cluster-robust standard error (CR2). */
  readonly standardError: number;
  /** Satterthwaite degrees of freedom, real-valued; below 4 the interval is unreliable. */
  readonly df: number;
  readonly ciLow: number;
  readonly ciHigh: number;
  /** Two-sided p-value of the hypothesis that the contrast is 0. */
  readonly p: number;
}

/** What differs most surely from growth at reserve 0, below it and above it; null where nothing does for sure. */
export interface ReserveDifference {
  readonly less: Estimate | null;
  readonly more: Estimate | null;
}

export interface Coefficient extends Estimate {
  /** Column of the design: "intercept", "reserve", "log(1 + reserve)", "reserve²", … */
  readonly term: string;
  /** Standard error under the working model, for comparison with the robust one. */
  readonly modelStandardError: number;
}

/** Why a fit could not be made. */
export interface FitFailure {
  readonly kind:
    | 'no-rows'
    | 'too-few-studies'
    | 'too-few-rows'
    | 'reserve-does-not-vary'
    | 'knots-coincide'
    | 'rank-deficient'
    | 'did-not-converge'
    | 'one-study-decides'
    | 'no-error'
    | 'flat-likelihood'
    | 'variances-too-uneven';
  /** A sentence with the numbers seen and needed. */
  readonly reason: string;
}

export interface Target {
  /** Share of the growth at reserve 0 that the target keeps (0 to 1, open). */
  readonly keptShare: number;
  /** Largest reserve that keeps the share all the way from 0; null where there is no target. */
  readonly point: number | null;
  /** Ends of the interval (target.ts); `high` null where this evidence does not limit it, both without an interval. */
  readonly low: number | null;
  readonly high: number | null;
  /** Every piece of the reserves that are not rejected within the studied range, as closed intervals. */
  readonly set: readonly (readonly [number, number])[];
  /** The same in tenths, as they are shown everywhere (wholeRepetitions.ts); null without a point. */
  readonly shown: TargetInterval | null;
  /** The whole repetitions to tell, inside the interval that is shown; null without a point. */
  readonly whole: WholeRange | null;
  /** True where the share is kept up to the largest reserve studied. */
  readonly reachedEdge: boolean;
  /** What is missing or unbounded and why; null where nothing is. */
  readonly reason: string | null;
}

/** What is told of a target that stands in a list of many. */
export type TargetSummary = Pick<Target, 'point' | 'low' | 'high' | 'shown' | 'whole' | 'reason'>;

/** One point of the fitted curve. */
export interface CurvePoint {
  readonly reserve: number;
  readonly estimate: number;
  readonly ciLow: number;
  readonly ciHigh: number;
  readonly df: number;
  /** Interval for the true effect of an arm in a new study, with τ² + ω²; null under weightings that estimate neither. */
  readonly predictionLow: number | null;
  readonly predictionHigh: number | null;
}

export interface CurveComparison {
  readonly curve: Curve;
  /** Mean slope per repetition from reserve 0 to the largest studied: of the straight line its slope. */
  readonly slope: Estimate | null;
  /** Parameters that AICc counts: coefficients and estimated variances. */
  readonly parameters: number | null;
  /** Maximised log-likelihood (ML). */
  readonly logLikelihood: number | null;
  readonly aicc: number | null;
  /** AICc minus the smallest of all shapes. */
  readonly aboveBest: number | null;
  readonly failure: FitFailure | null;
  readonly target: TargetSummary & Pick<Target, 'reachedEdge'>;
}

/** Slope of reserve inside studies and between them, per repetition. */
export interface WithinBetween {
  readonly within: Estimate | null;
  readonly between: Estimate | null;
  /** Within minus between: not 0 where studies that differ in reserve differ in something else too. */
  readonly difference: Estimate | null;
  readonly reason: string | null;
}

export interface Band {
  readonly studies: number;
  readonly rows: number;
  /** Rows by what they rest on; no entry where there is none. */
  readonly restsOn: Readonly<Partial<Record<RestsOn, number>>>;
  /** Total people over the cohorts behind the rows. */
  readonly participants: number;
  /** Shape that was fitted: another than the settings' where too few reserves were studied for that (curve.ts). */
  readonly curve: Curve;
  /** null where the fit was made. */
  readonly failure: FitFailure | null;
  readonly coefficients: readonly Coefficient[];
  /** Between-study variance; null where not estimated (simpler weightings, failed fit). */
  readonly tau2: number | null;
  /** Between-row variance within studies; null where not estimated. */
  readonly omega2: number | null;
  /** True where a variance was estimated and its maximum lies at 0. */
  readonly boundary: { readonly tau2: boolean; readonly omega2: boolean };
  /** Local maxima of the REML likelihood that were found; null where nothing was estimated. */
  readonly likelihoodMaxima: number | null;
  readonly logLikelihood: { readonly reml: number | null; readonly ml: number | null };
  /** Corrected Akaike criterion of the maximum-likelihood fit; for comparing curve shapes. */
  readonly aicc: number | null;
  readonly target: Target;
  /** Smallest and largest reserve among the rows. */
  readonly studiedReserve: { readonly low: number; readonly high: number } | null;
  readonly studiedLoad: { readonly low: number; readonly high: number } | null;
  /** Growth at reserve 0 with its interval; null where nobody trained near it: there the curve is only continued. */
  readonly atFailure: Estimate | null;
  /** What of a difference from growth at reserve 0, or at the least reserve studied where none is near it, can be told from none. */
  readonly difference: ReserveDifference;
  /** Fitted curve from 0, or from the least reserve studied where none is near 0, to the largest. */
  readonly curvePoints: readonly CurvePoint[];
  readonly fitted: readonly FittedRow[];
  /** Rows that were there for a fit that could not be made; absent where it was. */
  readonly unfitted?: readonly UnfittedRow[];
  /** All shapes that these reserves allow, compared. */
  readonly curves: readonly CurveComparison[];
  readonly withinBetween: WithinBetween;
  /** Smallest df behind any coefficient is below 4: intervals are shown as unreliable. */
  readonly unreliable: boolean;
}

/** Target at one load, from the fit of all loads together. */
export interface JointTarget extends Target {
  /** Per cent of 1RM. */
  readonly load: number;
}

/** The fit of all loads together, reserve × load; null numbers where it failed. */
export interface Joint {
  /** Load that the terms with load are measured from, per cent of 1RM. */
  readonly meanLoad: number | null;
  readonly studiedLoad: { readonly low: number; readonly high: number } | null;
  readonly studiedReserve: { readonly low: number; readonly high: number } | null;
  readonly coefficients: readonly Coefficient[];
  readonly tau2: number | null;
  readonly omega2: number | null;
  readonly aicc: number | null;
  /** Targets at round loads inside the studied range. */
  readonly targets: readonly JointTarget[];
  readonly failure: FitFailure | null;
}

/** Light and heavy loads, or all in one: of the same names, whatever is known of each. */
export type Bands<One> = { readonly light: One; readonly heavy: One } | { readonly all: One };

export interface Analysis {
  readonly settings: Settings;
  readonly rows: {
    readonly included: number;
    readonly excluded: readonly ExcludedRow[];
  };
  readonly bands: Bands<Band>;
  /** What SDs that are pooled from other rows do to the answer; null where the settings pool none. */
  readonly missingSds: {
    /** Rows whose spread is pooled. */
    readonly rows: number;
    /** Targets where no SD is pooled. */
    readonly targetsWithout: Bands<TargetSummary>;
  } | null;
  /** null where all loads are one band. */
  readonly difference: BandDifference | null;
  readonly joint: Joint;
}
