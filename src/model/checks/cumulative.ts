/** How the answer grew: the slope and target from the studies published up to each year. */
import { type BandFit, fitEffects, slopeOf, targetOf } from '../bandFit.ts';
import type { Estimate, Target } from '../result.ts';
import type { Settings } from '../settings.ts';
import { SCAN_STEPS } from '../target.ts';

export interface CumulativeYear {
  readonly year: number;
  readonly studies: number;
  readonly rows: number;
  readonly slope: Estimate | null;
  readonly target: Pick<Target, 'point' | 'low' | 'high' | 'practical' | 'reason'>;
  readonly reason: string | null;
}

export function accumulateByYear(band: BandFit, settings: Settings): CumulativeYear[] {
  const years = [...new Set(band.effects.map(({ arm }) => arm.year))].sort((a, b) => a - b);
  return years.map((year) => {
    const effects = band.effects.filter(({ arm }) => arm.year <= year);
    const sofar = fitEffects(effects, { ...settings, answerOnly: true });
    const { point, low, high, practical, reason } = targetOf(sofar, settings, SCAN_STEPS.coarse);
    return {
      year,
      studies: new Set(effects.map(({ arm }) => arm.study)).size,
      rows: effects.length,
      slope: slopeOf(sofar, settings.confidence),
      target: { point, low, high, practical, reason },
      reason: sofar.outcome.failure?.reason ?? null,
    };
  });
}
