/** What is said of a reading: where each value stood, what was taken without being written, what is left over. */
import { describe, expect, it } from 'vitest';
import { fromCsv } from '../../../src/practice/programme/csvView.ts';
import { NO_LINES } from '../../../src/practice/programme/edit.ts';
import { readProgramme } from '../../../src/practice/programme/read.ts';
import { readWritten } from '../../../src/practice/programme/written/readWritten.ts';
import { toCells } from '../../../src/practice/programme/written/toCells.ts';
import { exampleToTargets, exampleWeek, exercises } from './shipped.ts';
import { readWhole } from './written.ts';

const read = (text: string) => readWritten(text, exercises);
const first = (text: string) => {
  const [line] = read(text).lines;
  if (!line) throw new Error('expected a line');
  return line;
};

describe('a reading', () => {
  it('says where each value stood', () => {
    const text = 'Club week\n\nDay\tLift\tSets x Reps\t%1RM\tRIR\nMon\tRDL\t4x6-8\t72,5\t1-2\n';
    expect(first(text)).toMatchObject({
      line: 4,
      day: { value: 1, readFrom: { line: 4, column: 'Day', text: 'Mon' } },
      exercise: { value: 'Romanian deadlift', readFrom: { column: 'Lift', text: 'RDL' } },
      sets: { value: { least: 4, most: 4 }, readFrom: { column: 'Sets x Reps', text: '4x6-8' } },
      repetitions: { value: { least: 6, most: 8 } },
      load: { value: { least: 72.5, most: 72.5, unit: '%' }, readFrom: { column: '%1RM', text: '72,5' } },
      reserve: { value: { least: 1, most: 2 }, readFrom: { text: '1-2' } },
      company: null,
    });
    expect(read(text).notes).toEqual([{ line: 1, text: 'Club week' }]);
  });

  it('of a day in a heading says the heading’s line', () => {
    expect(first('Week 2\nThu – upper\nbench 3x5 80%').day).toEqual({
      value: 11,
      readFrom: { line: 2, column: null, text: 'Week 2, Thu' },
    });
  });

  it('of an exercise above its sets says that line', () => {
    const { lines } = read('Mon\nA1) Bench press\n3x5 80%\n1x10 60%\nLeg press\nDip\n3x8 possible 12');
    expect(lines.map(({ exercise, sets }) => [exercise?.readFrom.line, exercise?.value, sets?.value.most])).toEqual([
      [2, 'bench press', 3],
      [2, 'bench press', 1],
      [5, 'leg press', undefined],
      [6, 'dip', 3],
    ]);
    expect(lines[0].notes).toEqual(['A1']);
  });
});

describe('what is taken without being written', () => {
  const saidOf = (text: string) =>
    [...read(text).assumed, ...read(text).lines.flatMap(({ assumed }) => assumed.map(({ said }) => said))].join('\n');

  it.each([
    ['squat 4x6 80%', /^No day is written: all sets are taken as of Monday\.$/mu],
    ['Mon squat 4x6 80%', /^Where neither a spotter nor safety arms are written, nobody counts as there\.$/mu],
    ['Mon squat 4x6 80%', /^Where sets and repetitions are written as “4x6”, the sets are taken to stand first\.$/mu],
    ['Mon squat 12x3 60%', /^In “12x3” sets are taken to stand first: 12 sets of 3\.$/mu],
    [
      'Mon squat 4x6 80% RPE 8',
      /^An effort rating of 8 out of ten is taken as ten minus the rating in reserve \(common practice, no source\)\.$/mu,
    ],
    ['Mon squat 4x6 80% to failure', /^“failure” is taken as 0 repetitions in reserve\.$/mu],
    ['Mon squat 4x6 80% e1RM', /^Per cent of an estimated 1RM are taken as of 1RM\.$/mu],
    ['Mon squat 4x6 10RM', /^The load of 10RM is the one at which 10 repetitions are possible\.$/mu],
    ['Mon OHP 4x6 80%', /^“OHP” is taken as overhead press\.$/mu],
    ['Mon sled drag 4x6 80%', /^“sled drag” is kept as an exercise of your own: its cautions are not known/mu],
    ['Day 2 squat 4x6 80%', /^Day 2 is taken as Tuesday\.$/mu],
    ['Mon/Thu squat 4x6 80%', /^It stands for Monday and Thursday\.$/mu],
    [
      'Mon;squat;4;6;80%;2 RIR',
      /^No header names the columns: 4 and 6 are taken as sets and repetitions, in this order\.$/mu,
    ],
    ['Exercise;Sets;Reps;Load\nsquat;4;6;80', /^The load 80 has no unit: it is taken as 80 % of 1RM\.$/mu],
    ['Exercise;Sets;Reps;%\nsquat;4;6;0,8', /^A load of 0\.8 is taken as 80 % of 1RM\.$/mu],
    [
      'Day;Exercise;Sets;Reps;%\nMon;squat;4;6;80\n;bench;4;6;80',
      /^No day stands on this line: it is taken as of Mon, as above\.$/mu,
    ],
    [
      'Mon\nsquat 4x6 80%\nFri\nsquat 4x6 70%\nMon\nbench 4x6 70%',
      /^Monday comes again on line 5, after a later day/mu,
    ],
  ])('of %j is said', (text, said) => {
    expect(saidOf(text)).toMatch(said);
  });

  it('is nothing where all is written', () => {
    expect(saidOf('Mon front squat 4 sets of 6 80% 2 RIR alone')).toBe('');
  });
});

describe('what is left over', () => {
  it('stands with its line', () => {
    const { notes } = first('Mon A1) back squat (paused) 4x6 80% 2 RIR, rest 2 min, tempo 3010, chest up');
    expect(notes).toEqual(['A1', 'chest up', 'rest 2 min', 'tempo 3010']);
  });

  it('of cells that are not read says their column', () => {
    const { notes } = first('Day;Exercise;Sets;Reps;%;Rest;Notes\nMon;squat;4;6;80;90 s;belt on');
    expect(notes).toEqual(['Rest: 90 s', 'belt on']);
  });

  it('and was not understood stands in the cell that it belongs to, to be mended', () => {
    const cells = (text: string) => toCells(first(text));
    expect(cells('Mon squat 12/10/8 80% 2 RIR')).toMatchObject({
      exercise: 'squat',
      repetitions: '12/10/8',
      load: '80',
    });
    expect(cells('Mon squat 4x6 100 kg')).toMatchObject({ sets: '4', repetitions: '6', load: '100 kg' });
    expect(cells('Mon squat 4x6 @80')).toMatchObject({ load: '', note: '80' });
    expect(cells('Day;Exercise;Sets;Reps;%\nMontg;squat;4;6;80')).toMatchObject({ day: 'Montg', sets: '4' });
    expect(cells('Week 3\nThu: sqat 4x6 70-75% 1-2 RIR spotter')).toMatchObject({
      week: '3',
      day: 'Thursday',
      exercise: 'sqat',
      load: '70-75',
      reserve: '1-2',
      company: 'spotter',
    });
  });
});

describe('the site’s own form', () => {
  it.each([exampleWeek, exampleToTargets])('is read as by its own reader (%#)', (text) => {
    const own = readProgramme(text, 'week', exercises);
    const { programme, written } = readWhole(text);
    expect(written.notRead).toEqual([]);
    expect(programme).toEqual(own);
  });

  it('keeps the facts of an exercise', () => {
    const text =
      'day,exercise,sets,repetitions,load,reserve,muscles,can_pin,stoppable,partials\nMonday,sled drag,3,10,75,3,quadriceps; calves,no,yes,no\n';
    const own = readProgramme(text, 'week', exercises);
    expect(readWhole(text).programme).toEqual(own);
    expect(own.lines[0].exercise.muscles).toEqual(['quadriceps', 'calves']);
    expect(readWhole(text).list.lines[0].cells).toEqual(fromCsv(text, 'week', NO_LINES).list?.lines[0].cells);
  });
});
