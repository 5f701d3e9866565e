/** Recovery read for a lifter: how long after a set's reserve, and whether that is before an event. */
import type { PracticeAnalysis } from '../model/full.ts';
import { countOf } from '../numerics/countOf.ts';
import type { TrainingStatus } from './situation.ts';

export interface RecoveryTime {
  /** Whole reserve, repetitions, that the hours are listed for: at or below the one asked for, and studied. */
  readonly reserve: number;
  /** Hours until the expected drop is inside the margin. */
  readonly hours: number;
  /** Profile limits; null where this evidence does not limit them. */
  readonly low: number | null;
  readonly high: number | null;
  /** True where the reserve asked for lies beyond the studied ones. */
  readonly isBeyondStudied: boolean;
}

export type RecoveryAnswer =
  | { readonly time: RecoveryTime; readonly reason: null }
  | { readonly time: null; readonly reason: string };

/** in time: the whole interval is; expected in time: the estimate is; not in time: it is not. */
export type EventVerdict = 'in time' | 'expected in time' | 'not in time';

/**
 * Recovery after a session whose sets ended at a reserve: of the nearest listed reserve that is no
 * greater, so that it is not made to look shorter.
 */
export function recoveryAfter(
  fatigue: PracticeAnalysis['fatigue'],
  status: TrainingStatus,
  reserve: number,
): RecoveryAnswer {
  const found = fatigue.byStatus.find((one) => one.status === status);
  if (!found || found.failure) {
    return { time: null, reason: found?.failure?.reason ?? `no rows of ${status} people` };
  }
  const listed = found.recovery.filter((one) => one.reserve <= reserve).at(-1);
  if (!listed) {
    const asked = Number(reserve.toFixed(1));
    const few = asked === 0 ? '0' : `${asked} or fewer`;
    return { time: null, reason: `no session with ${few} in reserve was studied in ${status} people` };
  }
  const { hours, low, high } = listed;
  const furthest = found.recovery.at(-1)?.reserve ?? listed.reserve;
  return {
    time: { reserve: listed.reserve, hours, low, high, isBeyondStudied: reserve > furthest },
    reason: null,
  };
}

/** Hours of recovery as they are told and judged everywhere: up to the next whole one, since they are not known more finely. */
export function wholeHours(hours: number): number {
  // A root found by bisection may end a rounding above the whole hour.
  return Math.ceil(hours - 1e-9);
}

/** “20 hours” */
export function writeHours(hours: number): string {
  return countOf(wholeHours(hours), 'hour');
}

/** Reserve, repetitions, well short of failure that is told beside the least studied. */
const SHORT_OF_FAILURE = 3;

/** Of the listed recoveries those that are drawn and told: of the least reserve studied, and of one well short of failure. */
export function chooseTold<One extends { readonly reserve: number }>(recovery: readonly One[]): readonly One[] {
  const further = recovery.find(({ reserve }) => reserve === SHORT_OF_FAILURE) ?? recovery.at(-1);
  return further && recovery[0] !== further ? [recovery[0], further] : recovery.slice(0, 1);
}

/** @param hoursToEvent from the session to the event, at least 0 */
export function judgeEvent({ hours, high }: Pick<RecoveryTime, 'hours' | 'high'>, hoursToEvent: number): EventVerdict {
  if (high !== null && wholeHours(high) <= hoursToEvent) return 'in time';
  return wholeHours(hours) <= hoursToEvent ? 'expected in time' : 'not in time';
}

/**
 * Least reserve after which a lifter is back before the event: with the whole interval where one is,
 * else by the estimate.
 *
 * @returns time null where no studied reserve is, with the shortest recovery there is
 */
export function leastReserveInTime(
  fatigue: PracticeAnalysis['fatigue'],
  status: TrainingStatus,
  hoursToEvent: number,
): { readonly time: RecoveryTime | null; readonly verdict: EventVerdict; readonly shortest: RecoveryTime | null } {
  const times = (fatigue.byStatus.find((one) => one.status === status)?.recovery ?? []).map(
    ({ reserve, hours, low, high }): RecoveryTime => ({ reserve, hours, low, high, isBeyondStudied: false }),
  );
  const shortest = times.reduce<RecoveryTime | null>(
    (best, time) => (best === null || time.hours < best.hours ? time : best),
    null,
  );
  for (const verdict of ['in time', 'expected in time'] as const) {
    const time = times.find((one) => judgeEvent(one, hoursToEvent) === verdict);
    if (time) return { time, verdict, shortest };
  }
  return { time: null, verdict: 'not in time', shortest };
}
