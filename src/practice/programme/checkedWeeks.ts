/** What pages ask of the weeks of a check, apart from all that works them out. */
import type { WeekCheck } from './byWeek.ts';
import { weekOfDay } from './columns.ts';
import type { Session } from './sessions.ts';

/** True for a programme of more than its first week. */
export function isBlock(weeks: readonly Pick<WeekCheck, 'week'>[]): boolean {
  return weeks.some(({ week }) => week > 1);
}

/** Week whose sessions are looked at first: the last that has one before the event, else the first of all. */
export function weekToShow(sessions: readonly Session[]): number {
  const before = sessions.findLast(({ hoursToEvent }) => hoursToEvent !== null);
  return weekOfDay((before ?? sessions[0])?.day ?? 1);
}
