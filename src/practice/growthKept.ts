/** The growth that each whole reserve keeps, by loads: what a curve's coefficients come to, in numbers that can be read. */
import { findBand } from '../model/bands.ts';
import type { KeptShareDifference } from '../model/differenceResult.ts';
import type { FullAnalysis } from '../model/full.ts';
import { openResponse } from '../model/response.ts';
import type { BandName } from '../model/result.ts';
import { type KeptAnswer, keptOf } from './kept.ts';

export interface GrowthKept {
  /** Repetitions, whole. */
  readonly reserve: number;
  /** Share of the growth at reserve 0, by loads. */
  readonly bands: readonly { readonly name: BandName; readonly kept: KeptAnswer }[];
  /** Heavy's share minus light's; null where loads were not told apart, or it cannot be worked out. */
  readonly difference: KeptShareDifference | null;
}

/** Reserves that are listed: beyond 5 hardly anybody trains for growth (common practice, no source). */
const MOST_LISTED = 5;

export function listGrowthKept(
  analysis: Pick<FullAnalysis, 'settings' | 'bands' | 'response' | 'difference'>,
): readonly GrowthKept[] {
  const { fits } = openResponse(analysis.response);
  const { confidence } = analysis.settings;
  const names = (['light', 'heavy', 'all'] as const).filter((name) => findBand(analysis.bands, name) !== undefined);
  return Array.from({ length: MOST_LISTED + 1 }, (_, reserve) => ({
    reserve,
    bands: names.map((name) => ({
      name,
      // A band's curve is the same at all its loads.
      kept: keptOf(
        fits.find(({ fit }) => fit.source === name),
        0,
        reserve,
        confidence,
      ),
    })),
    difference: analysis.difference?.keptShares.find((one) => Math.abs(one.reserve - reserve) < 1e-9) ?? null,
  }));
}
