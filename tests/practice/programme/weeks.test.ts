/** Weeks of a list: copied, moved and deleted whole, with nothing else changed, and every day said as it was meant. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LAST_DAY, WEEKDAYS, weekOfDay } from '../../../src/practice/programme/columns.ts';
import { fromCsv, toCsv } from '../../../src/practice/programme/csvView.ts';
import { type LineList, NO_LINES, replaceLines } from '../../../src/practice/programme/edit.ts';
import { type Cells, EMPTY_CELLS } from '../../../src/practice/programme/editorColumns.ts';
import { groupLines, pageLines } from '../../../src/practice/programme/groupLines.ts';
import { record, startHistory, undo } from '../../../src/practice/programme/history.ts';
import {
  addWeek,
  closeGap,
  copyWeek,
  deleteWeek,
  isByDay,
  listFreeWeeks,
  listGaps,
  listWeeks,
  placeLine,
  sortByDay,
  swapWeek,
} from '../../../src/practice/programme/weeks.ts';

/** Ways in which a day of the block can stand in its two cells. */
const WAYS: readonly ((day: number) => Pick<Cells, 'week' | 'day'>)[] = [
  (day) => ({ week: String(weekOfDay(day)), day: WEEKDAYS[(day - 1) % 7] }),
  (day) => ({ week: `Week ${weekOfDay(day)}`, day: WEEKDAYS[(day - 1) % 7].slice(0, 3).toLowerCase() }),
  (day) => ({ week: '', day: String(day) }),
  (day) => ({ week: '', day: `W${weekOfDay(day)} ${WEEKDAYS[(day - 1) % 7].slice(0, 3)}` }),
  (day) => ({ week: '', day: `Day ${day}` }),
  (day) => ({ week: `wk ${weekOfDay(day)}`, day: `D${((day - 1) % 7) + 1}` }),
];
const dayCells = fc
  .tuple(fc.integer({ min: 1, max: LAST_DAY }), fc.nat(WAYS.length - 1), fc.string({ maxLength: 5 }))
  .map(([day, way, note]) => ({ day, cells: { ...EMPTY_CELLS, ...WAYS[way](day), exercise: 'squat', note } }));
const lists = fc.array(dayCells, { minLength: 1, maxLength: 30 });
const toList = (all: readonly { readonly cells: Cells }[]): LineList =>
  replaceLines(
    NO_LINES,
    all.map(({ cells }) => cells),
  );
const daysOf = ({ lines }: LineList) => lines.map((line) => placeLine(line).day);
const otherCells = ({ lines }: LineList) => lines.map(({ cells: { week: _, day: __, ...others } }) => others);
const weekdays = (list: LineList, week: number) =>
  daysOf(list).flatMap((day) => (day !== null && weekOfDay(day) === week ? [(day - 1) % 7] : []));

describe('a day of a block', () => {
  it('is found however its week and day are written', () => {
    fc.assert(
      fc.property(lists, (all) => {
        expect(daysOf(toList(all))).toEqual(all.map(({ day }) => day));
      }),
      { seed: 1 },
    );
  });

  it('that cannot be read is of the week that its cell says, of the first where that is empty, or of none', () => {
    const placed = [
      { week: '3', day: 'Mondya' },
      { week: '', day: '' },
      { week: 'later', day: 'Mon' },
      { week: '13', day: 'Mon' },
    ].map((cells) => placeLine(toList([{ cells: { ...EMPTY_CELLS, ...cells } }]).lines[0]));
    expect(placed).toEqual([
      { day: null, week: 3 },
      { day: null, week: 1 },
      { day: null, week: null },
      { day: null, week: null },
    ]);
  });
});

describe('copying a week', () => {
  it('gives the same days of the other week, leaves every other line as it was, and is undone exactly', () => {
    let copied = 0;
    fc.assert(
      fc.property(lists, fc.nat(11), (all, pick) => {
        const list = toList(all);
        const weeks = listWeeks(list);
        const from = weeks[pick % weeks.length];
        const [to] = listFreeWeeks(list);
        if (to === undefined) return;
        const next = copyWeek(list, from, to);
        expect(weekdays(next, to)).toEqual(weekdays(list, from));
        const isOld = (id: number) => id < list.nextId;
        expect(next.lines.filter(({ id }) => isOld(id))).toEqual(list.lines);
        const copies = { ...next, lines: next.lines.filter(({ id }) => !isOld(id)) };
        const originals = { ...list, lines: list.lines.filter((line) => placeLine(line).week === from) };
        expect(otherCells(copies)).toEqual(otherCells(originals));
        const history = record(startHistory(list), next, 'copy');
        expect(undo(history).present).toBe(list);
        copied++;
      }),
      { seed: 2 },
    );
    expect(copied).toBeGreaterThan(80);
  });

  it('keeps a day as it was typed where it still says that day', () => {
    const list = toList([
      { cells: { ...EMPTY_CELLS, day: 'mon' } },
      { cells: { ...EMPTY_CELLS, day: 'W1 Thu' } },
      { cells: { ...EMPTY_CELLS, day: '4' } },
    ]);
    expect(
      copyWeek(list, 1, 3)
        .lines.slice(3)
        .map(({ cells: { week, day } }) => [week, day]),
    ).toEqual([
      ['3', 'mon'],
      ['3', 'Thursday'],
      ['3', '4'],
    ]);
  });

  it('never onto lines, nor beyond the last week: the very same list', () => {
    const list = toList([
      { cells: { ...EMPTY_CELLS, day: 'Mon' } },
      { cells: { ...EMPTY_CELLS, week: '2', day: 'Mon' } },
    ]);
    for (const to of [1, 2, 0, 13]) expect(copyWeek(list, 1, to)).toBe(list);
    expect(copyWeek(list, 5, 6)).toBe(list);
  });
});

describe('moving, deleting and closing up', () => {
  it('swaps two weeks, days and all, and back again', () => {
    fc.assert(
      fc.property(lists, fc.nat(11), (all, pick) => {
        const list = sortByDay(toList(all));
        const weeks = listWeeks(list);
        const week = weeks[pick % weeks.length];
        if (week === 12) return;
        const next = swapWeek(list, week, 1);
        expect(weekdays(next, week + 1)).toEqual(weekdays(list, week));
        expect(weekdays(next, week)).toEqual(weekdays(list, week + 1));
        expect(isByDay(next)).toBe(true);
        expect(daysOf(swapWeek(next, week + 1, -1))).toEqual(daysOf(list));
        expect(next.lines.length).toBe(list.lines.length);
      }),
      { seed: 3 },
    );
  });

  it('leaves the weeks after a deleted one where they are, until the gap is closed', () => {
    const list = toList([1, 8, 9, 15].map((day) => ({ cells: { ...EMPTY_CELLS, ...WAYS[0](day) } })));
    const without = deleteWeek(list, 2);
    expect([daysOf(without), listGaps(without)]).toEqual([[1, 15], [2]]);
    expect(daysOf(closeGap(without, 2))).toEqual([1, 8]);
    expect(closeGap(list, 2)).toBe(list);
    expect(closeGap(without, 4)).toBe(without);
    expect(swapWeek(list, 1, -1)).toBe(list);
  });

  it('adds an empty Monday after all weeks before it', () => {
    const list = addWeek(toList([1, 8].map((day) => ({ cells: { ...EMPTY_CELLS, ...WAYS[2](day) } }))), 2);
    expect(list.lines.at(-1)?.cells).toEqual({ ...EMPTY_CELLS, week: '2', day: 'Monday' });
    expect(listFreeWeeks(list)[0]).toBe(3);
  });

  it('sorts by day, keeps lines of a day in their order, and one without a day below the one above it', () => {
    const names = ({ lines }: LineList) => lines.map(({ cells }) => cells.note).join('');
    const cells = (day: string, note: string, week = '') => ({ cells: { ...EMPTY_CELLS, week, day, note } });
    const list = toList([
      cells('Tue', 'a'),
      cells('what', 'b'),
      cells('Mon', 'c'),
      cells('Mon', 'd'),
      cells('', 'e', '2'),
    ]);
    expect(names(sortByDay(list))).toBe('cdabe');
    expect(isByDay(sortByDay(list))).toBe(true);
  });
});

describe('a block as CSV text', () => {
  it('comes back as the same list, whatever weeks and days it has', () => {
    fc.assert(
      fc.property(lists, (all) => {
        const list = toList(all);
        const { list: read } = fromCsv(toCsv(list), 'block', NO_LINES);
        expect(read && daysOf(read)).toEqual(daysOf(list));
        expect(fromCsv(toCsv(list), 'block', list).list).toBe(list);
      }),
      { seed: 4 },
    );
  });
});

describe('lines as they are laid out', () => {
  it('say each week and day where it begins, once', () => {
    const list = toList([1, 1, 3, 8, 8, 10].map((day) => ({ cells: { ...EMPTY_CELLS, ...WAYS[0](day) } })));
    expect(groupLines(list).map(({ beginsWeek, beginsDay }) => [beginsWeek, beginsDay])).toEqual([
      [1, 1],
      [null, null],
      [null, 3],
      [2, 1],
      [null, null],
      [null, 3],
    ]);
  });

  it('come in pages of whole weeks, none above the bound, every line on one', () => {
    fc.assert(
      fc.property(lists, fc.integer({ min: 1, max: 12 }), (all, most) => {
        const list = toList(all);
        const pages = pageLines(list, most);
        expect(pages.flat().map(({ line }) => line)).toEqual(list.lines);
        for (const page of pages) expect(page.length).toBeLessThanOrEqual(most);
        // A page is not left before the next week would no longer fit.
        for (const [i, page] of pages.slice(0, -1).entries()) {
          const rest = pages.slice(i + 1).flat();
          const next = rest.findIndex(({ beginsWeek }, at) => at > 0 && beginsWeek !== null);
          const nextWeek = next < 0 ? rest.length : next;
          if (rest[0].beginsWeek !== null) expect(page.length + nextWeek).toBeGreaterThan(most);
        }
      }),
      { seed: 5 },
    );
    expect(pageLines(NO_LINES, 5)).toEqual([[]]);
  });
});
