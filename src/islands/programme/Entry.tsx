/** Where a programme is pasted, typed or opened, and the calendar it is held against. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { TRAINING_STATUSES } from '../../evidence/vocabulary.ts';
import { LAST_DAY, writeDay } from '../../practice/programme/columns.ts';
import { Choice } from '../../ui/Choice.tsx';
import type { ProgrammeState, VersionName } from './programme.state.ts';

/** Hour of the day of an event where the reader has not said. */
const USUAL_EVENT_HOUR = 10;
const HOURS = Array.from({ length: 24 }, (_, hour) => [String(hour), `${hour}:00`] as const);

export function ProgrammeEntry({ state }: { readonly state: ProgrammeState }) {
  const { first, second } = state.programme.value;
  const compare = useRef<HTMLButtonElement>(null);
  // Each of the two buttons goes when it is pressed: the focus goes to what came of it.
  const [moved, setMoved] = useState(0);
  useEffect(() => {
    if (moved > 0) (compare.current ?? document.getElementById('text-second'))?.focus();
  }, [moved]);
  const setSecond = (text: string | null) => {
    state.change({ second: text });
    setMoved(moved + 1);
  };
  return (
    <form class="entry" aria-label="The programme" onSubmit={(event) => event.preventDefault()}>
      <div class="pair">
        <VersionText state={state} version="first" label={second === null ? 'Programme' : 'Version one'} />
        {second === null ? (
          <p class="buttons">
            <button ref={compare} type="button" onClick={() => setSecond(first)}>
              Compare with a second version
            </button>
          </p>
        ) : (
          <VersionText state={state} version="second" label="Version two" />
        )}
      </div>
      <CalendarControls state={state} />
      <p class="buttons">
        {second !== null && (
          <button type="button" onClick={() => setSecond(null)}>
            Drop version two
          </button>
        )}
        <button type="button" onClick={state.save}>
          Save all to a file
        </button>
        <button type="button" onClick={state.showExample}>
          Show the worked example
        </button>
      </p>
      <p role="status">{state.note.value}</p>
      {state.problem.value !== null && (
        <p class="problem" role="alert">
          {state.problem.value}
        </p>
      )}
    </form>
  );
}

interface VersionTextProps {
  readonly state: ProgrammeState;
  readonly version: VersionName;
  readonly label: string;
}

function VersionText({ state, version, label }: VersionTextProps) {
  return (
    <div class="control">
      <label for={`text-${version}`}>{label}</label>
      <textarea
        id={`text-${version}`}
        rows={13}
        spellcheck={false}
        autocomplete="off"
        wrap="off"
        value={state.programme.value[version] ?? ''}
        onInput={(event) => state.change({ [version]: event.currentTarget.value })}
        aria-describedby="columns-help"
      />
      <label class="file">
        <span>Open a file for {label.toLowerCase()}</span>
        <input
          type="file"
          accept=".csv,.tsv,.txt,.xlsx,.ods,.json,text/csv,application/json"
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? [];
            if (file) void state.open(file, version);
            event.currentTarget.value = '';
          }}
        />
      </label>
    </div>
  );
}

function CalendarControls({ state }: { readonly state: ProgrammeState }) {
  const { calendar } = state.programme.value;
  const { status, sessionHour, event } = calendar;
  const set = (part: Partial<typeof calendar>) => state.change({ calendar: { ...calendar, ...part } });
  const days = Array.from({ length: LAST_DAY }, (_, i) => [String(i + 1), writeDay(i + 1)] as const);
  return (
    <div class="row-of-controls">
      <Choice
        id="event-day"
        label="Day of the event"
        value={event ? String(event.day) : 'none'}
        options={[['none', 'none'], ...days]}
        onChange={(day) =>
          set({ event: day === 'none' ? null : { hour: USUAL_EVENT_HOUR, ...event, day: Number(day) } })
        }
      />
      {event && (
        <Choice
          id="event-hour"
          label="Hour of the event"
          value={String(event.hour)}
          options={HOURS}
          onChange={(hour) => set({ event: { ...event, hour: Number(hour) } })}
        />
      )}
      <Choice
        id="session-hour"
        label="Sessions end at"
        value={String(sessionHour)}
        options={HOURS}
        onChange={(hour) => set({ sessionHour: Number(hour) })}
      />
      <Choice
        id="status"
        label="Lifters"
        value={status}
        options={TRAINING_STATUSES.map((name) => [name, name])}
        onChange={(value) => set({ status: value })}
      />
    </div>
  );
}
