/**
 * How much more reserve costs in one band than in the other.
 *
 * Light and heavy are two fits, but a study may stand in both; the two are therefore stacked as one
 * regression with the study as cluster, and every comparison is inference on that.
 */
import { type BandFit, meanSlopeContrast, rangeOf, requireFit } from './bandFit.ts';
import { type RobustInference, stackInference } from './cr2.ts';
import type { BandDifference, KeptShareDifference } from './differenceResult.ts';
import { applyContrast, inferContrast, measureContrast } from './robust.ts';
import type { Settings } from './settings.ts';

/** Distance of the reserves at which the kept shares are compared, repetitions: whole ones are among them. */
const COMPARED_STEP = 0.5;

/** Share of a band's own standard error below which that of a difference is rounding. */
const LEAST_ERROR = 1e-9;

/** Slope in heavy minus slope in light, and the kept shares' difference along reserve. */
export function compareBands(light: BandFit, heavy: BandFit, settings: Settings): BandDifference {
  const shared = Math.min(rangeOf(light.reserves)?.high ?? 0, rangeOf(heavy.reserves)?.high ?? 0);
  const isStraight = light.basis.curve === 'line' && heavy.basis.curve === 'line';
  const term = isStraight ? 'reserve' : `mean slope from reserve 0 to ${shared}`;
  const none = (reason: string): BandDifference => ({
    term,
    estimate: null,
    standardError: null,
    df: null,
    ciLow: null,
    ciHigh: null,
    p: null,
    keptShares: [],
    reason: `no difference: ${reason}`,
  });
  if (!light.outcome.fit || !heavy.outcome.fit) {
    const missing = [...(light.outcome.fit ? [] : ['light']), ...(heavy.outcome.fit ? [] : ['heavy'])].join(' or ');
    return none(`there is no fit for ${missing} loads`);
  }
  if (shared === 0) return none('no reserve above 0 was studied in both');
  const stacked = stackInference(light.outcome.fit.inference, heavy.outcome.fit.inference);
  const contrast = [
    ...meanSlopeContrast(light.at, shared).map((value) => -value),
    ...meanSlopeContrast(heavy.at, shared),
  ];
  const difference = inferContrast(stacked, contrast, settings.confidence);
  const parts = [light, heavy].map((band) => slopeError(band, shared));
  if (!(difference.standardError > LEAST_ERROR * Math.max(...parts))) {
    return none('the same studies show the same in both, which leaves the difference without any error');
  }
  return {
    term,
    ...difference,
    keptShares: canCompareShares([light, heavy], settings.confidence)
      ? compareKeptShares(stacked, light, heavy, shared, settings.confidence)
      : [],
    reason: null,
  };
}

function slopeError(band: BandFit, shared: number): number {
  return measureContrast(requireFit(band).inference, meanSlopeContrast(band.at, shared)).standardError;
}

/** A share is of the growth at reserve 0, so that in each band this must be distinguishable from nothing. */
function canCompareShares(bands: readonly BandFit[], confidence: number): boolean {
  return bands.every((band) => inferContrast(requireFit(band).inference, band.at(0), confidence).ciLow > 0);
}

/**
 * Heavy's kept share minus light's at each reserve. The share g(r)/g(0) is a ratio, so its error is
 * carried by the delta method: the gradient of the difference is the contrast that is inferred on
 * (Oehlert 1992, Am Stat 46:27). At reserve 0 both are 1.
 */
function compareKeptShares(
  stacked: RobustInference,
  light: BandFit,
  heavy: BandFit,
  shared: number,
  confidence: number,
): KeptShareDifference[] {
  const share = (band: BandFit, reserve: number) => {
    const beta = band.outcome.fit?.inference.coefficients ?? new Float64Array();
    const growth = applyContrast(band.at(reserve), beta);
    const atFailure = applyContrast(band.at(0), beta);
    const start = band.at(0);
    return {
      value: growth / atFailure,
      gradient: band.at(reserve).map((x, j) => (x - (growth / atFailure) * start[j]) / atFailure),
    };
  };
  return Array.from({ length: Math.floor(shared / COMPARED_STEP + 1e-9) }, (_, i) => {
    const reserve = (i + 1) * COMPARED_STEP;
    const inLight = share(light, reserve);
    const inHeavy = share(heavy, reserve);
    const gradient = [...inLight.gradient.map((value) => -value), ...inHeavy.gradient];
    const { standardError, df, ciLow, ciHigh } = inferContrast(stacked, gradient, confidence);
    const estimate = inHeavy.value - inLight.value;
    const reach = (ciHigh - ciLow) / 2;
    return { reserve, estimate, standardError, df, ciLow: estimate - reach, ciHigh: estimate + reach };
  });
}
