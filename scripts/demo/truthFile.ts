/**
 * What the Methods page shows beside the estimates of the demonstration: the curves that were put in, of the loads
 * that the table holds. The numbers come from truth.ts; this only asks them.
 */
import { createHash } from 'node:crypto';
import { DEMONSTRATION_NOTE } from '../../src/evidence/demonstration.ts';
import { defaultSettings } from '../../src/model/settings.ts';
import { bisect } from '../../src/numerics/roots.ts';
import type { PlannedStudy } from './plan.ts';
import { GROWTH_AT_FAILURE, LOSS_WORDS, trueKeptShare } from './truth.ts';

/** Reserves that kept shares are listed at, repetitions. */
const LISTED_RESERVES = [1, 2, 3, 4, 5] as const;
/** Repetitions beyond which no target is looked for: the most that an invented arm had in reserve. */
const FURTHEST = 10;

/** Of the rows on one side of the split between light and heavy loads: the mean of their true curves. */
interface BandTruth {
  /** Largest reserve that keeps the share of the settings, repetitions. */
  readonly target: number;
  readonly kept: readonly { readonly reserve: number; readonly share: number }[];
}

export interface DemonstrationTruth {
  readonly note: string;
  /** Of the curves, a sentence. */
  readonly words: string;
  /** SHA-256 of the table that was drawn from it: of no other table is the truth known. */
  readonly tableSha256: string;
  /** Per cent of 1RM below which loads are light, and the share that targets keep. */
  readonly split: number;
  readonly keptShare: number;
  /** Per cent, at reserve 0. */
  readonly growthAtFailure: number;
  readonly bands: { readonly light: BandTruth; readonly heavy: BandTruth };
}

/** @param table text of the arms that were drawn from the plan */
export function stateTruth(plan: readonly PlannedStudy[], table: string): DemonstrationTruth {
  const { split, keptShare } = defaultSettings;
  if (split === null) throw new Error('invalid default settings; the truth is stated for light and heavy loads apart');
  const loads = plan.flatMap(listGrowthLoads);
  const bandOf = (own: readonly number[]): BandTruth => {
    const share = (reserve: number) => own.reduce((sum, load) => sum + trueKeptShare(load, reserve), 0) / own.length;
    return {
      target: round(bisect((reserve) => share(reserve) >= keptShare, 0, FURTHEST)),
      kept: LISTED_RESERVES.map((reserve) => ({ reserve, share: round(share(reserve)) })),
    };
  };
  return {
    note: DEMONSTRATION_NOTE,
    words: LOSS_WORDS,
    tableSha256: createHash('sha256').update(table).digest('hex'),
    split,
    keptShare,
    growthAtFailure: GROWTH_AT_FAILURE,
    bands: {
      light: bandOf(loads.filter((load) => load < split)),
      heavy: bandOf(loads.filter((load) => load >= split)),
    },
  };
}

/** The load of every row of growth that is fitted against reserve. */
function listGrowthLoads({ growth, arms, secondMuscle }: PlannedStudy): number[] {
  if (!growth) return [];
  return arms.flatMap(({ load, beyond }) => (beyond === 'none' ? (secondMuscle ? [load, load] : [load]) : []));
}

/** Six decimals: more than is ever shown, and the same text on every machine. */
function round(value: number): number {
  return Number(value.toFixed(6));
}
