/**
 * Curve shapes: how growth may depend on reserve r (repetitions).
 *
 *   line       1, r
 *   log        1, ln(1 + r)
 *   quadratic  1, r, r²
 *   spline     1, r, s(r)   restricted cubic, knots at the 10th, 50th and 90th percentile of r
 *   flexible   1, r, r², ln(1 + r)   assumes no shape: it holds the line, the logarithm and the parabola,
 *              and follows a plateau or a saturating curve closely (fractional polynomials of powers 1, 2
 *              and, shifted by 1, 0; Royston & Altman 1994, Appl Stat 43:429)
 *
 * Four coefficients need four different reserves. Where a fit has fewer, the flexible curve is the
 * simplest one that still passes anywhere through them: a parabola for three, a line for two.
 *
 * To add a shape: name it in settings.ts, add its case here; the loops over CURVES do the rest.
 */
import { type Knots, splineTerm, threeKnots } from '../numerics/spline.ts';
import type { Curve } from './settings.ts';

export interface CurveBasis {
  /** Shape that is fitted: another than was asked for only where the flexible one has too few reserves. */
  readonly curve: Curve;
  /** Names of the columns, the intercept first. */
  readonly terms: readonly string[];
  /** Knots of the spline in repetitions; null for the other shapes. */
  readonly knots: Knots | null;
  /** x(r), one number a term. */
  readonly at: (reserve: number) => readonly number[];
}

/**
 * @param curve shape
 * @param reserves reserve of every row fitted; decides the spline's knots
 */
export function makeCurve(curve: Curve, reserves: readonly number[]): CurveBasis {
  const fitted = curve === 'flexible' ? shapeFor(new Set(reserves).size) : curve;
  return curveWithKnots(fitted, fitted === 'spline' ? threeKnots(reserves) : null);
}

/** The flexible curve, or what stands for it where there are fewer different reserves than coefficients. */
function shapeFor(differentReserves: number): Curve {
  if (differentReserves >= 4) return 'flexible';
  return differentReserves === 3 ? 'quadratic' : 'line';
}

/** @throws where a spline comes without its knots */
export function curveWithKnots(curve: Curve, knots: Knots | null): CurveBasis {
  switch (curve) {
    case 'line':
      return { curve, terms: ['intercept', 'reserve'], knots: null, at: (r) => [1, r] };
    case 'log':
      return { curve, terms: ['intercept', 'log(1 + reserve)'], knots: null, at: (r) => [1, Math.log1p(r)] };
    case 'quadratic':
      return { curve, terms: ['intercept', 'reserve', 'reserve²'], knots: null, at: (r) => [1, r, r * r] };
    case 'flexible':
      return {
        curve,
        terms: ['intercept', 'reserve', 'reserve²', 'log(1 + reserve)'],
        knots: null,
        at: (r) => [1, r, r * r, Math.log1p(r)],
      };
    case 'spline':
      if (!knots) throw new Error('invalid curve; a spline needs its knots');
      return {
        curve,
        terms: ['intercept', 'reserve', 'spline of reserve'],
        knots,
        at: (r) => [1, r, splineTerm(r, knots)],
      };
  }
}

/** True where the knots are distinct, without which a spline has no third column. */
export function hasDistinctKnots(knots: Knots): boolean {
  return knots[0] < knots[1] && knots[1] < knots[2];
}
