/** A session before an event: whether recovery is expected in time, and what to do where it is not. */
import type { PracticeAnalysis } from '../model/full.ts';
import { type EventVerdict, judgeEvent, leastReserveInTime, type RecoveryTime, recoveryAfter } from './recovery.ts';
import type { TrainingStatus } from './situation.ts';

export interface EventAnswer {
  readonly hours: number;
  /** Recovery after sets that end with the least that may really be left; null where none is known. */
  readonly time: RecoveryTime | null;
  readonly verdict: EventVerdict | null;
  /** What it means for the session. */
  readonly sentence: string;
}

/**
 * @param hours from the session to the event, at least 0
 * @param reserve repetitions really left, the fewest
 */
export function judgeSession(
  analysis: PracticeAnalysis,
  status: TrainingStatus,
  hours: number,
  reserve: number,
): EventAnswer {
  const { time, reason } = recoveryAfter(analysis.fatigue, status, reserve);
  if (!time) return { hours, time: null, verdict: null, sentence: `Recovery is not known: ${reason}.` };
  const verdict = judgeEvent(time, hours);
  const margin = analysis.settings.fatigueMargin;
  const takes = `within ${margin} % of full performance ${Math.ceil(time.hours)} hours after sets with ${time.reserve} in reserve, and ${Math.round(hours)} are left`;
  if (verdict === 'in time') return { hours, time, verdict, sentence: `Recovered before the event: ${takes}.` };
  if (verdict === 'expected in time') {
    const end = time.high === null ? 'without an upper limit' : `up to ${Math.ceil(time.high)} hours`;
    return {
      hours,
      time,
      verdict,
      sentence: `Expected to be recovered before the event, but not surely: ${takes}; the interval goes ${end}.`,
    };
  }
  const other = leastReserveInTime(analysis.fatigue, status, hours).time;
  const more = other ? `leave ${other.reserve} in reserve (${Math.ceil(other.hours)} hours), or ` : '';
  return {
    hours,
    time,
    verdict,
    sentence: `Not recovered before the event: ${takes}. Instead ${more}move the session to at least ${Math.ceil(time.hours)} hours before it.`,
  };
}
