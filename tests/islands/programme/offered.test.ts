/** What a reader chooses where a written week is asked about comes into the lines that hold the value, and no others. */
import { expect, it } from 'vitest';
import { type Chosen, choose, isAnswered, offerLine } from '../../../src/islands/programme/offered.ts';
import { readWritten } from '../../../src/practice/programme/written/readWritten.ts';
import { exercises } from '../../practice/programme/shipped.ts';

/** Day and exercise of each line once the first suggestion of each question is taken. */
function answer(text: string) {
  const { lines, notRead } = readWritten(text, exercises);
  const chosen: Chosen[] = [];
  for (const one of notRead) {
    if (one.suggestions.length > 0 && !isAnswered(one, chosen)) chosen.push(choose(one, one.suggestions[0]));
  }
  const offered = lines.map((line) => offerLine(line, chosen));
  return {
    cells: offered.map(({ cells }) => `${cells.day} ${cells.exercise}`),
    said: offered.map(({ assumed }) => assumed.filter(({ said }) => /as you chose/u.test(said))),
    open: notRead.filter((one) => !isAnswered(one, chosen)).map(({ column }) => column),
  };
}

it('a name is taken in its own sets, on every line that has it, and nowhere else', () => {
  expect(answer('Mon squat 4x6 80%; paused bench press 3x5 75%\nFri paused bench press 3x5; squat 3x5 75%')).toEqual({
    cells: ['Monday squat', 'Monday bench press', 'Friday bench press', 'Friday squat'],
    said: [
      [],
      [{ said: '“paused bench press” was taken as bench press, as you chose.', of: ['exercise'] }],
      [{ said: '“paused bench press” was taken as bench press, as you chose.', of: ['exercise'] }],
      [],
    ],
    open: ['load'],
  });
});

it('a day is taken as the day, not as an exercise', () => {
  const { cells, said, open } = answer(
    'day;exercise;sets;reps;load\nMon;squat;3;8;80\nWenesday;squat;3;8;80\nWenesday;leg press;3;8;80',
  );
  expect(cells).toEqual(['Monday squat', 'Wednesday squat', 'Wednesday leg press']);
  expect(said[1]).toEqual([{ said: '“Wenesday” was taken as Wednesday, as you chose.', of: ['day'] }]);
  expect(open).toEqual([]);
});

it('nothing is changed before anything is chosen, and a problem without suggestions is no question', () => {
  const { lines, notRead } = readWritten('Mon bech press 3x5', exercises);
  expect(offerLine(lines[0], []).cells).toMatchObject({ day: 'Monday', exercise: 'bech press', sets: '3' });
  expect(notRead.map((one) => isAnswered(one, []))).toEqual([false, false]);
  const [name, load] = notRead;
  expect(isAnswered(load, [choose(name, 'bench press')])).toBe(false);
  expect(() => choose(load, '80')).toThrow('nothing is to be chosen in this column: load');
});
