/** Which texts are DOIs, and that another one in the table of studies is a warning with its remedy. */
import { describe, expect, it } from 'vitest';
import { isDoi, plainDoi } from '../../src/evidence/doi.ts';
import { formatProblem } from '../../src/evidence/problem.ts';
import { readStudies } from '../../src/evidence/table.ts';

const withDoi = (doi: string) =>
  readStudies(`study,authors,year,title,doi\nPlover 2012,Plover A,2012,A title,${doi}\n`, 'studies.csv');

it.each(['10.1000/example', '10.123456789/x', '10.1002/(SICI)1097<1::AID-1>2.0;2-#'])('%s is a DOI', (text) => {
  expect(isDoi(text)).toBe(true);
});

it.each([
  ['an address before it', 'https://doi.org/10.1000/x'],
  ['a space in it', '10.1000/x y'],
  ['a prefix of three digits', '10.100/x'],
  ['a prefix of ten digits', '10.1234567890/x'],
  ['nothing behind the slash', '10.1000/'],
  ['another text before it', 'see 10.1000/x'],
])('a text with %s is none', (_what, text) => {
  expect(isDoi(text)).toBe(false);
});

it.each([
  'https://doi.org/10.1000/x',
  'http://dx.doi.org/10.1000/x',
  'doi.org/10.1000/x',
  'DOI: 10.1000/x',
  ' doi 10.1000/x ',
])('“%s” is written plainly as 10.1000/x', (text) => {
  expect(plainDoi(text)).toBe('10.1000/x');
});

describe('the table of studies', () => {
  it('with a DOI or an empty cell has no warning', () => {
    expect(withDoi('10.1000/example')).toMatchObject({ problems: [], warnings: [] });
    expect(withDoi('')).toMatchObject({ problems: [], warnings: [] });
  });

  it('with another form is read, with a warning that says where and what to do', () => {
    const { studies, problems, warnings } = withDoi('https://doi.org/10.1000/x');
    expect([studies.length, problems.length]).toEqual([1, 0]);
    expect(warnings.map(formatProblem)).toEqual([
      'line 2, `doi`: expected 10., four to nine digits, a slash and a name without spaces, as in 10.1000/example, received “https://doi.org/10.1000/x”. Leave out what stands before 10.1000/x.',
    ]);
    expect(withDoi('not known').warnings[0].remedy).toMatch(/copy it from the paper/iu);
  });
});
