/** Nearness to failure: only a number says how near; “to failure” leaves nothing. Nothing in between is read as failure. */
import { describe, expect, it } from 'vitest';
import { readCellOf, readLines } from './readLine.ts';

const VAGUE = [
  'close to failure',
  'close to (or at) failure',
  'near failure',
  'near-failure',
  'almost to failure',
  'almost at failure',
  'nearly to failure',
  'just short of failure',
  'short of failure',
  'shy of failure',
  'stop short of failure',
  'a few reps shy of failure',
  'a rep or two short of failure',
  'short of failure by a rep or two',
  'not to failure by 2 reps',
  'miss failure',
  'within 2 reps of failure',
  'away from muscular failure',
  'not to failure',
  'not quite to failure',
  'don’t go to failure',
  "don't go to failure",
  'do not go to failure',
  'never go to failure',
  'avoid failure',
  'without reaching failure',
  'to failure or close',
  'failure is not the aim',
  'RIR: close to failure',
  'a couple in reserve',
  'leave a few in the tank',
];

describe('failure that is near, and how near is not said,', () => {
  it.each(VAGUE)('“%s” is refused and told the fix, in a line', (said) => {
    const { values, asked, columns } = readLines(`Mon leg press 3x8 75% ${said}`);
    expect(columns).toEqual(['reserve']);
    expect(asked[0]).toMatch(/how many repetitions are left.*Write the number, “2 RIR”/u);
    expect(values[0]).toMatchObject({ reserve: null, sets: { value: { most: 3 } }, load: { value: { most: 75 } } });
  });

  it.each(VAGUE)('“%s” is refused and told the fix, in a column of reserves', (said) => {
    const { values, columns, asked } = readCellOf('RIR', said);
    expect(columns).toEqual(['reserve']);
    expect(asked[0]).toMatch(/“2 RIR”/u);
    expect(values[0].reserve).toBeNull();
  });

  it.each(['2 RIR, close to failure', '2 RIR, not to failure', 'RPE 8, near failure'])(
    'stands with the notes where the number is said beside it, “%s”',
    (said) => {
      const { values, asked } = readLines(`Mon leg press 3x8 75% ${said}`);
      expect(asked).toEqual([]);
      expect(values[0].reserve?.value.most).toBe(2);
      expect(values[0].notes.join()).toBe(said.split(', ')[1]);
    },
  );

  it('contradicts a number that leaves none', () => {
    expect(readLines('Mon leg press 3x8 75% 0 RIR, not to failure').columns).toEqual(['reserve']);
  });

  it('on a line of its own is what holds for others', () => {
    const { asked, cells } = readLines('Never go to failure\nMon leg press 3x8 75% 2 RIR');
    expect(asked).toHaveLength(1);
    expect(asked[0]).toMatch(/written on each of them/u);
    expect(cells).toHaveLength(1);
  });
});

describe('failure of one set only', () => {
  it.each([
    'last set to failure',
    'last set: failure',
    'final set taken to failure',
    'last 2 sets to failure',
    '1st set to failure',
    'to failure on the last set',
    'to failure (last set only)',
    'last set 0 RIR',
    'last set RPE 10',
    'last set AMRAP',
  ])('“%s” is not that of all, and a line is asked for', (said) => {
    const { values, asked, columns } = readLines(`Mon leg press 3x8 75% ${said}`);
    expect(columns).toEqual(['reserve']);
    expect(asked[0]).toMatch(/this one on a line of its own/u);
    expect(values[0].reserve).toBeNull();
  });

  it('leaves what is said of the others', () => {
    const { values, asked } = readLines('Mon leg press 3x8 75% 2 RIR, last set to failure');
    expect(values[0].reserve?.value).toEqual({ least: 2, most: 2 });
    expect(asked[0]).toMatch(/line of its own/u);
  });
});

describe('how far from failure', () => {
  it('is asked about once where it is a bound', () => {
    const { columns, cells } = readLines('Mon leg press 3x8 75% short of failure by at least 2 reps');
    expect(columns).toEqual(['reserve']);
    expect(cells[0]).toMatchObject({ repetitions: '8', reserve: 'short of failure by at least 2 reps' });
  });

  it.each(['short of failure by 3x8', 'short of failure by 8 sets'])(
    'is not the number of what follows it, “%s”',
    (said) => {
      expect(readLines(`Mon leg press 75% ${said}`).values[0].reserve).toBeNull();
    },
  );
});

describe('what is plainly said', () => {
  it.each([
    ['to failure', 0, 0],
    ['all sets to failure', 0, 0],
    ['to failure, no spotter', 0, 0],
    ['no belt to failure', 0, 0],
    ['taken to momentary failure', 0, 0],
    ['0 RIR (failure)', 0, 0],
    ['reps left: 2', 2, 2],
    ['1 rep short of failure', 1, 1],
    ['one rep short of failure', 1, 1],
    ['stop 2 reps shy of failure', 2, 2],
    ['short of failure by 2 reps', 2, 2],
    ['stop short of failure by 2', 2, 2],
    ['just shy of technical failure by one rep', 1, 1],
    ['stay away from failure (by 2-3 reps)', 2, 3],
    ['miss failure by 2 reps', 2, 2],
    ['2 RIR, short of failure by 2 reps', 2, 2],
    ['two reps shy of failure', 2, 2],
    ['two shy', 2, 2],
    ['1-2 reps shy of failure', 1, 2],
    ['failure minus two', 2, 2],
    ['two in reserve', 2, 2],
    ['leave three in the tank', 3, 3],
    ['four RIR', 4, 4],
    ['RIR: five', 5, 5],
    ['six reps left', 6, 6],
    ['zero RIR', 0, 0],
    ['one or two in reserve', 1, 2],
    ['two to three reps in reserve', 2, 3],
    ['leave two', 2, 2],
  ])('“%s” is read', (said, least, most) => {
    const { values, asked } = readLines(`Mon leg press 3x8 75% ${said}`);
    expect(asked).toEqual([]);
    expect(values[0].reserve?.value).toEqual({ least, most });
    expect(values[0].notes.join()).not.toMatch(/two|three|shy|short|reserve|failure/u);
  });

  it.each([
    ['RIR', 'two', 2],
    ['RIR', 'one or two', 2],
    ['RIR', 'Three', 3],
    ['RPE', 'eight', 2],
  ] as const)('as a word in a column %s, “%s”, is read', (column, text, most) => {
    const { values, asked } = readCellOf(column, text);
    expect(asked).toEqual([]);
    expect(values[0].reserve?.value.most).toBe(most);
  });

  it('of an exercise or a side is no reserve', () => {
    const [close] = readLines('Mon close-grip bench press 3x8 75% to failure').cells;
    expect(close).toMatchObject({ exercise: 'close-grip bench press', reserve: '0' });
    const [side] = readLines('Mon split squat 3x8 75% one left leg, one right leg').cells;
    expect(side).toMatchObject({ reserve: '', note: 'one left leg; one right leg' });
  });

  it('as sets to failure loses no letter of it', () => {
    const [line] = readLines('Mon leg press 3x failure 75%').cells;
    expect(line).toMatchObject({ sets: '3', reserve: '0', note: '' });
  });
});
