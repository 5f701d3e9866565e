/** The lines of a version to be edited, by week and day, a page of them at a time. */
import { countOf } from '../../numerics/countOf.ts';
import { isBlock } from '../../practice/programme/checkedWeeks.ts';
import type { LineList } from '../../practice/programme/edit.ts';
import { pageLines } from '../../practice/programme/groupLines.ts';
import { isByDay, listFreeWeeks, listWeeks } from '../../practice/programme/weeks.ts';
import { LINE_HEADS } from './cellWords.ts';
import { PAGE_LINES, type VersionName } from './editing.state.ts';
import { ProgrammeLine } from './Line.tsx';
import { LinePages } from './LinePages.tsx';
import type { ProgrammeState } from './programme.state.ts';
import { GroupHead, WeekButtons } from './WeekHead.tsx';

interface Props {
  readonly state: ProgrammeState;
  readonly which: VersionName;
  readonly name: string;
  readonly list: LineList;
}

export function ProgrammeLines({ state, which, name, list }: Props) {
  const { lines } = list;
  const pages = pageLines(list, PAGE_LINES);
  const page = Math.min(state.pages.value[which], pages.length - 1);
  const shown = pages[page];
  const weeks = listWeeks(list);
  const [free] = listFreeWeeks(list);
  const hasWeeks = isBlock(weeks.map((week) => ({ week })));
  const report = state.checking.isShown.value ? state.reports.value[which] : null;
  const pager = (then?: () => void) => <LinePages state={state} which={which} pages={pages} page={page} then={then} />;
  return (
    <div class="entry">
      {pager()}
      <div class="line-heads small" aria-hidden="true">
        {LINE_HEADS.map((head) => (
          <span key={head}>{head}</span>
        ))}
      </div>
      <ol class="lines" aria-label={`Lines of ${name.toLowerCase()}`} start={shown[0]?.number ?? 1}>
        {shown.map((one, i) => (
          <ProgrammeLine
            key={one.line.id}
            state={state}
            which={which}
            line={one.line}
            number={one.number}
            report={report?.byId.get(one.line.id) ?? null}
            head={
              <GroupHead
                state={state}
                which={which}
                of={one}
                weeks={hasWeeks ? weeks : null}
                free={free}
                isFirst={i === 0}
              />
            }
          />
        ))}
      </ol>
      {lines.length === 0 && <p>No lines yet.</p>}
      {!isByDay(list) && (
        <p class="buttons">
          <span class="small">The lines do not stand in the order of their days.</span>
          <button type="button" onClick={() => state.weeks.sort(which)}>
            Put them in order
          </button>
        </p>
      )}
      {pager(() => state.focusOn(`version-${which}`))}
      <p class="buttons">
        <button type="button" id={`add-${which}`} onClick={() => state.add(which)}>
          Add a line
        </button>
        {lines.length > 0 && <WeekButtons state={state} which={which} list={list} />}
        {which === 'first' && lines.length > 0 && (
          <button type="button" id="apply-all" onClick={() => state.apply(null)}>
            Apply the advice to all, as version two
          </button>
        )}
      </p>
      <p class="small keys">
        {countOf(lines.length, 'line')} in {countOf(weeks.length, 'week')}. In a line: Ctrl+Enter adds one below, Alt+↑
        and Alt+↓ move it; Ctrl+Z undoes, Ctrl+Shift+Z does it again (on a Mac Cmd for Ctrl).
      </p>
    </div>
  );
}
