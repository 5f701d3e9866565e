/**
 * Stands in for the charts library's twenty ways from point to point: every line and band of a figure goes
 * straight from one computed point to the next, and shows no bend that was not fitted.
 */
import { curveLinear } from 'd3';

export function maybeCurve(curve = curveLinear) {
  if (typeof curve === 'function') return curve;
  throw new Error(
    `the curve "${curve}" was asked of a chart, but the browser script is built with straight lines only`,
  );
}

export function maybeCurveAuto(curve = curveAuto) {
  return maybeCurve(curve);
}

export function curveAuto(context) {
  return curveLinear(context);
}
