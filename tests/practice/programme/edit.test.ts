/** Lines as they are edited: every step gives another list, all are undone and done again exactly, and CSV holds the same. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromCsv, toCsv } from '../../../src/practice/programme/csvView.ts';
import {
  addLine,
  changeCell,
  copyLine,
  deleteLine,
  type LineList,
  moveLine,
  NO_LINES,
  replaceLines,
} from '../../../src/practice/programme/edit.ts';
import { EDITOR_COLUMNS, type EditorColumn } from '../../../src/practice/programme/editorColumns.ts';
import { type History, MOST_STEPS, record, redo, startHistory, undo } from '../../../src/practice/programme/history.ts';
import {
  addWeek,
  closeGap,
  copyWeek,
  deleteWeek,
  listWeeks,
  sortByDay,
  swapWeek,
} from '../../../src/practice/programme/weeks.ts';
import { exampleWeek } from './shipped.ts';

const example = (() => {
  const { list } = fromCsv(exampleWeek, 'week', NO_LINES);
  if (!list) throw new Error('expected the example to be read');
  return list;
})();
const column = fc.constantFrom(...EDITOR_COLUMNS);
const typed = fc.oneof(
  fc.string({ maxLength: 20 }),
  fc.string({ unit: 'binary', maxLength: 8 }),
  fc.constantFrom(
    '6-8',
    '80 %',
    'a,b',
    'x;y',
    '"',
    '""',
    ' leading',
    'trailing ',
    '=1+1',
    '\ufeff',
    'line\nbreak',
    '\r',
    '',
  ),
);
const week = fc.integer({ min: 1, max: 12 });
const ofWeek = (edit: (list: LineList, from: number, to: number) => LineList) =>
  fc.tuple(week, week).map(
    ([from, to]) =>
      (list: LineList) =>
        edit(list, listWeeks(list)[from % Math.max(1, listWeeks(list).length)] ?? from, to),
  );
/** An edit of whatever list there is; a place is taken modulo its length. */
const edits: fc.Arbitrary<(list: LineList) => LineList> = fc.oneof(
  fc.tuple(fc.nat(30), column, typed).map(
    ([at, one, text]) =>
      (list: LineList) =>
        addLine(list, at, { [one]: text }),
  ),
  onLine(fc.constant(null), (list, id) => copyLine(list, id)),
  onLine(fc.constant(null), (list, id) => deleteLine(list, id)),
  onLine(fc.integer({ min: -3, max: 3 }), moveLine),
  onLine(fc.tuple(column, typed), (list, id, [one, text]) => changeCell(list, id, one, text)),
  fc
    .array(fc.record({ exercise: typed, sets: typed, note: typed }), { maxLength: 6 })
    .map((all) => (list: LineList) => replaceLines(list, all)),
  ofWeek((list, _, to) => addWeek(list, to)),
  ofWeek(copyWeek),
  ofWeek((list, from) => deleteWeek(list, from)),
  ofWeek((list, from, to) => swapWeek(list, from, to % 2 === 0 ? 1 : -1)),
  ofWeek((list, _, to) => closeGap(list, to)),
  fc.constant(sortByDay),
  fc.constant((list: LineList) =>
    replaceLines(
      list,
      example.lines.map(({ cells }) => cells),
    ),
  ),
);

function onLine<Extra>(extra: fc.Arbitrary<Extra>, edit: (list: LineList, id: number, extra: Extra) => LineList) {
  return fc.tuple(fc.nat(50), extra).map(([at, more]) => (list: LineList) => {
    const line = list.lines[at % Math.max(1, list.lines.length)];
    return line ? edit(list, line.id, more) : list;
  });
}

/** So that a step that changed a list in place would throw. */
function freeze(list: LineList): LineList {
  for (const line of list.lines) Object.freeze(Object.freeze(line).cells);
  Object.freeze(list.lines);
  return Object.freeze(list);
}

describe('fifty random edits', () => {
  it('are undone to the exact states, one by one, and done again', () => {
    let changed = 0;
    fc.assert(
      fc.property(fc.array(edits, { minLength: 50, maxLength: 50 }), (all) => {
        const states = [freeze(example)];
        let history: History<LineList> = startHistory(example);
        for (const edit of all) {
          const next = freeze(edit(history.present));
          if (next !== history.present) states.push(next);
          history = record(history, next, 'edit');
        }
        const texts = states.map((state) => JSON.stringify(state));
        const last = history;
        for (let i = states.length - 1; i >= 0; i--) {
          expect(history.present).toBe(states[i]);
          expect(JSON.stringify(history.present)).toBe(texts[i]);
          history = undo(history);
        }
        expect(undo(history)).toBe(history);
        for (let i = 1; i < states.length; i++) {
          history = redo(history);
          expect(history.present).toBe(states[i]);
        }
        expect(redo(history)).toBe(history);
        expect(history.past).toEqual(last.past);
        changed += states.length;
      }),
      { seed: 50, numRuns: 200 },
    );
    expect(changed).toBeGreaterThan(5000);
  });

  it('give every line an id of its own, for as long as there is one', () => {
    fc.assert(
      fc.property(fc.array(edits, { maxLength: 50 }), (all) => {
        const { lines, nextId } = all.reduce((list, edit) => edit(list), example);
        expect(new Set(lines.map(({ id }) => id)).size).toBe(lines.length);
        for (const { id } of lines) expect(id).toBeLessThan(nextId);
      }),
      { seed: 51 },
    );
  });

  it('leave a list that CSV text holds exactly, mistakes and all', () => {
    fc.assert(
      fc.property(fc.array(edits, { maxLength: 50 }), (all) => {
        const list = all.reduce((now, edit) => edit(now), example);
        const { list: read, problems } = fromCsv(toCsv(list), 'week', list);
        // A lost character is told as a problem of the file, and kept.
        expect(problems.filter(({ kind }) => kind !== 'file')).toEqual([]);
        expect(read).toBe(list);
      }),
      { seed: 52, numRuns: 300 },
    );
  });
});

describe('an edit', () => {
  const ids = ({ lines }: LineList) => lines.map(({ id }) => id);

  it('adds before a place, at the end where that is beyond it, with the cells that it is given', () => {
    const list = addLine(addLine(NO_LINES, 99, { day: 'Mon' }), 0, { day: 'Tue' });
    expect(list.lines.map(({ cells }) => cells.day)).toEqual(['Tue', 'Mon']);
    expect(ids(list)).toEqual([2, 1]);
  });

  it('copies right below, and never gives the id of a deleted line again', () => {
    const copied = copyLine(example, 3);
    expect(copied.lines[3]).toEqual({ id: example.nextId, cells: example.lines[2].cells });
    const deleted = deleteLine(copied, example.nextId);
    expect(addLine(deleted, 0).lines[0].id).toBe(example.nextId + 1);
  });

  it('moves up and down, as far as the list goes', () => {
    expect(ids(moveLine(example, 1, 1)).slice(0, 3)).toEqual([2, 1, 3]);
    expect(ids(moveLine(example, 3, -1)).slice(0, 3)).toEqual([1, 3, 2]);
    expect(ids(moveLine(example, 1, 999)).at(-1)).toBe(1);
    expect(moveLine(example, 1, -1)).toBe(example);
  });

  it('of a line that is not there, or that changes nothing, is the very same list', () => {
    const same = [
      copyLine(example, 999),
      deleteLine(example, 999),
      moveLine(example, 999, 1),
      changeCell(example, 999, 'day', 'x'),
      changeCell(example, 1, 'day', 'Monday'),
      replaceLines(
        example,
        example.lines.map(({ cells }) => cells),
      ),
    ];
    for (const list of same) expect(list).toBe(example);
  });

  it('keeps what is typed but for line breaks, which a line cannot hold', () => {
    const list = changeCell(example, 1, 'note', ' =a,"b" \r\nc ');
    expect(list.lines[0].cells.note).toBe(' =a,"b"  c ');
    expect(list.lines[1]).toBe(example.lines[1]);
  });
});

describe('the history', () => {
  const type = (history: History<LineList>, text: string, joins: string | null) =>
    record(history, changeCell(history.present, 1, 'load', text), 'change the load', joins);

  it('takes letters typed in one cell as one step, until another is undone or edited', () => {
    let history = startHistory(example);
    for (const text of ['8', '82', '82,', '82,5']) history = type(history, text, '1 load');
    history = type(history, '7', '2 load');
    expect(history.past.length).toBe(2);
    expect(undo(history).present.lines[0].cells.load).toBe('82,5');
    expect(undo(undo(history)).present).toBe(example);
    const again = type(undo(history), '9', '1 load');
    expect(undo(again).present.lines[0].cells.load).toBe('82,5');
  });

  it('names what is undone and done again', () => {
    const history = record(startHistory(example), deleteLine(example, 1), 'delete line 1');
    expect(history.past.at(-1)?.label).toBe('delete line 1');
    expect(undo(history).future.at(-1)?.label).toBe('delete line 1');
  });

  it('forgets the oldest beyond so many, and says how many', () => {
    let history = startHistory(example);
    for (let i = 0; i < MOST_STEPS + 7; i++) history = type(history, String(i), null);
    expect([history.past.length, history.forgotten]).toEqual([MOST_STEPS, 7]);
    for (let i = 0; i < MOST_STEPS; i++) history = undo(history);
    expect(history.present.lines[0].cells.load).toBe('6');
  });

  it('has nothing to do again after another edit', () => {
    const history = record(undo(type(startHistory(example), '1', null)), deleteLine(example, 1), 'delete');
    expect(redo(history)).toBe(history);
  });
});

describe('CSV text', () => {
  it('of the worked example is the file as it is shipped', () => {
    expect(toCsv(example)).toBe(exampleWeek.endsWith('\n') ? exampleWeek : `${exampleWeek}\n`);
  });

  it('keeps a line its id at its place', () => {
    const { list } = fromCsv(exampleWeek.replace('leg press', 'hack squat'), 'week', example);
    expect(list?.lines.map(({ id }) => id)).toEqual(example.lines.map(({ id }) => id));
    expect(list?.nextId).toBe(example.nextId);
  });

  it('that is ragged or has columns of other names loses no cell, and is told of', () => {
    const text = 'day,exercise,sets,colour,sets\nMon,squat,4,red,5,extra\nTue,squat\n';
    const { list, problems } = fromCsv(text, 'week', NO_LINES);
    const cellsOf = (at: number, ...columns: EditorColumn[]) => columns.map((one) => list?.lines[at].cells[one]);
    expect(cellsOf(0, 'day', 'sets', 'note')).toEqual(['Mon', '4', 'colour: red; sets: 5; extra']);
    expect(cellsOf(1, 'day', 'exercise', 'sets')).toEqual(['Tue', 'squat', '']);
    expect(problems.map(({ line, kind }) => [line, kind])).toEqual([
      [1, 'unknown-column'],
      [1, 'unknown-column'],
      [2, 'ragged-line'],
      [3, 'ragged-line'],
    ]);
  });

  it.each(['', '\n', 'nothing of the kind', 'Mon squat 4x6 80%'])(
    'without a header (%j) is no list, and says so',
    (text) => {
      const { list, problems } = fromCsv(text, 'week', example);
      expect(list).toBeNull();
      expect(problems[0].expected).toMatch(/a row that names the columns/u);
    },
  );

  it.each([
    ['semicolons', exampleWeek.replaceAll(',', ';')],
    ['tabs', exampleWeek.replaceAll(',', '\t')],
    ['capitals', exampleWeek.replace('day,exercise', 'Day,EXERCISE')],
    ['other line breaks', `\ufeff${exampleWeek.replaceAll('\n', '\r\n')}`],
  ])('with %s is the same list', (_, text) => {
    expect(fromCsv(text, 'week', example).list).toBe(example);
  });
});
