/**
 * Tables with a known truth, drawn under the working model: what calibration is measured on.
 */
import type { Random } from '../numerics/random.ts';
import type { Observation } from './observations.ts';

export interface SimulationTruth {
  /** Growth at reserve 0, log ratio. */
  readonly intercept: number;
  /** Per repetition in reserve. */
  readonly slope: number;
  /** SD between studies, and between rows of a study. */
  readonly tau: number;
  readonly omega: number;
  /** Correlation of sampling errors inside a cohort. */
  readonly rho: number;
}

export interface SimulatedTable {
  readonly observations: readonly Observation[];
  readonly reserves: readonly number[];
}

/** Fewest and most arms of a study; each is measured once or twice on the same people. */
const ARMS = { fewest: 2, most: 4 } as const;
/** Most reserve an arm may train with, repetitions. */
const MOST_RESERVE = 10;
/** Sampling SDs of log ratios in studies of muscle size, about 0.5 to 2 points of per cent. */
const SAMPLING_SD = { least: 0.005, most: 0.02 } as const;

/** One table of `studies` studies, each with an arm at reserve 0. */
export function simulateTable(truth: SimulationTruth, studies: number, { uniform, normal }: Random): SimulatedTable {
  const observations: Observation[] = [];
  const reserves: number[] = [];
  for (let k = 0; k < studies; k++) {
    const study = `S${String(k).padStart(4, '0')}`;
    const shift = truth.tau * normal();
    const arms = ARMS.fewest + Math.floor((ARMS.most - ARMS.fewest + 1) * uniform());
    for (let arm = 0; arm < arms; arm++) {
      const reserve = arm === 0 ? 0 : 1 + Math.floor(MOST_RESERVE * uniform());
      const rows = uniform() < 0.5 ? 1 : 2;
      const shared = normal();
      for (let row = 0; row < rows; row++) {
        const sd = SAMPLING_SD.least + (SAMPLING_SD.most - SAMPLING_SD.least) * uniform();
        const error = Math.sqrt(truth.rho) * shared + Math.sqrt(1 - truth.rho) * normal();
        reserves.push(reserve);
        observations.push({
          study,
          cohort: `a${arm}`,
          y: truth.intercept + truth.slope * reserve + shift + truth.omega * normal() + sd * error,
          v: sd * sd,
        });
      }
    }
  }
  return { observations, reserves };
}
