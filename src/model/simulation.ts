/**
 * Tables with a known truth, drawn under the working model: what calibration is measured on.
 */
import type { Random } from '../numerics/random.ts';
import type { Observation } from './observations.ts';
import type { Growth } from './truths.ts';

/** How effects scatter around a truth. */
export interface Scatter {
  /** SD between studies, and between rows of a study, log ratio. */
  readonly tau: number;
  readonly omega: number;
  /** Correlation of sampling errors inside a cohort. */
  readonly rho: number;
}

/** A straight line as the truth. */
export interface SimulationTruth extends Scatter {
  /** Growth at reserve 0, log ratio. */
  readonly intercept: number;
  /** Per repetition in reserve. */
  readonly slope: number;
}

export interface SimulatedTable {
  readonly observations: readonly Observation[];
  readonly reserves: readonly number[];
}

/** Fewest and most arms of a study; each is measured once or twice on the same people. */
const ARMS = { fewest: 2, most: 4 } as const;
/** Most reserve an arm may train with, repetitions. */
export const MOST_RESERVE = 10;
/** Sampling SDs of log ratios in studies of muscle size, about 0.5 to 2 points of per cent. */
const SAMPLING_SD = { least: 0.005, most: 0.02 } as const;
/** Near failure, so many of ten arms leave this many repetitions at most; the others more, as far as anywhere. */
const NEAR = { upTo: 4, share: 0.9 } as const;

/** How the arms that leave something in reserve are laid out: whole repetitions from one draw in [0, 1). */
export const LAYOUTS = {
  /** Anything from 1 to 10, each as often. */
  spread: (draw) => 1 + Math.floor(MOST_RESERVE * draw),
  /** Nine of ten arms from 1 to 4, the others from 5 to 10. */
  near: (draw) =>
    draw < NEAR.share
      ? 1 + Math.floor((NEAR.upTo * draw) / NEAR.share)
      : NEAR.upTo + 1 + Math.floor(((MOST_RESERVE - NEAR.upTo) * (draw - NEAR.share)) / (1 - NEAR.share)),
} as const satisfies Readonly<Record<string, (draw: number) => number>>;

export type Layout = keyof typeof LAYOUTS;

/** One table of `studies` studies around a straight line, each with an arm at reserve 0. */
export function simulateTable(truth: SimulationTruth, studies: number, random: Random): SimulatedTable {
  return simulateGrowth((reserve) => truth.intercept + truth.slope * reserve, truth, 'spread', studies, random);
}

/** One table of `studies` studies around any truth, each with an arm at reserve 0. */
export function simulateGrowth(
  growth: Growth,
  { tau, omega, rho }: Scatter,
  layout: Layout,
  studies: number,
  { uniform, normal }: Random,
): SimulatedTable {
  const observations: Observation[] = [];
  const reserves: number[] = [];
  for (let k = 0; k < studies; k++) {
    const study = `S${String(k).padStart(4, '0')}`;
    const shift = tau * normal();
    const arms = ARMS.fewest + Math.floor((ARMS.most - ARMS.fewest + 1) * uniform());
    for (let arm = 0; arm < arms; arm++) {
      const reserve = arm === 0 ? 0 : LAYOUTS[layout](uniform());
      const rows = uniform() < 0.5 ? 1 : 2;
      const shared = normal();
      for (let row = 0; row < rows; row++) {
        const sd = SAMPLING_SD.least + (SAMPLING_SD.most - SAMPLING_SD.least) * uniform();
        const error = Math.sqrt(rho) * shared + Math.sqrt(1 - rho) * normal();
        reserves.push(reserve);
        observations.push({
          study,
          cohort: `a${arm}`,
          y: growth(reserve) + shift + omega * normal() + sd * error,
          v: sd * sd,
        });
      }
    }
  }
  return { observations, reserves };
}
