/**
 * Stands in for the charts library's twenty ways from point to point: lines and bands of the figures go straight from one
 * computed point to the next, so that none shows a bend that was not fitted, or stand until the next one.
 */
import { curveLinear, curveStepAfter } from 'd3';

export function maybeCurve(curve = curveLinear) {
  if (typeof curve === 'function') return curve;
  if (curve === 'step-after') return curveStepAfter;
  throw new Error(`the curve "${curve}" was asked of a chart, but the browser script is built with two of them only`);
}

export function maybeCurveAuto(curve = curveAuto) {
  return maybeCurve(curve);
}

export function curveAuto(context) {
  return curveLinear(context);
}
