/**
 * The fitted curves as plain numbers from which growth at any load and reserve, and any difference of
 * such, can be worked out with its interval: after the fit, in a browser, without the rows.
 *
 * Each fit (light, heavy or all; and the joint one) keeps its own inference. `stacked` puts them side by
 * side with the study as cluster, so that a sum over sets with different loads has the covariance of
 * all its parts. The joint fit has its rows in common with the bands; the sandwich counts that, since
 * it sums what a study does to every estimate at once. The degrees of freedom do not: they take the
 * fits as independent under the working model, as those of two bands are.
 */
import { median } from 'simple-statistics';
import type { Effect } from '../evidence/effects.ts';
import { unitVector } from '../numerics/smallMatrices.ts';
import type { Knots } from '../numerics/spline.ts';
import { type BandFit, rangeOf } from './bandFit.ts';
import { type RobustInference, stackInference } from './cr2.ts';
import { type CurveBasis, curveWithKnots } from './curve.ts';
import { designRow, type JointFit } from './joint.ts';
import { type BandName, isUnreliable } from './result.ts';
import { type ContrastInference, measureContrast } from './robust.ts';
import type { Curve } from './settings.ts';

export type FitSource = BandName | 'joint';

/** `ContrastInference` as lists, which JSON can hold; see robust.ts and satterthwaite.ts for their meaning and order. */
export interface PlainInference {
  readonly coefficients: readonly number[];
  readonly covariance: readonly number[];
  readonly root: readonly number[];
  readonly trace: readonly number[];
  readonly squares: readonly number[];
}

export interface FittedResponse {
  readonly source: FitSource;
  readonly curve: Curve;
  /** Knots of a spline, repetitions; null for the other shapes. */
  readonly knots: Knots | null;
  /** Load that the terms with load are measured from, per cent of 1RM; null where load is no term. */
  readonly meanLoad: number | null;
  /** Further covariates, held at their means: so many zeros at the end of a design row. */
  readonly covariates: number;
  /** Repetitions. */
  readonly studiedReserve: { readonly low: number; readonly high: number };
  /** Per cent of 1RM; null where no row has a load. */
  readonly studiedLoad: { readonly low: number; readonly high: number } | null;
  /** Studies behind the fit. */
  readonly studies: number;
  /** A coefficient has fewer degrees of freedom than an interval needs to be reliable. */
  readonly unreliable: boolean;
  readonly inference: PlainInference;
}

export interface GrowthResponse {
  /** The fits that could be made. */
  readonly fits: readonly FittedResponse[];
  /** All of them as one regression, in the order of `fits`; null where there is none. */
  readonly stacked: PlainInference | null;
  /** Median length of the fitted rows' programmes, weeks: how long growth took; null where none says. */
  readonly medianWeeks: number | null;
}

export interface GrowthFits {
  readonly bands: readonly (readonly [BandName, BandFit])[];
  readonly joint: JointFit | null;
  readonly effects: readonly Effect[];
}

/** What can be asked after the fit; fits that could not be made are left out. */
export function packResponse({ bands, joint, effects }: GrowthFits): GrowthResponse {
  const made = bands.flatMap(([source, band]) => {
    const studiedReserve = rangeOf(band.reserves);
    const { fit } = band.outcome;
    if (!fit || !studiedReserve) return [];
    const loads = band.effects.flatMap(({ arm }) => arm.load_pct_1rm ?? []);
    const shape = packShape(band.basis, band.terms.length - band.basis.terms.length);
    return [{ source, ...shape, meanLoad: null, studiedReserve, studiedLoad: rangeOf(loads), robust: fit.inference }];
  });
  const { studiedReserve, studiedLoad, meanLoad } = joint?.joint ?? {};
  const all =
    joint && studiedReserve && studiedLoad && meanLoad !== undefined && meanLoad !== null
      ? [
          ...made,
          {
            source: 'joint' as const,
            ...packShape(joint.basis, joint.inference.p - 2 * joint.basis.terms.length),
            meanLoad,
            studiedReserve,
            studiedLoad,
            robust: joint.inference,
          },
        ]
      : made;
  const weeks = effects.flatMap(({ arm }) => arm.weeks ?? []);
  const inferences = all.map(({ robust }) => robust);
  return {
    fits: all.map(({ robust, ...fit }) => ({
      ...fit,
      studies: robust.parts.length,
      unreliable: isUnreliable(measureCoefficients(robust)),
      inference: packInference(robust),
    })),
    stacked: inferences.length > 0 ? packInference(inferences.reduce(stackInference)) : null,
    medianWeeks: weeks.length > 0 ? median(weeks) : null,
  };
}

function packShape({ curve, knots }: CurveBasis, covariates: number) {
  return { curve, knots, covariates };
}

/** Degrees of freedom of every coefficient. */
function measureCoefficients(inference: RobustInference): { readonly df: number }[] {
  return Array.from({ length: inference.p }, (_, j) => measureContrast(inference, unitVector(inference.p, j)));
}

/** A fit that can be asked. */
export interface OpenFit {
  readonly fit: FittedResponse;
  readonly inference: ContrastInference;
  /** Design row of this fit at a load (per cent of 1RM) and a reserve (repetitions). */
  readonly at: (load: number, reserve: number) => readonly number[];
  /** The same row among the columns of all fits. */
  readonly inStack: (row: readonly number[]) => Float64Array;
}

export interface OpenResponse {
  readonly fits: readonly OpenFit[];
  readonly stacked: ContrastInference | null;
}

const opened = new WeakMap<GrowthResponse, OpenResponse>();

/** The response, ready to be asked; the same object for the same response. */
export function openResponse(response: GrowthResponse): OpenResponse {
  const known = opened.get(response);
  if (known) return known;
  const width = response.stacked?.coefficients.length ?? 0;
  let start = 0;
  const fits = response.fits.map((fit): OpenFit => {
    const place = start;
    start += fit.inference.coefficients.length;
    const basis = curveWithKnots(fit.curve, fit.knots);
    const zeros = Array.from({ length: fit.covariates }, () => 0);
    const { meanLoad } = fit;
    return {
      fit,
      inference: unpackInference(fit.inference),
      at: (load, reserve) => [
        ...(meanLoad === null ? basis.at(reserve) : designRow(basis, reserve, load - meanLoad)),
        ...zeros,
      ],
      inStack: (row) => {
        const wide = new Float64Array(width);
        wide.set(row, place);
        return wide;
      },
    };
  });
  const open = { fits, stacked: response.stacked ? unpackInference(response.stacked) : null };
  opened.set(response, open);
  return open;
}

/** As lists, for JSON. */
export function packInference({ coefficients, covariance, root, forms }: ContrastInference): PlainInference {
  return {
    coefficients: [...coefficients],
    covariance: [...covariance],
    root: [...root],
    trace: [...forms.trace],
    squares: [...forms.squares],
  };
}

/** The inverse of `packInference`. */
export function unpackInference(plain: PlainInference): ContrastInference {
  return {
    p: plain.coefficients.length,
    coefficients: Float64Array.from(plain.coefficients),
    covariance: Float64Array.from(plain.covariance),
    root: Float64Array.from(plain.root),
    forms: {
      trace: Float64Array.from(plain.trace),
      squares: Float64Array.from(plain.squares),
    },
  };
}
