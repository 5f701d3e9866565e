/** Weekdays before the parts of a line, among its sets and behind them: read as the day, or asked about; none is lost. */
import { describe, expect, it } from 'vitest';
import { readLines } from './readLine.ts';

const daysOf = (text: string) => {
  const { cells, asked } = readLines(text);
  expect(asked).toEqual([]);
  return cells.map(({ exercise, day, week }) => [exercise, week + day]);
};

describe('a day before one of several exercises', () => {
  it.each([', ', '; ', ' / ', ' + ', ' | '])('parted by “%s” is its day, and of what follows', (sign) => {
    expect(daysOf(`Mon squat 4x6 80% 2 RIR${sign}Thu leg press 3x10 70% 3 RIR\npulldown 3x8 70% 3 RIR`)).toEqual([
      ['squat', 'Monday'],
      ['leg press', 'Thursday'],
      ['pulldown', 'Thursday'],
    ]);
  });

  it.each([
    ['Fri squat 4x6 80% 2 RIR, Sun leg press 3x10 70% 3 RIR', ['Friday', 'Sunday']],
    ['Mon: squat 4x6 80% 2 RIR; Wed and Fri: leg press 3x10 70% 3 RIR', ['Monday', 'Wednesday', 'Friday']],
    ['Mon squat 4x6 80% 2 RIR, Day 4: leg press 3x10 70% 3 RIR', ['Monday', 'Thursday']],
    ['Mon squat 4x6 80% 2 RIR, week 2 Thu: leg press 3x10 70% 3 RIR', ['Monday', '2Thursday']],
    ['Tue\nsquat 4x6 80% 2 RIR, Thu leg press 3x10 70% 3 RIR', ['Tuesday', 'Thursday']],
  ])('%j is read', (text, days) => {
    expect(daysOf(text).map(([, day]) => day)).toEqual(days);
  });

  it('without a name asks for the name, on its day', () => {
    const { cells, asked } = readLines('Mon squat 4x6 80% 2 RIR, Thu 3x10 70% 3 RIR');
    expect(cells.map(({ day }) => day)).toEqual(['Monday', 'Thursday']);
    expect(asked.join()).toMatch(/Write it before the sets/u);
  });
});

describe('a day behind the sets or among them', () => {
  it.each([
    'leg press 4x6 80% 2 RIR Saturday',
    'leg press 4x6 80% 2 RIR on Saturdays',
    'leg press 4x6 80% 2 RIR (Sat)',
    'leg press 4x6 80% 2 RIR, sat',
    'leg press Saturday 4x6 80% 2 RIR',
    'leg press Sat. 4x6 80% 2 RIR',
    'leg press 4x6 Saturday 80% 2 RIR',
    'leg press 4x6 80% 2 RIR, Saturday with straps',
    'leg press\n4x6 80% 2 RIR Saturday',
    'leg press Saturday\n4x6 80% 2 RIR',
  ])('%j is the day of the line only, and that is said', (text) => {
    expect(daysOf(`Wed\npulldown 3x8 70% 2 RIR\n${text}\nbench press 3x8 70% 2 RIR`)).toEqual([
      ['pulldown', 'Wednesday'],
      ['leg press', 'Saturday'],
      ['bench press', 'Wednesday'],
    ]);
    expect(readLines(text).taken.join()).toMatch(/taken as the day of this line only/u);
  });

  it('is of the week that is named above', () => {
    expect(daysOf('Week 2\nMon squat 4x6 80% 2 RIR\nleg press 3x8 70% 2 RIR Wednesday')).toEqual([
      ['squat', '2Monday'],
      ['leg press', '2Wednesday'],
    ]);
  });

  it('may be several, or of each of several exercises', () => {
    expect(daysOf('squat 4x6 80% 2 RIR, Mon, Wed and Fri').map(([, day]) => day)).toEqual([
      'Monday',
      'Wednesday',
      'Friday',
    ]);
    expect(daysOf('squat 4x6 80% 2 RIR Mon/Thu, leg press 3x10 70% 3 RIR Fri').map(([, day]) => day)).toEqual([
      'Monday',
      'Thursday',
      'Friday',
    ]);
  });

  it('that stands before them as well says nothing new', () => {
    const { cells, asked, taken } = readLines('Mon squat 4x6 80% 2 RIR Monday');
    expect([cells[0].day, asked, taken]).toEqual(['Monday', [], []]);
  });

  it.each([
    'Mon squat 4x6 80% 2 RIR Thu',
    'Mon squat 4x6 80% 2 RIR, Thu, leg press 3x10 70% 3 RIR',
    'squat 4x6 80% 2 RIR, leg press 3x10 70% 3 RIR Saturday',
    'Week 2: squat 4x6 80% 2 RIR, leg press 3x10 70% 3 RIR Saturday',
    'squat 4x6 80% 2 RIR, heavier Thursday',
    'Tue\nsquat 4x6 80% 2 RIR, heavier Thursday',
    'squat 4x6 80% 2 RIR, paused Sat',
  ])('%j may be of something else: no day is taken, and the fix is named', (text) => {
    const { cells, asked, columns } = readLines(text);
    expect(columns).toEqual(['day']);
    expect(asked[0]).toMatch(/with the day before them: “Mon squat 4x6 80%”/u);
    expect(cells.map(({ day }) => day).join('')).toBe('');
    expect(cells.map(({ note }) => note).join()).toMatch(/Thu|Sat/u);
  });

  it.each([
    ['Thu squat 4x6 80% 2 RIR, heavier Monday', 'heavier Monday'],
    ['Thu squat 4x6 80% 2 RIR, heavier Thursday', 'heavier Thursday'],
    ['Thu: squat 4x6 80% 2 RIR, paused Sat', 'paused Sat'],
    ['Mon leg press 3x8 70% 2 RIR, Thu squat 4x6 80% 2 RIR heavier Monday', 'heavier Monday'],
  ])('%j has a day before the sets: the other is part of a remark', (text, note) => {
    const { cells, asked } = readLines(text);
    expect(asked).toEqual([]);
    expect(cells.at(-1)).toMatchObject({ day: 'Thursday', note });
  });

  it('that may be of a remark is asked about in its own words', () => {
    expect(readLines('squat 4x6 80% 2 RIR, heavier Thursday').asked.join()).toMatch(/then stays a note/u);
    expect(readLines('Mon squat 4x6 80% 2 RIR Thu').asked.join()).toMatch(/the same sets on two days/u);
  });

  it.each([
    ['Thu squat 4x6 80% 2 RIR, same as Monday', 'same as Monday'],
    ['Thu squat 4x6 80% 2 RIR, heavier than last Monday', 'heavier than last Monday'],
    ['Thu squat 4x6 80% 2 RIR, Friday off', 'Friday off'],
    ['Thu squat 4x6 80% 2 RIR, sat on a box', 'sat on a box'],
  ])('%j only speaks of another day', (text, note) => {
    const { cells, asked } = readLines(text);
    expect(asked).toEqual([]);
    expect(cells[0]).toMatchObject({ day: 'Thursday', note });
  });
});
