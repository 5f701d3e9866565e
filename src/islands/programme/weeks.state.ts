/** What is done with whole weeks of a version, each a step that can be undone, said aloud. */
import { batch } from '@preact/signals';
import { countOf } from '../../numerics/countOf.ts';
import { MOST_WEEKS, writeDayOfBlock } from '../../practice/programme/columns.ts';
import type { LineList } from '../../practice/programme/edit.ts';
import {
  addWeek,
  closeGap,
  copyWeek,
  deleteWeek,
  listFreeWeeks,
  listWeeks,
  placeLine,
  sortByDay,
  swapWeek,
} from '../../practice/programme/weeks.ts';
import { type createEditing, idOfPart, type VersionName } from './editing.state.ts';

/** Id of the heading of a week. */
export function idOfWeek(which: VersionName, week: number): string {
  return `${which}-week-${week}`;
}

export function createWeeks(editing: ReturnType<typeof createEditing>) {
  const { focusOn, listOf, reveal, say, setLines } = editing;
  const countIn = (list: LineList, week: number) => list.lines.filter((line) => placeLine(line).week === week).length;
  /** The event is of the calendar, and never moves with the lines. */
  const sayEvent = () => {
    const { event } = editing.draft.peek().calendar;
    return event ? ` The event stays on ${writeDayOfBlock(event.day)}.` : '';
  };
  /** One step, its words, and the focus on the week that it made. */
  const step = (which: VersionName, list: LineList, label: string, words: string, week: number | null) =>
    batch(() => {
      setLines(which, list, label);
      const first = week === null ? list.lines.at(0) : list.lines.find((line) => placeLine(line).week === week);
      if (first) reveal(which, first.id);
      focusOn(week !== null && listWeeks(list).length > 1 ? idOfWeek(which, week) : `version-${which}`);
      say(words);
    });
  const refuse = (words: string) => {
    editing.said.value = words;
  };
  const noneFree = `A programme has at most ${MOST_WEEKS} weeks, and all of them have lines.`;

  const add = (which: VersionName) => {
    const list = listOf(which);
    const [week] = listFreeWeeks(list);
    if (week === undefined) {
      refuse(noneFree);
      return;
    }
    batch(() => {
      setLines(which, addWeek(list, week), `add week ${week}`);
      reveal(which, list.nextId);
      focusOn(idOfPart(which, list.nextId, 'exercise'));
      say(`Week ${week} was added, with an empty line.`);
    });
  };
  /** @param to a week without lines; the next that is free where none is named */
  const copy = (which: VersionName, from: number, to?: number) => {
    const list = listOf(which);
    const week = to ?? listFreeWeeks(list)[0];
    if (week === undefined) {
      refuse(noneFree);
      return;
    }
    const words = `Week ${from} was copied as week ${week}: ${countOf(countIn(list, from), 'line, as it is', 'lines, as they are')}.`;
    step(which, copyWeek(list, from, week), `copy week ${from} as week ${week}`, words, week);
  };
  const remove = (which: VersionName, week: number) => {
    const list = listOf(which);
    const next = deleteWeek(list, week);
    const isGap = listWeeks(next).some((other) => other > week);
    const after = isGap ? ' The weeks after it stay where they are.' : '';
    const words = `Week ${week} was deleted, ${countOf(countIn(list, week), 'line')}.${after}`;
    step(which, next, `delete week ${week}`, words, listWeeks(next).findLast((other) => other < week) ?? null);
  };
  const move = (which: VersionName, week: number, by: -1 | 1) => {
    const list = listOf(which);
    const to = week + by;
    if (to < 1 || to > MOST_WEEKS) {
      refuse(`Week ${week} is the ${by < 0 ? 'first' : 'last'} that a programme has.`);
      return;
    }
    const other = countIn(list, to) > 0 ? `, and week ${to} is now week ${week}` : '';
    const words = `Week ${week} is now week ${to}${other}.${sayEvent()}`;
    step(which, swapWeek(list, week, by), `move week ${week} to ${to}`, words, to);
  };
  const close = (which: VersionName, gap: number) => {
    const words = `The weeks after week ${gap} come a week earlier.${sayEvent()}`;
    step(which, closeGap(listOf(which), gap), `close the gap of week ${gap}`, words, gap);
  };
  const sort = (which: VersionName) =>
    step(
      which,
      sortByDay(listOf(which)),
      'put the lines in the order of their days',
      'The lines stand by their days.',
      null,
    );
  return { add, copy, remove, move, close, sort };
}

export type WeekSteps = ReturnType<typeof createWeeks>;
