/**
 * What the effects of an outcome's rows are called, as in “90 % of the … at reserve 0”. Those of strength are gains, not
 * strength itself; those of fatigue are changes of performance, below 0 where it is lost.
 */
import type { Settings } from '../model/settings.ts';

export const EFFECT_NAMES = {
  growth: 'growth',
  strength: 'strength gain',
  fatigue: 'change of performance',
} as const satisfies Readonly<Record<Settings['outcome'], string>>;
