/** From page to page of the lines, and from week to week where there are several. */
import { countOf } from '../../numerics/countOf.ts';
import type { GroupedLine } from '../../practice/programme/groupLines.ts';
import { placeLine } from '../../practice/programme/weeks.ts';
import type { VersionName } from './editing.state.ts';
import type { ProgrammeState } from './programme.state.ts';
import { writeWeeks } from './weekWords.ts';

interface Props {
  readonly state: ProgrammeState;
  readonly which: VersionName;
  readonly pages: readonly (readonly GroupedLine[])[];
  /** The one that is shown, from 0. */
  readonly page: number;
  /** Where the focus goes: below the lines it would be left behind. */
  readonly then?: (() => void) | undefined;
}

export function LinePages({ state, which, pages, page, then = () => undefined }: Props) {
  const last = pages.length - 1;
  if (last === 0) return null;
  const shown = pages[page];
  const show = (next: number) => {
    if (next < 0 || next > last) return;
    state.showPage(which, next);
    then();
  };
  const names = pages.map(namePage);
  return (
    <p class="buttons line-pages">
      <button type="button" aria-disabled={page === 0} onClick={() => show(page - 1)}>
        Lines before
      </button>
      <button type="button" aria-disabled={page === last} onClick={() => show(page + 1)}>
        Lines after
      </button>
      <select
        aria-label="Weeks that are shown"
        value={page}
        onChange={(event) => show(Number(event.currentTarget.value))}
      >
        {names.map((name, i) => (
          <option key={name} value={i}>
            {name}
          </option>
        ))}
      </select>
      <span class="small">
        Lines {shown[0].number} to {shown[shown.length - 1].number} of{' '}
        {countOf(pages[last].at(-1)?.number ?? 0, 'line')}
      </span>
    </p>
  );
}

/** “Weeks 1 and 2”, and where a week goes on over several pages its lines too: “Week 1, lines 26 to 50”. */
function namePage(page: readonly GroupedLine[], place: number, pages: readonly (readonly GroupedLine[])[]): string {
  const weeks = weeksOf(page);
  const others = [pages[place - 1], pages[place + 1]].filter((other) => other !== undefined);
  const isShared = weeks.length === 0 || others.some((other) => weeksOf(other).some((week) => weeks.includes(week)));
  const lines = `lines ${page[0].number} to ${page[page.length - 1].number}`;
  return isShared ? [writeWeeks(weeks), lines].filter(Boolean).join(', ') : writeWeeks(weeks);
}

function weeksOf(page: readonly GroupedLine[]): readonly number[] {
  return [...new Set(page.flatMap(({ line }) => placeLine(line).week ?? []))];
}
