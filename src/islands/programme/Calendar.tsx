/** The calendar that a programme is held against. */
import { TRAINING_STATUSES } from '../../evidence/vocabulary.ts';
import { LAST_DAY, writeDay } from '../../practice/programme/columns.ts';
import { Choice } from '../../ui/Choice.tsx';
import type { ProgrammeState } from './programme.state.ts';

/** Hour of the day of an event where the reader has not said. */
const USUAL_EVENT_HOUR = 10;
const HOURS = Array.from({ length: 24 }, (_, hour) => [String(hour), `${hour}:00`] as const);
const DAYS = Array.from({ length: LAST_DAY }, (_, i) => [String(i + 1), writeDay(i + 1)] as const);

export function ProgrammeCalendar({ state }: { readonly state: ProgrammeState }) {
  const { status, sessionHour, event } = state.draft.value.calendar;
  return (
    <form class="entry row-of-controls" aria-label="Calendar and lifters" onSubmit={(sent) => sent.preventDefault()}>
      <Choice
        id="event-day"
        label="Day of the event"
        value={event ? String(event.day) : 'none'}
        options={[['none', 'none'], ...DAYS]}
        onChange={(day) =>
          state.setCalendar({
            event: day === 'none' ? null : { hour: USUAL_EVENT_HOUR, ...event, day: Number(day) },
          })
        }
      />
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
