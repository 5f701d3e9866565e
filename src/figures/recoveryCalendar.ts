/** Sessions of a programme on the calendar: how long recovery takes after each, and the event. */

import * as Plot from '@observablehq/plot';
import type { PracticeAnalysis } from '../model/full.ts';
import { COMMON_PRACTICE_TAG, HOURS_WITHOUT_FAILURE } from '../practice/commonPractice.ts';
import { WEEKDAYS, weekOfDay, writeDay } from '../practice/programme/columns.ts';
import { type Calendar, HOURS_OF_DAY, type Session, worstBeforeEvent } from '../practice/programme/sessions.ts';
import { wholeHours } from '../practice/recovery.ts';
import { describedByWords, type Figure } from './figure.ts';
import { formatHours, formatNumber, formatPlain, lossInPercent } from './format.ts';
import { FIGURE_STYLE } from './looks.ts';

export interface RecoveryCalendarOptions {
  readonly calendar: Calendar;
  /** Week whose sessions are drawn; all of them where none is given. Title, caption and table are of all. */
  readonly week?: number;
  readonly width?: number;
}

/** Height of a session's row and of what stands above and below the rows, pixels. */
const ROW = 26;
const AROUND = 72;

interface Bar {
  readonly name: string;
  /** Days since the start of the first Monday. */
  readonly from: number;
  readonly to: number;
  readonly high: number;
  readonly isLate: 'yes' | 'no';
  readonly label: string;
}

export function recoveryCalendar(
  sessions: readonly Session[],
  { settings }: Pick<PracticeAnalysis, 'settings'>,
  { calendar, week, width = 420 }: RecoveryCalendarOptions,
): Figure {
  const { event, sessionHour } = calendar;
  const drawn = week === undefined ? sessions : sessions.filter(({ day }) => weekOfDay(day) === week);
  const bars = drawn.flatMap((session): Bar[] => {
    const { time } = session.recovery;
    if (!time) return [];
    const from = session.day - 1 + sessionHour / HOURS_OF_DAY;
    return [
      {
        name: writeDay(session.day),
        from,
        to: from + time.hours / HOURS_OF_DAY,
        high: from + (time.high ?? time.hours) / HOURS_OF_DAY,
        isLate: session.verdict === 'not in time' ? 'yes' : 'no',
        label: `${shortDay(session.day - 1)}, ${formatPlain(session.reserve)} left`,
      },
    ];
  });
  const eventDay = event ? event.day - 1 + event.hour / HOURS_OF_DAY : null;
  // An event of another week would press the week that is drawn into a corner.
  const eventAt = event && (week === undefined || weekOfDay(event.day) === week) ? eventDay : null;
  const start = week === undefined ? WEEKDAYS.length : (week - 1) * WEEKDAYS.length;
  const first = Math.floor(Math.min(...bars.map(({ from }) => from), eventAt ?? Number.POSITIVE_INFINITY, start));
  const last = Math.ceil(Math.max(...bars.map(({ high }) => high), eventAt ?? 0, first + 1));
  const days = Array.from({ length: last - first + 1 }, (_, i) => first + i);
  const step = Math.ceil(days.length / 8);
  const sentence = stateCalendar(sessions, calendar, settings.fatigueMargin);
  return describedByWords({
    plot: {
      width,
      height: AROUND + ROW * Math.max(1, bars.length),
      marginLeft: 92,
      marginRight: 16,
      marginTop: 28,
      marginBottom: 40,
      style: FIGURE_STYLE,
      x: {
        domain: [first, last],
        ticks: days.filter((_, i) => i % step === 0),
        tickFormat: shortDay,
        tickSize: 0,
        grid: true,
        label: null,
      },
      y: { type: 'band', domain: bars.map(({ name }) => name), axis: null, padding: 0.35 },
      marks: [
        Plot.ruleY(bars, { y: 'name', x1: 'from', x2: 'high', stroke: 'var(--ink)', strokeOpacity: 0.6 }),
        Plot.rectX(bars, {
          y: 'name',
          x1: 'from',
          x2: 'to',
          fill: 'var(--ink)',
          fillOpacity: ({ isLate }: Bar) => (isLate === 'yes' ? 1 : 0.45),
        }),
        Plot.text(bars, {
          y: 'name',
          frameAnchor: 'left',
          dx: -8,
          text: 'label',
          textAnchor: 'end',
          fill: 'var(--ink)',
        }),
        ...(eventAt === null
          ? []
          : [
              Plot.ruleX([eventAt], { stroke: 'currentColor', strokeWidth: 2 }),
              Plot.text(['event'], { x: eventAt, frameAnchor: 'top', dy: -16, fill: 'var(--ink)' }),
            ]),
      ],
    },
    title: titleOf(sessions, event !== null),
    caption: week === undefined ? sentence : `Drawn are the sessions of week ${week}. ${sentence}`,
    table: {
      columns: [
        'session',
        'fewest in reserve',
        'hours until recovered',
        'interval',
        'hours to the event',
        'drop at the event, %',
      ],
      rows: sessions.map(({ day, reserve, recovery, hoursToEvent, drop }) => [
        writeDay(day),
        formatPlain(reserve),
        recovery.time ? wholeHours(recovery.time.hours) : 'not known',
        recovery.time ? formatHours(recovery.time.low, recovery.time.high) : recovery.reason,
        hoursToEvent ?? 'none',
        drop ? formatNumber(lossInPercent(drop.estimate), 1) : 'not known',
      ]),
    },
  });
}

/** “Mon”: of a day counted from 0, the first Monday. */
function shortDay(day: number): string {
  return WEEKDAYS[day % WEEKDAYS.length].slice(0, 3);
}

function titleOf(sessions: readonly Session[], hasEvent: boolean): string {
  const before = sessions.filter(({ hoursToEvent }) => hoursToEvent !== null);
  const late = sessions.filter(({ verdict }) => verdict === 'not in time');
  const unsure = sessions.filter(({ verdict }) => verdict === 'expected in time');
  if (!hasEvent) return 'Recovery after each session; no event is set';
  if (before.length === 0) return 'No session lies before the event';
  if (late.length > 0) return `Not recovered before the event: ${late.map(({ day }) => writeDay(day)).join(', ')}`;
  if (unsure.length > 0)
    return `Expected to be recovered before the event, not surely: ${unsure.map(({ day }) => writeDay(day)).join(', ')}`;
  if (before.some(({ verdict }) => verdict === null)) return 'Recovery is not known for every session';
  return before.length === sessions.length
    ? 'Every session is recovered before the event'
    : 'Every session before the event is recovered by then';
}

function stateCalendar(sessions: readonly Session[], { status }: Calendar, margin: number): string {
  const worst = worstBeforeEvent(sessions);
  const close = sessions.filter(({ nearFailureBeforeEvent }) => nearFailureBeforeEvent);
  return [
    `Bars end where the expected drop of ${status} people is within ${margin}\u00a0%, thin lines where the interval does; sessions are taken one by one, by their set with the fewest in reserve.`,
    worst?.drop
      ? `${writeDay(worst.day)} leaves most at the event: ${formatNumber(lossInPercent(worst.drop.estimate), 1)}\u00a0% of performance expected.`
      : '',
    close.length > 0
      ? `Failure is kept away from in the ${HOURS_WITHOUT_FAILURE[status]} hours before an event (${COMMON_PRACTICE_TAG}); ${close.map(({ day }) => writeDay(day)).join(', ')} comes within less than 1 repetition of it.`
      : '',
  ]
    .filter(Boolean)
    .join(' ');
}
