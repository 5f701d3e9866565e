/** A written week as it was understood, line by line: each value with what it was read from, what was taken, what was not read. */
import { useState } from 'preact/hooks';
import { formatExpectation } from '../../evidence/problem.ts';
import { countOf } from '../../numerics/countOf.ts';
import { writeDay } from '../../practice/programme/columns.ts';
import {
  FIELDS,
  type Field,
  type NotRead,
  type Reading,
  type UnderstoodLine,
  type WrittenProgramme,
  writeLoad,
  writeSpan,
} from '../../practice/programme/written/understood.ts';
import type { OfferedLine } from './offered.ts';
import type { Opening } from './opening.state.ts';

/** Lines that are laid out at once. */
const FIRST_LINES = 60;

const WORDS: Readonly<Record<Field, string>> = {
  sets: 'sets',
  repetitions: 'repetitions',
  load: 'load',
  possible: 'repetitions possible',
  reserve: 'in reserve',
  company: 'company',
};

export function Understood({ opening, written }: { readonly opening: Opening; readonly written: WrittenProgramme }) {
  const [showsAll, setShowsAll] = useState(false);
  const offered = opening.offered.value;
  const lines = showsAll ? offered : offered.slice(0, FIRST_LINES);
  const { beside, others } = opening.placed.value;
  return (
    <div class="understood">
      <h2 id="understood" tabIndex={-1}>
        How it was understood
      </h2>
      <p role="status">
        {countOf(offered.length, 'line')} of sets;{' '}
        {countOf(written.notRead.filter(opening.isOpenProblem).length, 'entry', 'entries')} not read;{' '}
        {countOf(written.notes.length, 'note')}.
      </p>
      {written.assumed.length > 0 && <List of={written.assumed} />}
      <ol class="written-lines">
        {lines.map((one, i) => (
          <Line
            key={i}
            one={one}
            problems={(beside.get(one.understood) ?? []).filter(opening.isOpenProblem)}
            opening={opening}
          />
        ))}
      </ol>
      {lines.length < offered.length && (
        <p class="buttons">
          <button type="button" onClick={() => setShowsAll(true)}>
            Show all {offered.length} lines
          </button>
        </p>
      )}
      {others.length > 0 && (
        <div class="problem">
          <p>
            <strong>Not read, and of no line of sets</strong>
          </p>
          <ul>
            {others.map((one, i) => (
              <li key={i}>
                {one.line !== null && `line ${one.line}: `}
                {formatExpectation(one)}
              </li>
            ))}
          </ul>
        </div>
      )}
      {written.notes.length > 0 && (
        <details>
          <summary>{countOf(written.notes.length, 'note')}, not taken over: titles, headings, remarks</summary>
          <List of={written.notes.map(({ line, text }) => `line ${line}: ${text}`)} />
        </details>
      )}
    </div>
  );
}

interface LineProps {
  readonly one: OfferedLine;
  readonly problems: readonly NotRead[];
  readonly opening: Opening;
}

function Line({ one, problems, opening }: LineProps) {
  const { understood, assumed } = one;
  return (
    <li value={understood.line}>
      <p class="as-written">
        <code>{understood.text.trim()}</code>
      </p>
      <p>{listReadings(one).join('; ')}</p>
      {assumed.length > 0 && <List of={assumed.map(({ said }) => said)} />}
      {understood.notes.length > 0 && <p class="small">Kept as a note: {understood.notes.join('; ')}</p>}
      {problems.map((problem, i) => (
        <div class="problem" key={i}>
          <p>
            {problem.column ?? 'This line'}: {formatExpectation(problem)}
          </p>
          {problem.suggestions.length > 0 && (
            <p class="buttons">
              {problem.suggestions.map((name) => (
                <button type="button" class="inline" key={name} onClick={() => opening.choose(problem, name)}>
                  Take “{name}”
                </button>
              ))}
            </p>
          )}
        </div>
      ))}
    </li>
  );
}

/** “day Monday, from “Mon””, one for each value. */
function listReadings({ understood: line, cells, chosen }: OfferedLine): readonly string[] {
  const { day, week } = line;
  const chosenDay = chosen.find(({ column }) => column === 'day');
  const dayWords = chosenDay ? `day ${chosenDay.taken} (from “${chosenDay.value}”)` : 'no day';
  const values = FIELDS.flatMap((field) => {
    const reading = line[field];
    return reading ? [say(WORDS[field], showValue(field, line), reading)] : [];
  });
  const facts = Object.entries(line.facts).map(([name, fact]) => say(name.replace('_', ' '), fact.value, fact));
  return [
    day ? say('day', writeDay(day.value), day) : `${week === null ? '' : `week ${week}, `}${dayWords}`,
    ...(line.exercise ? [say('exercise', cells.exercise, line.exercise)] : []),
    ...values,
    ...facts,
  ];
}

function showValue(field: Field, line: UnderstoodLine): string {
  if (field === 'company') return line.company?.value ?? '';
  if (field === 'load') return line.load ? writeLoad(line.load.value) : '';
  const reading = line[field];
  return reading ? writeSpan(reading.value) : '';
}

function say(word: string, value: string, { readFrom }: Reading<unknown>): string {
  const from = readFrom.text.trim();
  const column = readFrom.column === null ? '' : ` in column “${readFrom.column}”`;
  const source = from === value && column === '' ? '' : ` (from “${from}”${column})`;
  return `${word} ${value}${source}`;
}

function List({ of }: { readonly of: readonly string[] }) {
  return (
    <ul class="small">
      {of.map((one, i) => (
        <li key={i}>{one}</li>
      ))}
    </ul>
  );
}
