/** What an arm is given that its plan does not say, where the bands of loads differ in it. */
import type { Arm } from '../../evidence/schema.ts';
import type { BandName } from '../result.ts';
import type { PlanningBand } from './planningBase.ts';

export interface BandAssumptions {
  readonly band: BandName;
  /** That of at least half of the band's rows, trained where they are even; null where none says. */
  readonly trainingStatus: Arm['training_status'];
  /** Of arms that name the band and no load: median of its rows, per cent of 1RM; null where none says. */
  readonly load: number | null;
}

export function assumeOfBand({
  name,
  fit: { effects },
  medianLoad,
}: Pick<PlanningBand, 'name' | 'fit' | 'medianLoad'>): BandAssumptions {
  const words = effects.flatMap(({ arm }) => arm.training_status ?? []);
  const trained = words.filter((word) => word === 'trained').length;
  const usual = 2 * trained >= words.length ? 'trained' : 'untrained';
  return { band: name, trainingStatus: words.length === 0 ? null : usual, load: medianLoad };
}
