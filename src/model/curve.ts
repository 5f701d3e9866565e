/**
 * Curve shapes: how growth may depend on reserve r (repetitions).
 *
 *   line       1, r
 *   log        1, ln(1 + r)
 *   quadratic  1, r, r²
 *   spline     1, r, s(r)   restricted cubic, knots at the 10th, 50th and 90th percentile of r
 *
 * To add a shape: name it in settings.ts, add its case here; the loops over CURVES do the rest.
 */
import { type Knots, splineTerm, threeKnots } from '../numerics/spline.ts';
import type { Curve } from './settings.ts';

export interface CurveBasis {
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
  return curveWithKnots(curve, curve === 'spline' ? threeKnots(reserves) : null);
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
