/**
 * The invented truth behind the demonstration evidence. Nothing here is an estimate of the real
 * world; the numbers were chosen so that a reader can see whether a fit recovers them.
 */
import { toPercent } from '../../src/numerics/percent.ts';

/** Growth at reserve 0 in per cent, at every load. */
export const GROWTH_AT_FAILURE = 7.5;
/**
 * Share of growth (of the log ratio) that r repetitions in reserve lose: most · rˢ / (rˢ + halfˢ), s the
 * steepness, half the reserve that loses half of the most (the saturating curve of Hill 1910, J Physiol 40:iv).
 * None of the shapes that the engine fits: with light loads growth is lost from the first repetition on and ever
 * more slowly, with heavy loads hardly any at first. A tenth is lost at 1 repetition with light loads and at 3.4
 * with heavy ones.
 */
export const LOSS = {
  light: { most: 0.6, half: 5, steepness: 1 },
  heavy: { most: 0.45, half: 6.36, steepness: 2 },
} as const;
/** The same in words, for the Methods page. */
export const LOSS_WORDS =
  'With light loads growth is lost from the first repetition in reserve on and ever more slowly, with heavy loads hardly any at first; between 55 and 75 % of 1RM the two are mixed.';
/** Per cent of 1RM up to which the light curve holds and from which the heavy one does; a mixture between them. */
export const MIXED_LOADS = { from: 55, to: 75 } as const;
/** Growth, percentage points: SD between studies, and between rows of a study. */
export const GROWTH_SPREAD = { study: 2, row: 0.6 } as const;
/** Percentage points of growth that work beyond failure adds to training at failure. */
export const BEYOND_FAILURE_GAIN = { partials: 1, 'load-drops': 0 } as const;

/** Strength gain in per cent at 75 % of 1RM, per point of load, and per repetition in reserve. */
export const STRENGTH = { at75: 20, perLoad: 0.25, perReserve: 0 } as const;
/** Strength, percentage points: SD between studies, and between rows of a study. */
export const STRENGTH_SPREAD = { study: 3, row: 1.5 } as const;

/**
 * Drop of performance after h hours, hundredths of the log ratio: (start + perReserve · reserve) · exp(−h / hours).
 * A drop of 2 % (2.02) is reached from failure after 48 h untrained (24.8 ln 6.93) and 24 h trained (15 ln 4.95).
 */
export const FATIGUE = {
  untrained: { start: 14, perReserve: -1.4, hours: 24.8 },
  trained: { start: 10, perReserve: -1, hours: 15 },
} as const;
/** Fatigue, percentage points: SD between studies, and between rows of a study. */
export const FATIGUE_SPREAD = { study: 0.6, row: 0.5 } as const;

/** Correlation of sampling errors of rows that measured the same people. */
export const SHARED_ERROR = 0.5;

/** True growth of an arm in per cent, before the spread between studies and rows. */
export function trueGrowth(load: number, reserve: number): number {
  return toPercent(Math.log1p(GROWTH_AT_FAILURE / 100) * trueKeptShare(load, reserve));
}

/** True share of the growth at reserve 0 that a reserve keeps: of the log ratio, as the engine's kept share is. */
export function trueKeptShare(load: number, reserve: number): number {
  const { from, to } = MIXED_LOADS;
  const heavy = Math.min(1, Math.max(0, (load - from) / (to - from)));
  return 1 - heavy * lostShare('heavy', reserve) - (1 - heavy) * lostShare('light', reserve);
}

function lostShare(loads: keyof typeof LOSS, reserve: number): number {
  const { most, half, steepness } = LOSS[loads];
  return (most * reserve ** steepness) / (reserve ** steepness + half ** steepness);
}

/** True strength gain of an arm in per cent. */
export function trueStrength(load: number, reserve: number): number {
  return STRENGTH.at75 + STRENGTH.perLoad * (load - 75) + STRENGTH.perReserve * reserve;
}

/** True drop of performance in per cent. */
export function trueDrop(status: 'untrained' | 'trained', reserve: number, hours: number): number {
  const { start, perReserve, hours: decay } = FATIGUE[status];
  const left = (Math.max(0, start + perReserve * reserve) * Math.exp(-hours / decay)) / 100;
  return -toPercent(-left);
}
