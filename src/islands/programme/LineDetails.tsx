/** What is said of a line beside its set: the facts of an exercise that the list does not have, a note, the week. */
import { dayInWeek, dayOf, MOST_WEEKS } from '../../practice/programme/columns.ts';
import type { EditorLine } from '../../practice/programme/edit.ts';
import { placeLine, writeWeek } from '../../practice/programme/weeks.ts';
import { AS_WRITTEN, TEXT_CELLS } from './cellWords.ts';
import { idOfPart, type VersionName } from './editing.state.ts';
import type { ProgrammeState } from './programme.state.ts';

interface Props {
  readonly state: ProgrammeState;
  readonly which: VersionName;
  readonly line: EditorLine;
}

export function LineDetails({ state, which, line }: Props) {
  const { id, cells } = line;
  const { day, week } = placeLine(line);
  const said = `${which}-${id}-said`;
  const weekId = idOfPart(which, id, 'week');
  const setWeek = (next: number) => {
    // A line whose day cannot be read keeps it as it is written.
    if (day === null) state.setCell(which, id, 'week', writeWeek(next));
    else state.setDay(which, id, dayOf(next, dayInWeek(day)));
    state.focusOn(weekId);
  };
  return (
    <div class="line-details">
      <div class="cell">
        <label for={weekId}>Week</label>
        <select
          id={weekId}
          data-part="week"
          value={week ?? AS_WRITTEN}
          onChange={({ currentTarget: { value } }) => {
            if (value !== AS_WRITTEN) setWeek(Number(value));
          }}
        >
          {week === null && <option value={AS_WRITTEN}>{cells.week}</option>}
          {Array.from({ length: MOST_WEEKS }, (_, i) => (
            <option key={i} value={i + 1}>
              week {i + 1}
            </option>
          ))}
        </select>
      </div>
      {TEXT_CELLS.map(({ column, label, isYesOrNo }) => {
        const partId = idOfPart(which, id, column);
        const set = (text: string) => state.setCell(which, id, column, text);
        const common = { id: partId, 'data-part': column, value: cells[column], 'aria-describedby': said };
        return (
          <div class={`cell ${column}`} key={column}>
            <label for={partId}>{label}</label>
            {isYesOrNo ? (
              <select {...common} onChange={(event) => set(event.currentTarget.value)}>
                {[...new Set(['', 'yes', 'no', cells[column]])].map((value) => (
                  <option key={value} value={value}>
                    {value === '' ? 'as in the list' : value}
                  </option>
                ))}
              </select>
            ) : (
              <input {...common} type="text" autocomplete="off" onInput={(event) => set(event.currentTarget.value)} />
            )}
          </div>
        );
      })}
    </div>
  );
}
