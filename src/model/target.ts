/**
 * The target: the largest reserve that keeps a share of the growth at reserve 0.
 *
 * For kept share s the contrast c(r) = [x(r) − s x(0)]'β says whether reserve r keeps it. The point
 * is the largest r, from 0 on, up to which c ≥ 0. The set is every r whose contrast is not
 * rejected: |c(r)| / se(r) ≤ t(df(r)), with CR2 and Satterthwaite (Fieller 1954, J R Stat Soc B
 * 16:175, for a ratio; here for any linear basis). It can be in pieces, touch an end or be
 * empty, so it is scanned and the place of every change of side is found. Nothing is said beyond the studied
 * range of reserve.
 *
 * The interval is what is shown of the set, in one piece. True growth is taken not to rise with reserve:
 * what is lost at one reserve is lost at every larger one. So it begins with the set, ends before the
 * first reserve at which c is rejected from below, and has no upper end where there is none; where the
 * fitted curve turns up again later, that says nothing. A hump inside is not cut out.
 *
 * The share is of growth on the analysis scale: of the log ratio, not of its percentage. At a growth
 * of 10 % and a share of 0.9 the share of the percentage is 0.896.
 */

import { writePercent } from '../numerics/percent.ts';
import { bisect, findRoot } from '../numerics/roots.ts';
import type { CurveBasis } from './curve.ts';
import { findReserveDifference } from './reserveDifference.ts';
import type { Target } from './result.ts';
import { applyContrast, type ContrastInference, inferContrast, makeAcceptance, measureP } from './robust.ts';
import { showTarget } from './wholeRepetitions.ts';

/**
 * Distance of the scanned reserves, repetitions. Ends are found to full precision whatever the
 * step; a piece of the set could be missed only if it is narrower. Fine: a fiftieth of a
 * repetition, for an answer; coarse: for tables of many targets.
 */
export const SCAN_STEPS = { fine: 0.02, coarse: 0.1 } as const;

export interface TargetQuestion {
  /** Share of growth at reserve 0 to keep, 0 to 1 open. */
  readonly keptShare: number;
  /** Confidence level of the interval, 0 to 1 open. */
  readonly confidence: number;
  /** Largest reserve studied, above 0. */
  readonly furthest: number;
  /** Least reserve studied. */
  readonly nearest: number;
  /** Studies behind the fit. */
  readonly studies: number;
  /** Distance of the scanned reserves, repetitions; fine by default. */
  readonly step?: number;
}

/**
 * Growth at reserve 0 is read from the curve only where it was studied this close to 0: half a
 * repetition is what a whole-number report of reserve can be off by.
 */
export const NEAR_FAILURE = 0.5;

/**
 * Studies that a target needs. With 3 the growth at reserve 0, which it is a share of, could not be told from
 * nothing in a quarter of simulated tables, with 4 in one of fifty (`npm run calibrate`).
 */
export const LEAST_TARGET_STUDIES = 4;

/**
 * @param inference robust inference of the fit
 * @param x design row at a reserve: of the curve, and of covariates at the values asked about
 */
export function findTarget(
  inference: ContrastInference,
  x: CurveBasis['at'],
  { keptShare, confidence, furthest, nearest, studies, step = SCAN_STEPS.fine }: TargetQuestion,
): Target {
  if (studies < LEAST_TARGET_STUDIES) {
    return noTarget(
      keptShare,
      `no target: ${studies} studies are too few for one; at least ${LEAST_TARGET_STUDIES} are needed`,
    );
  }
  const atFailure = x(0);
  const contrast = (r: number) => x(r).map((value, j) => value - keptShare * atFailure[j]);
  const kept = (r: number) => applyContrast(contrast(r), inference.coefficients);
  const notRejected = makeAcceptance(inference, confidence);
  const grid = scanGrid(furthest, step);
  const contrasts = grid.map(contrast);
  const holds = contrasts.map(notRejected);
  const isLost = contrasts.map((one) => applyContrast(one, inference.coefficients) < 0);
  /** Where the contrast of a reserve becomes rejected, or ceases to be. */
  const findEnd = (from: number, to: number) => {
    const end = findRoot((r) => measureP(inference, contrast(r)) - (1 - confidence), from, to);
    if (!Number.isNaN(end)) return end;
    // The last digit of p may judge a reserve otherwise than its bounds do.
    const isIn = notRejected(contrast(from));
    return bisect((r) => notRejected(contrast(r)) === isIn, from, to);
  };
  const set = joinPieces(grid, holds, findEnd);
  const growth = inferContrast(inference, atFailure, confidence);
  const refusal = refuseTarget(growth, nearest, confidence);
  if (refusal) return { ...noTarget(keptShare, refusal), set };

  const firstLost = isLost.indexOf(true);
  const lost = firstLost < 0 ? null : grid[firstLost];
  const surelyLost = grid.find((_, i) => isLost[i] && !holds[i]) ?? null;
  const shown = set.filter(([from]) => surelyLost === null || from < surelyLost);
  const reachedEdge = lost === null;
  // Between two scanned reserves the set may be missed, where it is narrower than their distance.
  const least = shown[0]?.[0] ?? furthest;
  const isSeen = () => Object.values(findReserveDifference(inference, x, furthest, confidence)).some(Boolean);
  if (reachedEdge && !isSeen()) {
    return { ...noTarget(keptShare, explainNoDifference(furthest)), set, low: least, reachedEdge };
  }
  const regained = set[shown.length]?.[0] ?? null;
  const isLostAgain = regained !== null && grid.some((r, i) => r > regained && isLost[i] && !holds[i]);
  const point = lost === null ? furthest : findRoot(kept, grid[firstLost - 1], lost);
  const low = Math.min(least, point);
  const high = surelyLost === null ? null : Math.max(shown.at(-1)?.[1] ?? point, point);
  return {
    keptShare,
    point,
    low,
    high,
    set,
    ...showTarget({ point, low, high }),
    reachedEdge,
    reason: explain(reachedEdge, high, regained, isLostAgain, furthest),
  };
}

/** A target that does not exist, with the sentence that says why. */
export function noTarget(keptShare: number, reason: string): Target {
  return {
    keptShare,
    point: null,
    low: null,
    high: null,
    set: [],
    shown: null,
    whole: null,
    reachedEdge: false,
    reason,
  };
}

function refuseTarget(
  growth: { estimate: number; ciLow: number; ciHigh: number },
  nearest: number,
  confidence: number,
): string | null {
  if (nearest > NEAR_FAILURE) {
    return `no target: nobody here trained to reserve 0; the least reserve studied is ${nearest}`;
  }
  if (!(growth.ciLow > 0)) {
    return `no target: the change at reserve 0 is not distinguishable from nothing or from a loss (${writePercent(confidence)} interval contains 0 or lies below it)`;
  }
  return null;
}

function explainNoDifference(furthest: number): string {
  return `no target: reserve makes no difference that this table can see, up to ${furthest}, the most studied`;
}

/** @param regained where beyond a certain loss the share is no longer surely lost, and `isLostAgain` whether it is further out; null where it stays lost */
function explain(
  reachedEdge: boolean,
  high: number | null,
  regained: number | null,
  isLostAgain: boolean,
  furthest: number,
): string | null {
  const parts: string[] = [];
  if (reachedEdge) {
    parts.push(
      `the edge of the studied range is reached: the share is kept up to the largest reserve studied, ${furthest}`,
    );
  }
  if (high === null) parts.push('this evidence sets no upper end');
  if (regained !== null) {
    // Where the curve has turned up, or is less sure.
    parts.push(
      `from ${regained.toFixed(1)} in reserve${isLostAgain ? '' : ' on'} it is no longer sure that less is kept; what is kept is taken not to rise with reserve, so the interval ends where it is first sure`,
    );
  }
  return parts.length > 0 ? parts.join('; ') : null;
}

/** Closed intervals of the grid's range on which its points hold; `findEnd` finds the end between two of which one does. */
function joinPieces(
  grid: readonly number[],
  holds: readonly boolean[],
  findEnd: (from: number, to: number) => number,
): [number, number][] {
  const pieces: [number, number][] = [];
  let start: number | null = holds[0] ? grid[0] : null;
  for (let i = 1; i < grid.length; i++) {
    if (holds[i] && start === null) start = findEnd(grid[i - 1], grid[i]);
    if (!holds[i] && start !== null) {
      pieces.push([start, findEnd(grid[i - 1], grid[i])]);
      start = null;
    }
  }
  if (start !== null) pieces.push([start, grid[grid.length - 1]]);
  return pieces;
}

/** 0, step, 2 step, … and `furthest` itself. */
function scanGrid(furthest: number, step: number): readonly number[] {
  const steps = Math.max(1, Math.ceil(furthest / step));
  return Array.from({ length: steps + 1 }, (_, i) => (i === steps ? furthest : i * step));
}
