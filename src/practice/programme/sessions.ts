/**
 * A programme against the calendar: recovery after each day's session, and what is left of its fatigue
 * at the event. The evidence is of single sessions; that sessions add up is not in it, so the one that
 * leaves most is named.
 */
import type { PracticeAnalysis } from '../../model/full.ts';
import { unpackInference } from '../../model/response.ts';
import type { Estimate } from '../../model/result.ts';
import { inferContrast } from '../../model/robust.ts';
import { HOURS_WITHOUT_FAILURE } from '../commonPractice.ts';
import { type EventVerdict, judgeEvent, type RecoveryAnswer, recoveryAfter } from '../recovery.ts';
import type { TrainingStatus } from '../situation.ts';
import type { ProgrammeLine } from './columns.ts';

export interface Calendar {
  readonly status: TrainingStatus;
  /** Hour of the day at which sessions end, 0–23. */
  readonly sessionHour: number;
  /** Day (1 is the first Monday) and hour of the event; null where there is none. */
  readonly event: { readonly day: number; readonly hour: number } | null;
}

export interface Session {
  readonly day: number;
  readonly sets: number;
  /** Fewest repetitions in reserve of its sets: those decide its recovery. */
  readonly reserve: number;
  readonly recovery: RecoveryAnswer;
  /** Hours to the event; null without one, and for sessions after it. */
  readonly hoursToEvent: number | null;
  readonly verdict: EventVerdict | null;
  /** Expected drop of performance at the event, log ratio, above 0 a loss; null where not known. */
  readonly drop: Estimate | null;
  /** True inside the hours in which failure is kept away from, where a set leaves less than 1 (common practice, no source). */
  readonly nearFailureBeforeEvent: boolean;
}

export const HOURS_OF_DAY = 24;

/** The sessions by day, one for all lines of a day. */
export function listSessions(
  analysis: PracticeAnalysis,
  lines: readonly ProgrammeLine[],
  calendar: Calendar,
): readonly Session[] {
  const days = [...new Set(lines.map(({ day }) => day))].sort((a, b) => a - b);
  return days.map((day) =>
    summariseSession(
      analysis,
      lines.filter((line) => line.day === day),
      day,
      calendar,
    ),
  );
}

/** The session that leaves most fatigue at the event; null where none is before one or recovery is not known. */
export function worstBeforeEvent(sessions: readonly Session[]): Session | null {
  return sessions.reduce<Session | null>(
    (worst, session) =>
      session.drop && session.drop.estimate > (worst?.drop?.estimate ?? Number.NEGATIVE_INFINITY) ? session : worst,
    null,
  );
}

/** Drop at the event after `second`'s session minus that after `first`'s; null where one is not known or both are the same. */
export function compareDrops(
  analysis: PracticeAnalysis,
  status: TrainingStatus,
  first: Session | null,
  second: Session | null,
): Estimate | null {
  const [before, after] = [first, second].map((session) => session && dropContrast(analysis, status, session));
  if (!before || !after) return null;
  return inferDrop(
    analysis,
    status,
    after.map((value, j) => value - before[j]),
  );
}

function summariseSession(
  analysis: PracticeAnalysis,
  lines: readonly ProgrammeLine[],
  day: number,
  { status, sessionHour, event }: Calendar,
): Session {
  const reserve = lines.reduce((least, line) => Math.min(least, line.reserve), Number.POSITIVE_INFINITY);
  const recovery = recoveryAfter(analysis.fatigue, status, reserve);
  const hours = event && HOURS_OF_DAY * (event.day - day) + event.hour - sessionHour;
  const hoursToEvent = hours !== null && hours >= 0 ? hours : null;
  const session = {
    day,
    sets: lines.reduce((sum, { sets }) => sum + sets, 0),
    reserve,
    recovery,
    hoursToEvent,
    verdict: hoursToEvent === null || !recovery.time ? null : judgeEvent(recovery.time, hoursToEvent),
    nearFailureBeforeEvent: hoursToEvent !== null && hoursToEvent < HOURS_WITHOUT_FAILURE[status] && reserve < 1,
    drop: null,
  };
  const contrast = dropContrast(analysis, status, session);
  return { ...session, drop: contrast && inferDrop(analysis, status, contrast) };
}

/** (e, r e) with e = exp(−h/T): the drop at the event as a contrast of a and b, see model/fatigue.ts. */
function dropContrast(
  { fatigue }: PracticeAnalysis,
  status: TrainingStatus,
  { hoursToEvent, recovery }: Pick<Session, 'hoursToEvent' | 'recovery'>,
): readonly [number, number] | null {
  const decay = fatigue.byStatus.find((one) => one.status === status)?.decay;
  if (!decay || hoursToEvent === null || !recovery.time) return null;
  const fade = Math.exp(-hoursToEvent / decay.hours);
  return [fade, fade * recovery.time.reserve];
}

function inferDrop(
  { fatigue, settings }: PracticeAnalysis,
  status: TrainingStatus,
  contrast: readonly number[],
): Estimate | null {
  const plain = fatigue.byStatus.find((one) => one.status === status)?.inference;
  if (!plain || contrast.every((value) => value === 0)) return null;
  return inferContrast(unpackInference(plain), contrast, settings.confidence);
}
