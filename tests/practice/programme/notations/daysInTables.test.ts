/** Days in the cells of a table: with an exercise or its sets as in a line; refused, they hold for no line below. */
import { describe, expect, it } from 'vitest';
import { readWritten } from '../../../../src/practice/programme/written/readWritten.ts';
import { exercises } from '../shipped.ts';
import { readLines } from './readLine.ts';

const tabs = (text: string) => text.replaceAll('»', '\t');
const HEAD = 'Exercise»Scheme»%1RM»RIR\n';
const WITH_DAYS = 'Day»Exercise»Scheme»%1RM»RIR\n';

function read(text: string) {
  const { cells, asked, taken } = readLines(tabs(text));
  return { days: cells.map(({ exercise, day, week }) => [exercise, week + day]), cells, asked, taken };
}

describe('a day in the cell of an exercise', () => {
  it('before it is that of the line and of what follows, which is said', () => {
    const { days, asked, taken } = read(
      `${HEAD}Mon squat»4x6»80»2\nRDL»3x8»70»2\nA1) Thu bench press»4x6»80»2\nA2) dip»4x6»60»2`,
    );
    expect(asked).toEqual([]);
    expect(days).toEqual([
      ['squat', 'Monday'],
      ['Romanian deadlift', 'Monday'],
      ['bench press', 'Thursday'],
      ['dip', 'Thursday'],
    ]);
    expect(taken).toContain('No day stands on this line: it is taken as of Thu, as above.');
  });

  it('behind it, or behind the sets, is that of the line only', () => {
    const { days, asked, taken } = read(
      `${WITH_DAYS}Mon»squat»4x6»80»2\n»leg press (Sat)»4x6»80»2\n»pulldown»4x6 Sun»80»2\n»RDL»3x8»70»2`,
    );
    expect(asked).toEqual([]);
    expect(days).toEqual([
      ['squat', 'Monday'],
      ['leg press', 'Saturday'],
      ['pulldown', 'Sunday'],
      ['Romanian deadlift', 'Monday'],
    ]);
    expect(taken).toContain('“Sat” stands with the sets: it is taken as the day of this line only.');
  });

  it('that the row names as well says nothing new', () => {
    const { days, asked } = read(`${WITH_DAYS}Mon»Mon squat»4x6 Monday»80»2`);
    expect([days, asked]).toEqual([[['squat', 'Monday']], []]);
  });

  it.each([
    'Mon»Thu squat»4x6»80»2',
    'Mon»squat Thu»4x6»80»2',
    'Mon»squat»4x6 Thu»80»2',
    'Mon»Thrusday squat»4x6»80»2',
  ])('that contradicts the row is asked about once, and both stand in the cell: %s', (row) => {
    const { cells, asked } = read(`${WITH_DAYS}${row}`);
    expect(asked).toHaveLength(1);
    expect(cells[0]).toMatchObject({ exercise: 'squat', day: expect.stringMatching(/^Monday and Th/u), note: '' });
  });

  it('stands under the weeks of its row', () => {
    const { days, asked } = read('Exercise»Week 1»Week 2\nMon squat»4x6 80% 2 RIR»4x6 82% 2 RIR');
    expect([days, asked]).toEqual([
      [
        ['squat', 'Monday'],
        ['squat', '2Monday'],
      ],
      [],
    ]);
  });

  it('and its sets may both stand in the column of a week', () => {
    const { days, asked } = read('Week 1»Week 2\nMon squat 4x6 80% 2 RIR»Thu squat 4x6 82% 2 RIR');
    expect([days, asked]).toEqual([
      [
        ['squat', 'Monday'],
        ['squat', '2Thursday'],
      ],
      [],
    ]);
  });

  it('alone heads the rows below, with a remark beside it', () => {
    const text = tabs('Exercise»Sets»Reps»%1RM»RIR»Notes\nTuesday»»»»»lower body\nsquat»4»6»80»2»');
    const { lines, notes, notRead } = readWritten(text, exercises);
    expect(notRead).toEqual([]);
    expect(lines.map(({ day }) => day?.value)).toEqual([2]);
    expect(notes).toEqual([{ line: 2, text: 'Tuesday lower body' }]);
  });

  it('is no day where letters only look like one', () => {
    const { days, asked } = read(`${WITH_DAYS}Wed»SA row»4x6»80»2`);
    expect([days, asked]).toEqual([[['SA row', 'Wednesday']], []]);
  });
});

describe('a day that is refused', () => {
  it('holds for the rows below it, and no earlier one does', () => {
    const { days, asked } = read(
      `${WITH_DAYS}Mon»squat»4x6»80»2\nTusday»bench press»4x6»80»2\n»RDL»3x8»70»2\nFri»dip»4x6»60»2\n»dip»4x6»60»2`,
    );
    expect(days.map(([, day]) => day)).toEqual(['Monday', 'Tusday', 'Tusday', 'Friday', 'Friday']);
    expect(asked).toHaveLength(2);
    expect(asked[1]).toMatch(/It stands on line 3, and no day is named since\. Is it Tuesday/u);
  });

  it.each(['Tusday\n', 'Tusday: ', 'Tusday '])('in plain lines is asked about by its own word, %j', (written) => {
    const { days, asked } = read(
      `Mon squat 4x6 80% 2 RIR\n${written}bench press 4x6 80% 2 RIR\nRDL 3x8 70% 2 RIR\nFri dip 3x8 60% 2 RIR`,
    );
    expect(days).toEqual([
      ['squat', 'Monday'],
      ['bench press', 'Tusday'],
      ['Romanian deadlift', 'Tusday'],
      ['dip', 'Friday'],
    ]);
    expect(asked).toHaveLength(2);
    expect(asked[0]).toMatch(/Is it Tuesday/u);
  });

  it('in a table without a header is no exercise', () => {
    const { days, asked } = read('Mon»squat»4x6»80%»2 RIR\nTusday»dip»3x8»60%»3 RIR\n»RDL»3x8»70%»3 RIR');
    expect(days).toEqual([
      ['squat', 'Monday'],
      ['dip', 'Tusday'],
      ['Romanian deadlift', 'Tusday'],
    ]);
    expect(asked).toHaveLength(2);
  });

  it('before a second exercise of a line is asked about, and is no part of its name', () => {
    const { cells, asked } = read('Mon squat 4x6 80% 2 RIR; Tusday dip 3x8 60% 3 RIR');
    expect(cells.map(({ exercise, day }) => [exercise, day])).toEqual([
      ['squat', ''],
      ['dip', ''],
    ]);
    expect(asked).toHaveLength(1);
    expect(asked[0]).toMatch(/received “Tusday”.*Write the sets of each day on a line of their own/u);
  });

  it('of two with a dash between them is asked about once', () => {
    const { cells, asked } = read('Mon-Fri squat 4x6 80% 2 RIR');
    expect(cells[0]).toMatchObject({ exercise: 'squat', day: 'Mon-Fri' });
    expect(asked).toHaveLength(1);
  });

  it('before an exercise of a table is not taken for part of its name', () => {
    const { days, asked } = read(`${HEAD}Mon squat»4x6»80»2\nTusday squat»4x6»80»2`);
    expect(days[1]).toEqual(['squat', 'Tusday']);
    expect(asked).toHaveLength(1);
  });

  it.each(['Monkey bars 3x8 possible 12 2 RIR', 'Saturn press 3x8 70% 2 RIR'])('is no word of a name: %s', (line) => {
    expect(read(`Mon\n${line}`).days[0]?.[1]).toBe('Monday');
  });

  it('of a week leaves the days and asks for the week, until one is named', () => {
    const { days, asked } = read(
      'Week»Day»Exercise»Scheme»%1RM»RIR\n1»Mon»squat»4x6»80»2\nsecond»Mon»squat»4x6»80»2\n»Thu»squat»4x6»80»2\n3»Thu»squat»4x6»80»2',
    );
    expect(days.map(([, day]) => day)).toEqual(['Monday', 'secondMonday', 'secondThursday', '3Thursday']);
    expect(asked).toHaveLength(2);
    expect(asked[0]).toMatch(/`week`: expected a week, received “second”\. Write its number/u);
  });
});
