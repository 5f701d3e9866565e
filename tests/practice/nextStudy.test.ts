/** The sentence on what one more study would do: what it names, when it says “not much”, and that it promises nothing. */
import { describe, expect, it } from 'vitest';
import type { NextStudyOfBand } from '../../src/model/plan/nextStudy.ts';
import { stateNextStudy, UNFORESEEN } from '../../src/practice/nextStudy.ts';

const usual = { people: 20, median: 22, studies: 9 };
const after = { point: 1.2, low: 0.52, high: 1.88, width: 1.4, widthMissing: null, refused: 0, unbounded: 0 };
const light: NextStudyOfBand = {
  band: 'light',
  today: { point: 1.3, low: 0.3, high: 2.3 },
  reserves: [0, 4],
  after,
  narrowing: 0.6,
  left: 0.7,
};
const heavy: NextStudyOfBand = { ...light, band: 'heavy', reserves: [1, 7], narrowing: 0.9, left: 0.8 };
const state = (...bands: NextStudyOfBand[]) => stateNextStudy({ usual, bands }).words;

describe('what one more study would do', () => {
  it('is said of the band whose width shrinks most in proportion', () => {
    const expected =
      'One more study of 20 people (the middle study here has 22) would be expected to narrow an interval most with arms at 0 and 4 in reserve and light loads: 0.3 to 2.3 would be expected to become about 0.5 to 1.9, about 30\u00a0% narrower.';
    expect(state(light, heavy)).toBe(expected);
    expect(state(heavy, light)).toBe(expected);
  });

  it('is said to be not much below a tenth of a repetition or of the width, and another band goes before such a one', () => {
    const few = { ...light, narrowing: 0.09, left: 0.5 };
    const small = { ...light, narrowing: 0.2, left: 0.91 };
    for (const band of [few, small])
      expect(state(band)).toBe(
        'No single study of 20 people (the middle study here has 22) would be expected to narrow an interval much: at best, with arms at 0 and 4 in reserve and light loads, 0.3 to 2.3 would be expected to become about 0.5 to 1.9.',
      );
    expect(state(few, heavy)).toMatch(/most with arms at 1 and 7 in reserve and heavy loads/u);
    expect(state({ ...light, narrowing: 0.1, left: 0.9 })).toMatch(/about 10\u00a0% narrower/u);
  });

  it('shows the expected interval as the site would: down to a whole repetition where none lies inside', () => {
    const low = { ...light, after: { ...after, point: 0.36, low: 0.21, high: 0.93 } };
    expect(state(low)).toMatch(/become about 0\.0 to 0\.9,/u);
  });

  it('tells of a band without an upper end, and of one without a target, what a study would give', () => {
    const open = { narrowing: null, left: null } as const;
    expect(state(heavy, { ...light, ...open, today: { point: 1, low: 0.4, high: null } })).toBe(
      [
        'One more study of 20 people (the middle study here has 22) would be expected to narrow the interval for heavy loads most with arms at 1 and 7 in reserve: 0.3 to 2.3 would be expected to become about 0.5 to 1.9, about 20\u00a0% narrower.',
        'With light loads the interval has no upper end today; with one more study of 20 people (the middle study here has 22) with arms at 0 and 4 in reserve it would be expected to have one: about 0.5 to 1.9.',
      ].join(' '),
    );
    expect(state({ ...light, ...open, today: null, after: { ...after, high: null, refused: 0.25 } })).toBe(
      'With light loads there is no target today; with one more study of 20 people (the middle study here has 22) with arms at 0 and 4 in reserve there would be one in about 75 of 100 outcomes: at least about 0.5.',
    );
  });

  it('without a split speaks of any loads, and of both arms where they stand together', () => {
    expect(state({ ...light, band: 'all', reserves: [3, 3] })).toMatch(
      /most with both arms at 3 in reserve and any loads: /u,
    );
  });

  it('stays general where nothing can be foreseen', () => {
    expect(state()).toBe(UNFORESEEN);
    // A table without any interval comes here too.
    expect(UNFORESEEN).not.toMatch(/interval|wide|narrow/u);
  });

  it('names the studies that it speaks of as plans, those without a width after the narrowest', () => {
    const open = { ...light, narrowing: null, left: null };
    const { plans } = stateNextStudy({ usual, bands: [open, heavy] });
    expect(plans.map(({ design, arms }) => [design, arms])).toEqual([
      [
        'parallel',
        [
          { load: 'heavy', reserve: 1, people: 10 },
          { load: 'heavy', reserve: 7, people: 10 },
        ],
      ],
      [
        'parallel',
        [
          { load: 'light', reserve: 0, people: 10 },
          { load: 'light', reserve: 4, people: 10 },
        ],
      ],
    ]);
    expect(stateNextStudy({ usual, bands: [] }).plans).toEqual([]);
  });
});
