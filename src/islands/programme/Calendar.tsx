/** The calendar that a programme is held against. */
import { TRAINING_STATUSES } from '../../evidence/vocabulary.ts';
import { dayInWeek, dayOf, MOST_WEEKS, WEEKDAYS, weekOfDay } from '../../practice/programme/columns.ts';
import { listWeeks } from '../../practice/programme/weeks.ts';
import { Choice } from '../../ui/Choice.tsx';
import type { ProgrammeState } from './programme.state.ts';

/** Hour of the day of an event where the reader has not said. */
const USUAL_EVENT_HOUR = 10;
const HOURS = Array.from({ length: 24 }, (_, hour) => [String(hour), `${hour}:00`] as const);
const DAYS = WEEKDAYS.map((name, i) => [String(i + 1), name] as const);
const WEEKS = Array.from({ length: MOST_WEEKS }, (_, i) => [String(i + 1), `week ${i + 1}`] as const);

export function ProgrammeCalendar({ state }: { readonly state: ProgrammeState }) {
  const { first, calendar } = state.draft.value;
  const { status, sessionHour, event } = calendar;
  // Where none is set, in the last week of the block.
  const week = event ? weekOfDay(event.day) : (listWeeks(first).at(-1) ?? 1);
  return (
    <form class="entry row-of-controls" aria-label="Calendar and lifters" onSubmit={(sent) => sent.preventDefault()}>
      <Choice
        id="event-day"
        label="Day of the event"
        value={event ? String(dayInWeek(event.day)) : 'none'}
        options={[['none', 'none'], ...DAYS]}
        onChange={(day) =>
          state.setCalendar({
            event: day === 'none' ? null : { hour: USUAL_EVENT_HOUR, ...event, day: dayOf(week, Number(day)) },
          })
        }
      />
      {event && (
        <Choice
          id="event-week"
          label="Week of the event"
          value={String(week)}
          options={WEEKS}
          onChange={(value) =>
            state.setCalendar({ event: { ...event, day: dayOf(Number(value), dayInWeek(event.day)) } })
          }
        />
      )}
      {event && (
        <Choice
          id="event-hour"
          label="Hour of the event"
          value={String(event.hour)}
          options={HOURS}
          onChange={(hour) => state.setCalendar({ event: { ...event, hour: Number(hour) } })}
        />
      )}
      <Choice
        id="session-hour"
        label="Sessions end at"
        value={String(sessionHour)}
        options={HOURS}
        onChange={(hour) => state.setCalendar({ sessionHour: Number(hour) })}
      />
      <Choice
        id="status"
        label="Lifters"
        value={status}
        options={TRAINING_STATUSES.map((name) => [name, name])}
        onChange={(value) => state.setCalendar({ status: value })}
      />
    </form>
  );
}
