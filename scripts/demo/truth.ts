/**
 * The invented truth behind the demonstration evidence. Nothing here is an estimate of the real
 * world; the numbers were chosen so that a reader can see whether a fit recovers them.
 */

/** Percentage points of growth at reserve 0, in both bands. */
export const GROWTH_AT_FAILURE = 7.5;
/** Percentage points of growth per repetition in reserve. */
export const GROWTH_SLOPE = { light: -0.55, heavy: -0.22 } as const;
/** Growth, percentage points: SD between studies, and between rows of a study. */
export const GROWTH_SPREAD = { study: 2, row: 0.8 } as const;
/** Percentage points of growth that work beyond failure adds to training at failure. */
export const BEYOND_FAILURE_GAIN = 0.3;

/** Strength gain in per cent at 75 % of 1RM, per point of load, and per repetition in reserve. */
export const STRENGTH = { at75: 20, perLoad: 0.25, perReserve: 0 } as const;
/** Strength, percentage points: SD between studies, and between rows of a study. */
export const STRENGTH_SPREAD = { study: 3, row: 1.5 } as const;

/**
 * Drop of performance in per cent after h hours: (start + perReserve · reserve) · exp(−h / hours).
 * A drop of 2 % is reached from failure after 48 h untrained (24.7 ln 7) and 24 h trained (14.9 ln 5).
 */
export const FATIGUE = {
  untrained: { start: 14, perReserve: -1.4, hours: 24.7 },
  trained: { start: 10, perReserve: -1, hours: 14.9 },
} as const;
/** Fatigue, percentage points: SD between studies, and between rows of a study. */
export const FATIGUE_SPREAD = { study: 0.6, row: 0.5 } as const;

/** Correlation of sampling errors of rows that measured the same people. */
export const SHARED_ERROR = 0.5;

/** Per cent of 1RM at and above which a load is heavy. */
const SPLIT = 60;

/** True growth of an arm in per cent, before the spread between studies and rows. */
export function trueGrowth(load: number, reserve: number): number {
  return GROWTH_AT_FAILURE + (load < SPLIT ? GROWTH_SLOPE.light : GROWTH_SLOPE.heavy) * reserve;
}

/** True strength gain of an arm in per cent. */
export function trueStrength(load: number, reserve: number): number {
  return STRENGTH.at75 + STRENGTH.perLoad * (load - 75) + STRENGTH.perReserve * reserve;
}

/** True drop of performance in per cent. */
export function trueDrop(status: 'untrained' | 'trained', reserve: number, hours: number): number {
  const { start, perReserve, hours: decay } = FATIGUE[status];
  return Math.max(0, start + perReserve * reserve) * Math.exp(-hours / decay);
}
