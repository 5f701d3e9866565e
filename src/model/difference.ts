/**
 * How much steeper reserve costs in one band than in the other.
 *
 * Light and heavy are two fits, but a study may stand in both; the two are therefore stacked as one
 * regression with the study as cluster, and the difference of slopes is one contrast of it.
 */
import type { FittedBand } from './band.ts';
import type { BandDifference } from './result.ts';
import { inferContrast, stackInference } from './robust.ts';
import type { Settings } from './settings.ts';

/** Slope in heavy minus slope in light; see BandDifference for what slope means on a curve. */
export function compareBands(light: FittedBand, heavy: FittedBand, settings: Settings): BandDifference {
  const shared = Math.min(light.band.studiedReserve?.high ?? 0, heavy.band.studiedReserve?.high ?? 0);
  const term = settings.curve === 'line' ? 'reserve' : `mean slope from reserve 0 to ${shared}`;
  if (!light.fit || !heavy.fit) {
    const missing = light.fit ? 'heavy' : 'light';
    return {
      term,
      estimate: null,
      standardError: null,
      df: null,
      ciLow: null,
      ciHigh: null,
      p: null,
      reason: `no difference: there is no fit for ${missing} loads`,
    };
  }
  const meanSlope = (at: FittedBand['at']) => at(shared).map((value, j) => (value - at(0)[j]) / shared);
  const contrast = [...meanSlope(light.at).map((value) => -value), ...meanSlope(heavy.at)];
  const stacked = stackInference(light.fit.inference, heavy.fit.inference);
  return { term, ...inferContrast(stacked, contrast, settings.confidence), reason: null };
}
