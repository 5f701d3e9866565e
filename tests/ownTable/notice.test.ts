/** What is said of a reader's own table where an address names one: never that another is read in its place. */
import { describe, expect, it } from 'vitest';
import { readCitedTable } from '../../src/ownTable/citedTable.ts';
import { citedVersionOf, isHashed } from '../../src/ownTable/citedVersion.ts';
import { stateInUse } from '../../src/ownTable/noticeWords.ts';
import type { TableInUse } from '../../src/ownTable/tableInUse.ts';
import { UNHASHED } from '../../src/ownTable/version.ts';

const version = 'ab'.repeat(32);
const own = { kind: 'own', about: { version, name: 'mine.csv', rows: 12, studies: 3 } } as unknown as TableInUse;
const read = (table: string) => readCitedTable(new URLSearchParams({ table }));

describe('the notice', () => {
  it('says that a page reads the table in use where its address names that one, or none', () => {
    for (const cited of [null, read('own-abababab')])
      expect(stateInUse(own, true, cited, false)).toBe(
        'This page reads your own table, mine.csv: 12 rows of 3 studies.',
      );
    expect(stateInUse(own, false, read('abababab'), false)).toMatch(/shows the site’s own table, not yours/u);
    // The table that such a page shows is the one that it was.
    expect(stateInUse(own, false, read('abababab'), true)).toMatch(
      /^Your own table was changed\. This page shows the site’s/u,
    );
    expect(stateInUse(own, true, null, true)).toMatch(/^The table was changed\. This page reads your own/u);
  });

  it('says of an address of another own table that nothing is shown in its place', () => {
    const other = read('own-cdcdcdcd');
    expect(stateInUse(own, true, other, false)).toBe(
      'The address of this page names another table of somebody’s own, which is not in use here: yours is mine.csv. Nothing is shown in its place.',
    );
    expect(stateInUse({ kind: 'site' }, true, read('own-abababab'), true)).toMatch(
      /^Your table was put away\. The address/u,
    );
    expect(stateInUse({ kind: 'missing', reason: 'it is gone' }, true, other, false)).toMatch(
      /^A table of your own is meant, but cannot be read: it is gone\. The address.*Nothing is shown/u,
    );
    expect(stateInUse(own, true, other, true)).toMatch(/^The table was changed\. The address/u);
  });
});

describe('an own table that the browser could not hash', () => {
  const names = ['12345678', '9abcdef0'].map((start) => `own-table:${UNHASHED}${start}${'0'.repeat(24)}`);

  it('is named in an address so that no other is taken for it', () => {
    const [one, other] = names.map((address) => read(`own-${citedVersionOf(address)}`));
    expect(one).toEqual({ version: 'unhashed-12345678', own: true });
    expect(one?.version).toBe(citedVersionOf(names[0]));
    expect(other?.version).not.toBe(citedVersionOf(names[0]));
    // As addresses had it before: it is of no table that is known.
    expect(names.map(citedVersionOf)).not.toContain(read('own-unknown')?.version);
  });

  it('is told to have no version that others could hold its file to', () => {
    expect(
      ['own-unhashed-12345678', 'own-unknown', 'own-abababab'].map((name) =>
        isHashed(read(name) ?? { version: '', own: true }),
      ),
    ).toEqual([false, false, true]);
    expect(citedVersionOf('/data/arms.csv#abababab')).toBeNull();
  });
});
