/** How the answer grew: the slope and target from the studies published up to each year. */
import { type BandFit, fitEffects, slopeOf, summariseTarget } from '../bandFit.ts';
import { countDistinctStudies } from '../counts.ts';
import type { Estimate, TargetSummary } from '../result.ts';
import type { Settings } from '../settings.ts';

export interface CumulativeYear {
  readonly year: number;
  readonly studies: number;
  readonly rows: number;
  readonly slope: Estimate | null;
  readonly target: TargetSummary;
  readonly reason: string | null;
}

/** One entry for each year in which a study of the band was published, the earliest first. */
export function accumulateByYear(band: BandFit, settings: Settings): CumulativeYear[] {
  const years = [...new Set(band.effects.map(({ arm }) => arm.year))].sort((a, b) => a - b);
  return years.map((year) => {
    const effects = band.effects.filter(({ arm }) => arm.year <= year);
    const sofar = fitEffects(effects, { ...settings, answerOnly: true });
    return {
      year,
      studies: countDistinctStudies(effects),
      rows: effects.length,
      slope: slopeOf(sofar, settings.confidence),
      target: summariseTarget(sofar, settings),
      reason: sofar.outcome.failure?.reason ?? null,
    };
  });
}
