/** References of the table that is built: its own file, else the shipped lines that match by name, else none. */
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readStudyLines } from '../../src/site/studyLines.ts';

const HEADER = 'study,authors,year,title\n';
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'table-'));
  cpSync('data/arms.csv', join(folder, 'mine.csv'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const read = (...names: string[]) => readStudyLines(join(folder, 'mine.csv'), new Set(names));

describe('the references of a table', () => {
  it('that is the shipped one are the shipped ones, each with its study', () => {
    const { lines, unused } = readStudyLines('data/arms.csv', new Set(['Plover 1996', 'Nobody 2000']));
    expect([...lines.keys()]).toEqual(['Plover 1996']);
    expect(lines.get('Plover 1996')?.title).toMatch(/invented/u);
    expect(unused).toHaveLength(47);
  });

  it('with a studies.csv beside it are read from there alone', () => {
    writeFileSync(join(folder, 'studies.csv'), `${HEADER}Mine 2020,Mine A,2020,On mine\nOld 1999,Old A,1999,On old\n`);
    const { lines, unused } = read('Mine 2020', 'Plover 1996');
    expect([...lines.keys()]).toEqual(['Mine 2020']);
    expect(unused).toEqual(['Old 1999']);
  });

  it('without one are the shipped lines that match by name, none of the others counting as unused', () => {
    const { lines, unused } = read('Mine 2020', 'Plover 1996');
    expect([...lines.keys()]).toEqual(['Plover 1996']);
    expect(unused).toEqual([]);
  });

  it('with a wrong file beside it stop the build with all its problems', () => {
    writeFileSync(join(folder, 'studies.csv'), `${HEADER}Mine 2020,Mine A,soon,On mine\nOld 1999,,1999,On old\n`);
    expect(() => read('Mine 2020')).toThrow(/not built: 2 problems\n[\s\S]*line 2, `year`[\s\S]*line 3, `authors`/u);
  });
});
