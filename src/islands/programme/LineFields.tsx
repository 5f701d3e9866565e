/** The cells of a line, as they were typed. */
import { COMPANIES } from '../../practice/cautions.ts';
import { dayOf, WEEKDAYS } from '../../practice/programme/columns.ts';
import type { EditorLine } from '../../practice/programme/edit.ts';
import type { Cells, EditorColumn } from '../../practice/programme/editorColumns.ts';
import type { LineReport } from '../../practice/programme/lineReports.ts';
import { placeLine } from '../../practice/programme/weeks.ts';
import { AS_WRITTEN, NUMBER_CELLS } from './cellWords.ts';
import { ExercisePick } from './ExercisePick.tsx';
import { idOfPart, type VersionName } from './editing.state.ts';
import type { ProgrammeState } from './programme.state.ts';

interface Props {
  readonly state: ProgrammeState;
  readonly which: VersionName;
  readonly line: EditorLine;
  readonly report: LineReport | null;
}

export function LineFields({ state, which, line, report }: Props) {
  const { id, cells } = line;
  const wrong = new Set(report?.problems.filter(({ kind }) => kind !== 'missing-value').map(({ column }) => column));
  const said = `${which}-${id}-said`;
  const idOf = (column: EditorColumn) => idOfPart(which, id, column);
  const set = (column: EditorColumn) => (text: string) => state.setCell(which, id, column, text);
  // A line that has no week yet is of the first; its week is changed among its details.
  const { day, week } = placeLine(line);
  const monday = dayOf(week ?? 1, 1);
  return (
    <div class="line-fields">
      <div class="cell day">
        <label for={idOf('day')}>Day</label>
        <select
          id={idOf('day')}
          data-part="day"
          value={day ?? AS_WRITTEN}
          aria-invalid={wrong.has('day') || wrong.has('week')}
          onChange={({ currentTarget: { value } }) => {
            if (value !== AS_WRITTEN) state.setDay(which, id, Number(value));
          }}
        >
          {day === null && <option value={AS_WRITTEN}>{writtenDay(cells) || 'choose'}</option>}
          {WEEKDAYS.map((name, i) => (
            <option key={name} value={monday + i}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <div class="cell exercise">
        <label for={idOf('exercise')}>Exercise</label>
        <ExercisePick
          id={idOf('exercise')}
          value={cells.exercise}
          exercises={state.exercises.value}
          isWrong={wrong.has('exercise')}
          describedBy={said}
          onChange={set('exercise')}
        />
      </div>
      {NUMBER_CELLS.map(({ column, label }) => (
        <div class={`cell ${column}`} key={column}>
          <label for={idOf(column)}>{label}</label>
          <input
            id={idOf(column)}
            data-part={column}
            type="text"
            // A keypad of digits alone has no dash for “6-8”, nor a sign for “80 %”.
            inputMode="text"
            autocomplete="off"
            value={cells[column]}
            aria-invalid={wrong.has(column)}
            aria-describedby={wrong.has(column) ? said : undefined}
            onInput={(event) => set(column)(event.currentTarget.value)}
          />
        </div>
      ))}
      <div class="cell company">
        <label for={idOf('company')}>Company</label>
        <select
          id={idOf('company')}
          data-part="company"
          value={cells.company}
          aria-invalid={wrong.has('company')}
          onChange={(event) => set('company')(event.currentTarget.value)}
        >
          {[...new Set(['', ...COMPANIES, cells.company])].map((value) => (
            <option key={value} value={value}>
              {value === '' ? 'alone (not said)' : value}
            </option>
          ))}
        </select>
      </div>
    </div>
  );
}

function writtenDay({ week, day }: Cells): string {
  return [day, week === '' ? '' : `week ${week}`].filter(Boolean).join(', ');
}
