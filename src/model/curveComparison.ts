/**
 * The curve shapes side by side: how well each describes the rows (AICc of the ML fit, lower is
 * better) and what target it gives. Where too few reserves were studied for a shape, it is another of the list
 * (curve.ts) and not listed twice.
 */
import { type BandFit, fitEffects, slopeOf, targetOf } from './bandFit.ts';
import type { CurveComparison } from './result.ts';
import { CURVES, type Settings } from './settings.ts';
import { SCAN_STEPS } from './target.ts';

/** @param chosen fit of the settings' own curve, which is not made twice */
export function compareCurves(chosen: BandFit, settings: Settings): CurveComparison[] {
  const shapes = CURVES.flatMap((curve) => {
    const band = curve === settings.curve ? chosen : fitEffects(chosen.effects, { ...settings, curve }, chosen.data);
    if (band.basis.curve !== curve) return [];
    const { fit, failure } = band.outcome;
    const { point, low, high, shown, whole, reachedEdge, reason } = targetOf(band, settings, SCAN_STEPS.coarse);
    return {
      curve,
      slope: slopeOf(band, settings.confidence),
      parameters: fit?.parameters ?? null,
      logLikelihood: fit?.logLikelihood.ml ?? null,
      aicc: fit?.aicc ?? null,
      failure,
      target: { point, low, high, shown, whole, reachedEdge, reason },
    };
  });
  const best = Math.min(...shapes.map(({ aicc }) => aicc ?? Number.POSITIVE_INFINITY));
  return shapes.map((shape) => ({ ...shape, aboveBest: shape.aicc === null ? null : shape.aicc - best }));
}
