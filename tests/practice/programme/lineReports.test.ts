/** What an editor shows of its lines: by the line that it is said of, wherever that stands in the text. */
import { expect, it } from 'vitest';
import { fromSaved } from '../../../src/practice/programme/draft.ts';
import { addLine, changeCell, deleteLine, type LineList, NO_LINES } from '../../../src/practice/programme/edit.ts';
import type { Cells } from '../../../src/practice/programme/editorColumns.ts';
import { leaveExample } from '../../../src/practice/programme/leaveExample.ts';
import { reportLines, resolveBegun } from '../../../src/practice/programme/lineReports.ts';
import { reportProgramme } from '../../../src/practice/programme/report.ts';
import { analysis, exampleToTargets, exampleWeek, exercises, regatta } from './shipped.ts';

const SET = { day: 'Monday', sets: '3', repetitions: '8', load: '75', reserve: '2', company: 'spotter' };
const listOf = (...lines: readonly Partial<Cells>[]) =>
  lines.reduce<LineList>((list, cells) => addLine(list, list.lines.length, cells), NO_LINES);

function reportOf(list: LineList) {
  const resolved = resolveBegun(list, exercises);
  const { first } = reportProgramme(analysis, { first: resolved.text, second: null, exercises, calendar: regatta });
  return { ...reportLines(first, resolved), check: first.check };
}

it('every line has its own verdict, whatever is wrong with the others', () => {
  const { byId, check } = reportOf(
    listOf(
      { ...SET, exercise: 'squats' },
      { ...SET, exercise: 'squat', sets: 'three' },
      { ...SET, exercise: 'sled drag' },
    ),
  );
  expect(check).toBeNull();
  expect(byId.get(1)).toMatchObject({ checked: { line: { exercise: { name: 'squat' } } }, problems: [], waits: false });
  expect(byId.get(2)).toMatchObject({ checked: null, problems: [{ column: 'sets', value: 'three' }] });
  expect(byId.get(3)).toMatchObject({ checked: null, problems: [], waits: true });
});

it('a line that says nothing of what is done is left out, and the sums are of the others', () => {
  const { byId, check, idOf } = reportOf(listOf({ day: 'Monday', company: 'alone' }, { ...SET, exercise: 'squat' }));
  expect([...byId.keys()]).toEqual([2]);
  expect(check?.lines).toHaveLength(1);
  expect(idOf.get(2)).toBe(2);
});

it('no lines at all are no problem', () => {
  expect(reportOf(listOf({ day: 'Monday' }))).toMatchObject({ others: [], check: null });
});

it('what is wrong with a notation is said once, and a wrong week not as a missing day', () => {
  const { byId } = reportOf(
    listOf({ ...SET, exercise: 'squat', load: '100 kg' }, { ...SET, exercise: 'squat', week: '19' }),
  );
  expect(byId.get(1)?.problems.filter(({ column }) => column === 'load')).toHaveLength(1);
  expect(byId.get(1)?.problems[0].expected).toMatch(/1RM/u);
  expect(byId.get(2)?.problems.map(({ column }) => column)).toEqual(['week']);
});

const { draft: example } = fromSaved({
  first: exampleWeek,
  second: exampleToTargets,
  exercises: [],
  calendar: regatta,
});

it('the example’s event and version two go with the last of its lines, and not before', () => {
  if (!example) throw new Error('expected the example to be read');
  const own = listOf({ ...SET, exercise: 'squat' });
  const replaced = leaveExample(example, { ...example, first: own }, example);
  expect(replaced).toMatchObject({ event: true, second: true });
  expect(replaced.draft).toEqual({ ...example, first: own, second: null, calendar: { ...regatta, event: null } });
  const edited = { ...example, first: changeCell(deleteLine(example.first, 1), 2, 'sets', '9') };
  expect(leaveExample(example, edited, example)).toEqual({ draft: edited, event: false, second: false });
});

it('an event of one’s own stays, on the example’s Saturday or any other day', () => {
  if (!example) throw new Error('expected the example to be read');
  const own = { ...example, first: listOf({ ...SET, exercise: 'squat' }), second: null };
  const next = { ...own, first: listOf({ ...SET, exercise: 'leg press' }) };
  expect(leaveExample(own, next, example)).toEqual({ draft: next, event: false, second: false });
  const moved = { ...example, calendar: { ...regatta, event: { day: 7, hour: 10 } } };
  expect(leaveExample(moved, { ...moved, first: own.first }, example).event).toBe(false);
});

it('an exercise of one’s own that can pin has the careful caution of a bar over the chest', () => {
  const own = {
    ...SET,
    company: 'alone',
    exercise: 'floor press',
    muscles: 'triceps',
    can_pin: 'yes',
    stoppable: 'no',
    partials: 'no',
  };
  const { byId } = reportOf(listOf(own, { ...SET, company: 'alone', exercise: 'squat' }));
  const cautions = (id: number) => byId.get(id)?.checked?.cautions.join(' ');
  expect(cautions(1)).toMatch(/bar is over the chest.*leave the collars off/u);
  expect(cautions(2)).not.toMatch(/collars/u);
});
