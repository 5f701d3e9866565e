/** The lines of a version to be edited, a page of them at a time. */
import { countOf } from '../../numerics/countOf.ts';
import type { LineList } from '../../practice/programme/edit.ts';
import { LINE_HEADS } from './cellWords.ts';
import { PAGE_LINES, type VersionName } from './editing.state.ts';
import { ProgrammeLine } from './Line.tsx';
import type { ProgrammeState } from './programme.state.ts';

interface Props {
  readonly state: ProgrammeState;
  readonly which: VersionName;
  readonly name: string;
  readonly list: LineList;
}

export function ProgrammeLines({ state, which, name, list }: Props) {
  const { lines } = list;
  const last = Math.max(0, Math.ceil(lines.length / PAGE_LINES) - 1);
  const page = Math.min(state.pages.value[which], last);
  const start = page * PAGE_LINES;
  const report = state.checking.isShown.value ? state.reports.value[which] : null;
  const shown = lines.slice(start, start + PAGE_LINES);
  /** @param then where the focus goes: below the lines it would be left behind */
  const pager = (then: () => void = () => undefined) => {
    const show = (next: number) => {
      if (next < 0 || next > last) return;
      state.showPage(which, next);
      then();
    };
    if (last === 0) return null;
    return (
      <p class="buttons">
        <button type="button" aria-disabled={page === 0} onClick={() => show(page - 1)}>
          Lines before
        </button>
        <button type="button" aria-disabled={page === last} onClick={() => show(page + 1)}>
          Lines after
        </button>
        <span class="small">
          Lines {start + 1} to {start + shown.length} of {countOf(lines.length, 'line')}
        </span>
      </p>
    );
  };
  return (
    <div class="entry">
      {pager()}
      <div class="line-heads small" aria-hidden="true">
        {LINE_HEADS.map((head) => (
          <span key={head}>{head}</span>
        ))}
      </div>
      <ol class="lines" aria-label={`Lines of ${name.toLowerCase()}`} start={start + 1}>
        {shown.map((line, i) => (
          <ProgrammeLine
            key={line.id}
            state={state}
            which={which}
            line={line}
            number={start + i + 1}
            report={report?.byId.get(line.id) ?? null}
          />
        ))}
      </ol>
      {lines.length === 0 && <p>No lines yet.</p>}
      {pager(() => state.focusOn(`version-${which}`))}
      <p class="buttons">
        <button type="button" id={`add-${which}`} onClick={() => state.add(which)}>
          Add a line
        </button>
        {which === 'first' && lines.length > 0 && (
          <button type="button" onClick={() => state.apply(null)}>
            Apply the advice to all, as version two
          </button>
        )}
      </p>
      <p class="small keys">
        In a line: Ctrl+Enter adds one below, Alt+↑ and Alt+↓ move it; Ctrl+Z undoes, Ctrl+Shift+Z does it again (on a
        Mac Cmd for Ctrl).
      </p>
    </div>
  );
}
