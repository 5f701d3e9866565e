/** The cell of authors: read into names and written back, and initials of given names in every dress. */
import { expect, it } from 'vitest';
import { initialsOf, readAuthors, writeAuthors } from '../../src/evidence/authors.ts';

it.each([
  ['Plover A', [{ family: 'Plover', initials: 'A', suffix: '' }]],
  ['von Essen CD', [{ family: 'von Essen', initials: 'CD', suffix: '' }]],
  ['Smith JA Jr', [{ family: 'Smith', initials: 'JA', suffix: 'Jr' }]],
  ['Smith JA III', [{ family: 'Smith', initials: 'JA', suffix: 'III' }]],
  ['Ibn Sina II', [{ family: 'Ibn Sina', initials: 'II', suffix: '' }]],
  ['World Health Organization', [{ family: 'World Health Organization', initials: '', suffix: '' }]],
  [
    'Åström Ö, O’Neil P',
    [
      { family: 'Åström', initials: 'Ö', suffix: '' },
      { family: 'O’Neil', initials: 'P', suffix: '' },
    ],
  ],
] as const)('%s is read as it is meant and written back the same', (cell, authors) => {
  expect(readAuthors(cell)).toEqual(authors);
  expect(writeAuthors(readAuthors(cell))).toBe(cell);
});

it('initials with points, hyphens or spaces are read as without', () => {
  for (const cell of ['Plover A.B.', 'Plover A-B', 'Plover A. B.', ' Plover  AB ,']) {
    expect(writeAuthors(readAuthors(cell)), cell).toBe('Plover AB');
  }
});

it.each([
  ['Anna-Maria B.', 'AMB'],
  ['J.P.', 'JP'],
  ['JP', 'JP'],
  ['ANNA', 'A'],
  ['Ángel de', 'Á'],
  ['É\u0301mile', 'É\u0301'],
  ['小明', '小'],
  ['1', ''],
])('the initials of %s are %s', (given, initials) => {
  expect(initialsOf(given)).toBe(initials);
});
