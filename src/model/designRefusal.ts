/** Reserves to which a curve cannot be fitted, whatever was measured at them. */
import { type CurveBasis, hasDistinctKnots } from './curve.ts';
import type { FitFailure } from './result.ts';

/** Why no curve can be fitted to these reserves; null where one can, or where there are none. */
export function refuseDesign(reserves: readonly number[], { knots }: CurveBasis): FitFailure | null {
  const refusal = refuseConstantReserve(reserves);
  if (refusal || reserves.length === 0 || !knots || hasDistinctKnots(knots)) return refusal;
  return {
    kind: 'knots-coincide',
    reason: `the spline's knots coincide (${knots.join(', ')}): too many rows share one reserve`,
  };
}

/** Why there is no slope of reserve where all rows have the same; null where two differ, or there are none. */
export function refuseConstantReserve(reserves: readonly number[]): FitFailure | null {
  const [first] = reserves;
  if (first === undefined || reserves.some((reserve) => reserve !== first)) return null;
  return {
    kind: 'reserve-does-not-vary',
    reason: `every row has reserve ${first}; a slope needs at least two values`,
  };
}
