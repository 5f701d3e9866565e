/** State of a programme as it is edited: a draft with all that came before it, what was said aloud, and where the focus goes. */
import { batch, computed, signal } from '@preact/signals';
import { weekdayOf, weekOfDay, writeDay } from '../../practice/programme/columns.ts';
import type { Draft } from '../../practice/programme/draft.ts';
import {
  addLine,
  changeCell,
  copyLine,
  deleteLine,
  type LineList,
  moveLine,
  NO_LINES,
} from '../../practice/programme/edit.ts';
import { type EditorColumn, EMPTY_CELLS } from '../../practice/programme/editorColumns.ts';
import { pageLines } from '../../practice/programme/groupLines.ts';
import { record, startHistory } from '../../practice/programme/history.ts';
import { leaveExample } from '../../practice/programme/leaveExample.ts';
import { writeWeek } from '../../practice/programme/weeks.ts';
import { createSteps } from './steps.ts';

export type VersionName = 'first' | 'second';

/** Lines of a version that are laid out at once; more would hold up the page at every key. */
export const PAGE_LINES = 25;

/** What the focus can go to in a line: its cells and its buttons. */
export type LinePart = EditorColumn | 'more' | 'up' | 'down' | 'copy' | 'delete';

/** Id of an element that belongs to a line. */
export function idOfPart(which: VersionName, id: number, part: LinePart): string {
  return `${which}-${id}-${part}`;
}

/** @param example the worked example, whose event goes with its lines */
export function createEditing(example: Draft) {
  const history = signal(startHistory(example));
  const draft = computed(() => history.value.present);
  /** What was done last, to be said aloud. */
  const said = signal('');
  /** Where the focus goes once the page shows what was done; another object each time. */
  const focus = signal<{ readonly id: string } | null>(null);
  /** Page of each version that is laid out, from 0. */
  const pages = signal<Readonly<Record<VersionName, number>>>({ first: 0, second: 0 });
  const focusOn = (id: string) => {
    focus.value = { id };
  };
  const listOf = (which: VersionName): LineList => draft.peek()[which] ?? NO_LINES;
  const numberOf = (which: VersionName, id: number) => listOf(which).lines.findIndex((line) => line.id === id) + 1;
  const showPage = (which: VersionName, page: number) => {
    pages.value = { ...pages.peek(), [which]: Math.max(0, page) };
  };
  const reveal = (which: VersionName, id: number) => {
    const pages = pageLines(listOf(which), PAGE_LINES);
    showPage(
      which,
      pages.findIndex((page) => page.some(({ line }) => line.id === id)),
    );
  };

  /** One step. @param isWhole true for a draft that is taken as it is: a file, the example */
  const step = (next: Draft, label: string, joins: string | null = null, isWhole = false) => {
    if (next === draft.peek()) {
      said.value = '';
      return;
    }
    const left = isWhole ? { draft: next, event: false, second: false } : leaveExample(draft.peek(), next, example);
    history.value = record(history.peek(), left.event || left.second ? left.draft : next, label, joins);
    const gone = [left.event ? 'event' : null, left.second ? 'version two' : null].filter((one) => one !== null);
    said.value =
      gone.length > 0
        ? `The worked example has gone, and its ${gone.join(' and its ')} with it: set an event of your own.`
        : '';
  };
  /** Takes a draft that was kept, with nothing to be undone. */
  const restore = (kept: Draft) => {
    history.value = startHistory(kept);
  };
  /** Says what was done in a step, before what the step itself said. */
  const say = (what: string) => {
    said.value = said.peek() === '' ? what : `${what} ${said.peek()}`;
  };
  /** Says what was done without a step. */
  const tell = (what: string) => {
    said.value = what;
  };
  const change = (part: Partial<Draft>, label: string, joins: string | null = null) =>
    step({ ...draft.peek(), ...part }, label, joins);
  const setList = (which: VersionName, list: LineList, label: string, joins: string | null = null) => {
    if (list === draft.peek()[which]) said.value = '';
    else change({ [which]: list }, label, joins);
  };
  /** As `setList`, of lines by their numbers: where there are two versions the step names its own. */
  const setLines = (which: VersionName, list: LineList, label: string, joins: string | null = null) => {
    const version = draft.peek().second ? ` in version ${which === 'first' ? 'one' : 'two'}` : '';
    setList(which, list, `${label}${version}`, joins);
  };

  const setCell = (which: VersionName, id: number, column: EditorColumn, text: string) => {
    const label = `change ${column.replace('_', ' ')} of line ${numberOf(which, id)}`;
    setLines(which, changeCell(listOf(which), id, column, text), label, `${which} ${id} ${column}`);
  };
  /** @param day 1 is the first Monday */
  const setDay = (which: VersionName, id: number, day: number) =>
    batch(() => {
      const named = changeCell(listOf(which), id, 'day', weekdayOf(day));
      const list = changeCell(named, id, 'week', writeWeek(weekOfDay(day)));
      setLines(which, list, `change day of line ${numberOf(which, id)}`);
      reveal(which, id);
    });
  /** @param after id of the line that it comes below; null at the end */
  const add = (which: VersionName, after: number | null = null) =>
    batch(() => {
      const list = listOf(which);
      const place = after === null ? list.lines.length : numberOf(which, after);
      const above = list.lines[place - 1]?.cells ?? { ...EMPTY_CELLS, day: writeDay(1) };
      const { week, day, company } = above;
      setLines(which, addLine(list, place, { week, day, company }), `add line ${place + 1}`);
      reveal(which, list.nextId);
      focusOn(idOfPart(which, list.nextId, 'exercise'));
      say(`Line ${place + 1} was added.`);
    });
  const copy = (which: VersionName, id: number) =>
    batch(() => {
      const list = listOf(which);
      const number = numberOf(which, id);
      setLines(which, copyLine(list, id), `copy line ${number}`);
      reveal(which, list.nextId);
      focusOn(idOfPart(which, list.nextId, 'exercise'));
      say(`Line ${number} was copied below, as line ${number + 1}.`);
    });
  const remove = (which: VersionName, id: number) =>
    batch(() => {
      const number = numberOf(which, id);
      setLines(which, deleteLine(listOf(which), id), `delete line ${number}`);
      const { lines } = listOf(which);
      const next = lines[number - 1] ?? lines.at(-1);
      if (next) reveal(which, next.id);
      else showPage(which, 0);
      focusOn(next ? idOfPart(which, next.id, 'delete') : `add-${which}`);
      say(`Line ${number} was deleted.`);
    });
  /** @param by −1 up, 1 down; the focus stays on `part` */
  const move = (which: VersionName, id: number, by: number, part: LinePart) =>
    batch(() => {
      const from = numberOf(which, id);
      setLines(which, moveLine(listOf(which), id, by), `move line ${from}`);
      const to = numberOf(which, id);
      reveal(which, id);
      focusOn(idOfPart(which, id, part));
      if (to === from) said.value = `Line ${from} is the ${by < 0 ? 'first' : 'last'} one already.`;
      else say(`Line ${from} is now line ${to}.`);
    });

  return {
    history,
    draft,
    said,
    focus,
    pages,
    focusOn,
    listOf,
    reveal,
    showPage,
    step,
    restore,
    say,
    tell,
    change,
    setList,
    setLines,
    setCell,
    setDay,
    add,
    copy,
    remove,
    move,
    ...createSteps(history, said),
  };
}

export type Editing = ReturnType<typeof createEditing>;
