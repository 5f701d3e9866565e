/** The fitted curve as it is drawn: the average at each reserve with its interval, and that of a new study's mean. */
import { studentQuantile } from '../numerics/distributions.ts';
import type { CurveBasis } from './curve.ts';
import type { Fit } from './mixed.ts';
import type { CurvePoint } from './result.ts';
import { inferContrast } from './robust.ts';

/** Points of the drawn curve: steps of an eighth of a repetition over a range of 10. */
const CURVE_POINTS = 81;

/**
 * The curve with its interval, and that for the true effect of an arm in a new study: estimate ± t √(se² + τ² + ω²),
 * Higgins, Thompson and Spiegelhalter 2009 (J R Stat Soc A 172:137) for one mean, whose t has k − 2 degrees of freedom
 * with k studies. Here t has those of the point itself (Satterthwaite), which are near that in the middle and fewer where
 * few studies speak. Measured in `tests/model/newStudy.test.ts`.
 *
 * @param furthest largest reserve drawn, repetitions
 * @param from the least, repetitions
 */
export function drawCurve(
  fit: Fit,
  at: CurveBasis['at'],
  furthest: number,
  confidence: number,
  from = 0,
): CurvePoint[] {
  const { components, inference } = fit;
  return Array.from({ length: CURVE_POINTS }, (_, i) => {
    const reserve = from + ((furthest - from) * i) / (CURVE_POINTS - 1);
    const { estimate, standardError, df, ciLow, ciHigh } = inferContrast(inference, at(reserve), confidence);
    const spread = components ? Math.sqrt(standardError ** 2 + components.tau2 + components.omega2) : null;
    const reach = spread === null ? null : studentQuantile((1 + confidence) / 2, df) * spread;
    return {
      reserve,
      estimate,
      ciLow,
      ciHigh,
      df,
      predictionLow: reach === null ? null : estimate - reach,
      predictionHigh: reach === null ? null : estimate + reach,
    };
  });
}
