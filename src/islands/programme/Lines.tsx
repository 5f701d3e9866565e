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
  return (
    <div class="entry">
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
      {last > 0 && (
        <p class="buttons">
          <button type="button" aria-disabled={page === 0} onClick={() => state.showPage(which, page - 1)}>
            Lines before
          </button>
          <span class="small" role="status">
            Lines {start + 1} to {start + shown.length} of {countOf(lines.length, 'line')}
          </span>
          <button
            type="button"
            aria-disabled={page === last}
            onClick={() => state.showPage(which, Math.min(last, page + 1))}
          >
            Lines after
          </button>
        </p>
      )}
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
      <p class="small" id={`keys-${which}`}>
        In a line: Ctrl+Enter adds one below, Alt+↑ and Alt+↓ move it; Ctrl+Z undoes, Ctrl+Shift+Z does it again (on a
        Mac Cmd for Ctrl).
      </p>
    </div>
  );
}
