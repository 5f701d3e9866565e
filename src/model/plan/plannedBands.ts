/** Bands that the arms of a plan fall into, in the order of the arms. */
import { bandOfLoad } from '../loads.ts';
import type { BandName } from '../result.ts';
import type { Settings } from '../settings.ts';
import type { PlannedArm } from './plannedStudy.ts';

export function placeLoads(
  arms: readonly Pick<PlannedArm, 'load' | 'people'>[],
  split: Settings['split'],
): readonly BandName[] {
  const bands = arms
    .filter(({ people }) => people > 0)
    .map(({ load }) => (typeof load === 'number' ? bandOfLoad(load, split) : load));
  return [...new Set(bands)];
}
