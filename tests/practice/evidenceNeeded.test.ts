/** What is said of a table that was not read in full, and of bands that carry no target. */
import { describe, expect, it } from 'vitest';
import { countReading } from '../../src/evidence/reading.ts';
import { analyse } from '../../src/model/analyse.ts';
import { countBase } from '../../src/model/evidenceBase.ts';
import { defaultSettings, settingsSchema } from '../../src/model/settings.ts';
import { stateTable } from '../../src/ownTable/stateTable.ts';
import { nameReading, stateNeeds, stateReading } from '../../src/practice/evidenceNeeded.ts';
import { type Cells, makeArms } from '../support/tables.ts';

/** Two arms of one study that compare reserves with heavy loads, and one of another study with a light load. */
const ROWS: readonly Cells[] = [
  { how_read: 'abstract' },
  { how_read: 'abstract', arm: 'three left', attempted_failure: 'no', reserve_reps: '3' },
  { study: 'Wren 2007', year: '2007', load_pct_1rm: '30' },
];
const read = (rows: readonly Cells[]) => {
  const arms = makeArms(rows);
  return { arms, reading: countReading(arms), base: countBase(arms, analyse(arms, defaultSettings)) };
};

describe('how a table was read', () => {
  it('is not told where all of it was read in full, or where no row says', () => {
    expect([read([{}]).reading, read([{ how_read: 'full text' }]).reading]).toEqual([null, null]);
    expect(stateTable('own.csv', makeArms([{ how_read: 'full text' }]))).not.toHaveProperty('reading');
  });

  it('is told with the rows and studies that were not, and those that count for each band', () => {
    const { arms, reading, base } = read(ROWS);
    if (!reading) throw new Error('expected a reading');
    expect(nameReading(reading)).toBe('Read from abstracts.');
    expect(stateReading(reading, base)).toBe(
      '2 of 3 rows, in 1 of 2 studies, come from abstracts, not from the full papers. For the answer count 1 row of 1 study with light loads and 2 rows of 1 study with heavy loads. They carry no target for light loads and heavy loads: that takes at least 4 studies, to advise a lifter at least 5, and a difference of reserve that more than one of them shows. Studies with two or more known reserves: 0 with light loads, 1 with heavy loads.',
    );
    expect(stateTable('own.csv', arms).reading).toBe(`${nameReading(reading)} ${stateReading(reading, base)}`);
  });

  it.each([
    [['abstract', 'abstract'], 'Read from abstracts.', /^All 2 rows of 1 study come from abstracts, not/u],
    [
      ['second-hand', 'second-hand'],
      'Read second-hand.',
      /^All 2 rows of 1 study come from other papers that quote them, not/u,
    ],
    [
      ['abstract', 'second-hand'],
      'Not read in full.',
      /^All 2 rows of 1 study come from abstracts or, 1 of them, other papers, not/u,
    ],
    [['second-hand', 'full text'], 'Read second-hand.', /^1 of 2 rows, in 1 of 1 study, come/u],
  ] as const)('%j is called “%s”', ([first, second], name, sentence) => {
    const { reading, base } = read([{ how_read: first }, { how_read: second, arm: 'other' }]);
    if (!reading) throw new Error('expected a reading');
    expect(nameReading(reading)).toBe(name);
    expect(stateReading(reading, base)).toMatch(sentence);
  });
});

describe('what stands behind the answer', () => {
  it('counts rows that have an effect, whether or not a fit was possible, and studies that compare reserves', () => {
    expect(read(ROWS).base).toEqual([
      { band: 'light', rows: 1, studies: 1, comparing: 0, hasTarget: false },
      { band: 'heavy', rows: 2, studies: 1, comparing: 1, hasTarget: false },
    ]);
    const arms = makeArms([
      ...ROWS,
      {
        study: 'Tern 2011',
        year: '2011',
        baseline_sd: '',
        followup_sd: '',
        correlation: '',
        followup_mean: '',
        percent_change: '4',
      },
    ]);
    const together = analyse(arms, settingsSchema.parse({ split: null }));
    expect(countBase(arms, together)).toEqual([{ band: 'all', rows: 3, studies: 2, comparing: 1, hasTarget: false }]);
  });

  it('is told only of bands without a target', () => {
    const base = read(ROWS).base;
    expect(stateNeeds(base)).toBe(
      'Reserve, load and change with its error are known, with light loads 1 row of 1 study, 0 of these with two or more known reserves; with heavy loads 2 rows of 1 study, 1 of these with two or more known reserves. A target takes at least 4 studies, to advise a lifter at least 5, and a difference of reserve that more than one of them shows.',
    );
    const withTargets = base.map((band) => ({ ...band, hasTarget: true }));
    expect(stateNeeds(withTargets)).toBe('');
    expect(stateNeeds([withTargets[0], base[1]])).not.toMatch(/light loads/u);
    expect(
      stateReading({ table: { rows: 3, studies: 2 }, notInFull: { rows: 2, studies: 1 }, secondHand: 0 }, withTargets),
    ).not.toMatch(/target/u);
  });
});
