/** What stands above the first line of a week and of a day, and what is done with weeks. */
import { dayInWeek, WEEKDAYS } from '../../practice/programme/columns.ts';
import type { LineList } from '../../practice/programme/edit.ts';
import type { GroupedLine } from '../../practice/programme/groupLines.ts';
import { listFreeWeeks, listGaps, listWeeks, placeLine } from '../../practice/programme/weeks.ts';
import type { VersionName } from './editing.state.ts';
import type { ProgrammeState } from './programme.state.ts';
import { idOfWeek } from './weeks.state.ts';

interface GroupProps {
  readonly state: ProgrammeState;
  readonly which: VersionName;
  readonly of: GroupedLine;
  /** Weeks of the version; null where it is of one week, which needs no name. */
  readonly weeks: readonly number[] | null;
  /** The week that a copy becomes; undefined where all have lines. */
  readonly free: number | undefined;
  /** True for the first line that is shown: it says its week and day though they began on the page before. */
  readonly isFirst: boolean;
}

export function GroupHead({ state, which, of, weeks, free, isFirst }: GroupProps) {
  const { day, week } = placeLine(of.line);
  const weekday = of.beginsDay ?? (isFirst && day !== null ? dayInWeek(day) : null);
  const named = of.beginsWeek ?? (isFirst ? week : null);
  const DayName = weeks ? 'h4' : 'h3';
  return (
    <>
      {weeks && named !== null && (
        <WeekHead
          state={state}
          which={which}
          week={named}
          weeks={weeks}
          free={free}
          isGoingOn={of.beginsWeek === null}
        />
      )}
      {weekday !== null && <DayName class="day-head">{WEEKDAYS[weekday - 1]}</DayName>}
    </>
  );
}

interface WeekProps {
  readonly state: ProgrammeState;
  readonly which: VersionName;
  readonly week: number;
  readonly weeks: readonly number[];
  /** The week that a copy becomes; undefined where all have lines. */
  readonly free: number | undefined;
  /** True where it began on the page before. */
  readonly isGoingOn: boolean;
}

function WeekHead({ state, which, week, weeks, free, isGoingOn }: WeekProps) {
  const { copy, move, remove } = state.weeks;
  const act = (word: string, label: string, onClick: () => void) => (
    <button type="button" class="inline" aria-label={label} onClick={onClick}>
      {word}
    </button>
  );
  return (
    <div class="week-head">
      <h3 id={isGoingOn ? undefined : idOfWeek(which, week)} tabIndex={-1}>
        Week {week}
        {isGoingOn && ', continued'}
      </h3>
      <p class="line-buttons">
        {free !== undefined &&
          act(`Copy as week ${free}`, `Copy as week ${free}, week ${week}`, () => copy(which, week))}
        {act('Earlier', `Earlier, week ${week}`, () => move(which, week, -1))}
        {act('Later', `Later, week ${week}`, () => move(which, week, 1))}
        {weeks.length > 1 && act('Delete', `Delete week ${week}`, () => remove(which, week))}
      </p>
    </div>
  );
}

interface ButtonsProps {
  readonly state: ProgrammeState;
  readonly which: VersionName;
  readonly list: LineList;
}

/** A week more, and what is offered where weeks have no lines. */
export function WeekButtons({ state, which, list }: ButtonsProps) {
  const last = listWeeks(list).at(-1);
  const [free] = listFreeWeeks(list);
  const [gap] = listGaps(list);
  const { add, copy, close } = state.weeks;
  return (
    <>
      {last !== undefined && free !== undefined && (
        <button type="button" onClick={() => copy(which, last)}>
          Copy week {last} as week {free}
        </button>
      )}
      {free !== undefined && (
        <button type="button" onClick={() => add(which)}>
          Add week {free}
        </button>
      )}
      {gap !== undefined && (
        <button type="button" onClick={() => close(which, gap)}>
          Close the gap: week {gap} has no lines
        </button>
      )}
    </>
  );
}
