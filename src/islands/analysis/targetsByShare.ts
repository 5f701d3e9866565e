/** Targets for the shares of growth that are asked for most: for the build, and for a reader's own table. */
import type { Arm } from '../../evidence/schema.ts';
import { analyse } from '../../model/analyse.ts';
import { listBands } from '../../model/bands.ts';
import type { Band, BandName } from '../../model/result.ts';
import type { Settings } from '../../model/settings.ts';

/** Shares of the growth at reserve 0. */
const KEPT_SHARES = [0.8, 0.85, 0.9, 0.95] as const;

export interface SharedTarget {
  readonly keptShare: number;
  readonly bands: readonly (Pick<Band, 'target' | 'unreliable'> & { readonly name: BandName })[];
}

export function targetsByShare(arms: readonly Arm[], settings: Settings): readonly SharedTarget[] {
  return KEPT_SHARES.map((keptShare) => ({
    keptShare,
    bands: listBands(analyse(arms, { ...settings, keptShare }).bands).map(([name, { target, unreliable }]) => ({
      name,
      target,
      unreliable,
    })),
  }));
}
