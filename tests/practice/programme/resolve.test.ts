/** Cells in a coach's notation into the form that the check reads; what is of that form already stays as it is. */
import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../../src/evidence/problem.ts';
import { fromCsv } from '../../../src/practice/programme/csvView.ts';
import { addLine, NO_LINES } from '../../../src/practice/programme/edit.ts';
import type { Cells } from '../../../src/practice/programme/editorColumns.ts';
import { readProgramme } from '../../../src/practice/programme/read.ts';
import { resolveList } from '../../../src/practice/programme/resolve.ts';
import { exampleToTargets, exampleWeek, exercises } from './shipped.ts';

const plain = { day: 'Mon', exercise: 'leg press', sets: '3', repetitions: '10', load: '70', reserve: '2' };
const resolve = (cells: Partial<Cells>) => {
  const { text, lines } = resolveList(addLine(NO_LINES, 0, { ...plain, ...cells }), exercises);
  return { ...lines[0], programme: readProgramme(text, 'week', exercises) };
};

describe('cells of the site’s own form', () => {
  it.each([exampleWeek, exampleToTargets])('are checked exactly as the text itself (%#)', (text) => {
    const { list } = fromCsv(text, 'week', NO_LINES);
    if (!list) throw new Error('expected a list');
    const resolved = resolveList(list, exercises);
    expect(readProgramme(resolved.text, 'week', exercises)).toEqual(readProgramme(text, 'week', exercises));
    expect(resolved.lines.flatMap(({ assumed, problems }) => [...assumed, ...problems])).toEqual([]);
  });

  it.each(['0.5', '1', '100', '7e1', ' 70 '])('stay as they are, a load of “%s” too', (load) => {
    expect(resolve({ load }).cells.load).toBe(load);
  });
});

describe('a cell in another notation', () => {
  it.each<[Partial<Cells>, Partial<Cells>]>([
    [{ load: '72,5 %' }, { load: '72.5' }],
    [{ load: '@80%' }, { load: '80' }],
    [{ reserve: 'RIR 2' }, { reserve: '2' }],
    [{ reserve: 'to failure' }, { reserve: '0' }],
    [{ reserve: 'two' }, { reserve: '2' }],
    [{ reserve: 'two reps shy of failure' }, { reserve: '2' }],
    [{ reserve: 'RPE 8' }, { reserve: '2' }],
    [{ repetitions: '10 reps' }, { repetitions: '10' }],
    [{ sets: '3 sets' }, { sets: '3' }],
    [{ company: 'with a spotter' }, { company: 'spotter' }],
    [{ exercise: 'RDLs' }, { exercise: 'Romanian deadlift' }],
    [{ day: 'Wed.' }, { day: '3' }],
    [{ day: 'Day 4' }, { day: '4' }],
    [{ week: '2', day: 'Tue' }, { day: '9' }],
    [{ week: 'week 2', day: '3' }, { day: '10' }],
    [{ week: '2', day: '9' }, { day: '9' }],
  ])('%j is checked as %j', (cells, expected) => {
    const { programme, problems, cells: read } = resolve(cells);
    expect(read).toMatchObject(expected);
    expect([problems, programme.problems]).toEqual([[], []]);
    expect(programme.lines.length).toBe(1);
  });

  it.each<[Partial<Cells>, Partial<Cells>, RegExp]>([
    [{ repetitions: '6-8' }, { repetitions: '8' }, /^Of 6-8 repetitions 8 are checked, which leave least\.$/u],
    [{ load: '70–75%' }, { load: '75' }, /^Of 70-75% of 1RM 75% are checked/u],
    [{ reserve: '1-3' }, { reserve: '1' }, /^Of 1-3 in reserve 1 are checked/u],
    [{ possible: '12-14' }, { possible: '12' }, /^Of 12-14 repetitions possible 12 are checked/u],
    [{ reserve: 'RPE 7-8' }, { reserve: '2' }, /ten minus the rating.*common practice, no source/u],
    [{ load: '~75%' }, { load: '75' }, /^“~75” is taken as 75\.$/u],
    [{ load: '80% of e1RM' }, { load: '80' }, /^Per cent of an estimated 1RM are taken as of 1RM\.$/u],
    [{ reserve: 'about 2' }, { reserve: '2' }, /^“about 2” is taken as 2\.$/u],
    [{ exercise: 'OHP' }, { exercise: 'overhead press' }, /^“OHP” is taken as overhead press\.$/u],
    [{ day: 'Day 3' }, { day: '3' }, /^Day 3 is taken as Wednesday\.$/u],
  ])('%j is checked as %j, which is said', (cells, expected, said) => {
    const { assumed, cells: read } = resolve(cells);
    expect(read).toMatchObject(expected);
    expect(assumed.join('\n')).toMatch(said);
  });

  it.each<[Partial<Cells>, keyof Cells, RegExp]>([
    [{ load: '100 kg' }, 'load', /Say the 1RM of leg press in kg/u],
    [{ load: 'BW' }, 'load', /“possible 14”/u],
    [{ repetitions: '12/10/8' }, 'repetitions', /a line for each set/u],
    [{ repetitions: 'AMRAP' }, 'repetitions', /repetitions that you expect/u],
    [{ repetitions: '5+' }, 'repetitions', /“5” without the plus/u],
    [{ reserve: '≥2' }, 'reserve', /Write “2” if that is what is meant/u],
    [{ reserve: '2/1/0' }, 'reserve', /one with “2 RIR”/u],
    [{ reserve: 'close to failure' }, 'reserve', /Write the number, “2 RIR”/u],
    [{ load: '<75%' }, 'load', /Write “75%” if that is what is meant/u],
    [{ load: '70/75/80' }, 'load', /one with “70%”/u],
    [{ reserve: 'RPE 3' }, 'reserve', /how many repetitions are left/u],
    [{ week: '13' }, 'week', /a week from 1 to 12/u],
    [{ week: '2', day: 'W1D3' }, 'week', /the week that the day names, 1/u],
  ])('%j is refused with the fix, and the check does not pass it', (cells, column, fix) => {
    const { problems, programme, cells: read } = resolve(cells);
    expect(problems.map((problem) => problem.column)).toEqual([column]);
    expect(problems.map(formatProblem).join()).toMatch(fix);
    if (column !== 'week') expect(read[column as keyof typeof read]).toBe(cells[column]);
    if (column !== 'week' || cells.day === undefined) expect(programme.problems.length).toBeGreaterThan(0);
  });

  it.each<[Partial<Cells>]>([
    [{ sets: 'three' }],
    [{ repetitions: '4x6' }],
    [{ load: '80% 2 RIR' }],
    [{ day: 'Mon/Thu' }],
  ])('%j stays as typed, and the check names it', (cells) => {
    const { cells: read, programme, assumed } = resolve(cells);
    expect(read).toMatchObject(cells);
    expect(assumed).toEqual([]);
    expect(programme.problems.length).toBeGreaterThan(0);
  });
});
