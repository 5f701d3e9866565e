/** A session before an event: whether recovery is expected in time, and what to do where it is not. */
import type { PracticeAnalysis } from '../model/full.ts';
import { countOf } from '../numerics/countOf.ts';
import { type Judgement, sayAtLeast, TAKEN_AS_SAID } from './judgement.ts';
import {
  type EventVerdict,
  judgeEvent,
  leastReserveInTime,
  type RecoveryAnswer,
  type RecoveryTime,
  recoveryAfter,
  writeHours,
} from './recovery.ts';
import type { TrainingStatus } from './situation.ts';

export interface EventAnswer {
  /** From the session to the event, as asked. */
  readonly hours: number;
  /** Recovery after sets that end with what may really be left, the slower end of it; null where none is known. */
  readonly time: RecoveryTime | null;
  readonly verdict: EventVerdict | null;
  /** What it means for the session. */
  readonly sentence: string;
}

/** What more reserve can be asked for: how the lifter judges it, and the most that a set at the load can leave. */
interface Sayable {
  readonly judgement: Judgement;
  readonly most: number;
}
const ANY_RESERVE: Sayable = { judgement: TAKEN_AS_SAID, most: Number.POSITIVE_INFINITY };

/**
 * @param hours from the session to the event, at least 0
 * @param left fewest and most repetitions really left; the one that takes longer to recover from decides
 */
export function judgeSession(
  analysis: PracticeAnalysis,
  status: TrainingStatus,
  hours: number,
  left: { readonly low: number; readonly high: number },
  sayable = ANY_RESERVE,
): EventAnswer {
  const { time, reason } = slowestRecovery(analysis, status, left);
  if (!time) return { hours, time: null, verdict: null, sentence: `Recovery is not known: ${reason}.` };
  const verdict = judgeEvent(time, hours);
  return { hours, time, verdict, sentence: stateVerdict(analysis, status, hours, time, verdict, sayable) };
}

/** Recovery after what is really left, the slower end of it. */
export function slowestRecovery(
  { fatigue }: Pick<PracticeAnalysis, 'fatigue'>,
  status: TrainingStatus,
  { low, high }: { readonly low: number; readonly high: number },
): RecoveryAnswer {
  const least = recoveryAfter(fatigue, status, low);
  const most = recoveryAfter(fatigue, status, high);
  return least.time && most.time && most.time.hours > least.time.hours ? most : least;
}

function stateVerdict(
  { fatigue, settings }: PracticeAnalysis,
  status: TrainingStatus,
  hours: number,
  time: RecoveryTime,
  verdict: EventVerdict,
  sayable: Sayable,
): string {
  const takes = writeHours(time.hours);
  const left = countOf(Number(hours.toFixed(1)), 'hour is', 'hours are');
  const fact = `within ${settings.fatigueMargin}\u00a0% of full performance ${takes} after sets with ${time.reserve} in reserve, and ${left} left`;
  if (verdict === 'in time') return `Recovered before the event: ${fact}.`;
  if (verdict === 'expected in time') {
    const end = time.high === null ? 'has no upper limit' : `goes up to ${writeHours(time.high)}`;
    return `Expected to be recovered before the event, but not surely: ${fact}; the interval ${end}.`;
  }
  // Less reserve is no advice for freshness, whatever a noisy fit says of it.
  const other = leastReserveInTime(fatigue, status, hours).time;
  const more = other && other.reserve > time.reserve ? `${askForMore(other, sayable)}, or ` : '';
  return `Not recovered before the event: ${fact}. Instead ${more}move the session to at least ${writeHours(time.hours)} before it.`;
}

/** “leave 5 in reserve (12 hours)”, in what the lifter is to say, at a load at which a set can leave it. */
function askForMore({ reserve, hours }: RecoveryTime, { judgement, most }: Sayable): string {
  const said = sayAtLeast(reserve, judgement);
  const lighter = Math.max(said, reserve) > most ? 'take a lighter load and ' : '';
  const leave =
    said === reserve
      ? `leave ${reserve} in reserve`
      : `leave ${said} in reserve as this lifter says it, so that at least ${reserve} ${reserve === 1 ? 'is' : 'are'} really left`;
  return `${lighter}${leave} (${writeHours(hours)})`;
}
