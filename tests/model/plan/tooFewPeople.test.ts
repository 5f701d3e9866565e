/** Why no number of people is enough: what is claimed of numbers that were not tried, and with how many digits. */
import { describe, expect, it } from 'vitest';
import { explainTooFew } from '../../../src/model/plan/tooFewPeople.ts';

const tried = (...widths: readonly (number | null)[]) =>
  widths.map((width, i) => ({ people: [3, 10, 100_000][i], width }));

describe('too few people', () => {
  it('of widths that fall steadily are all numbers, with the width that is left', () => {
    expect(explainTooFew(tried(0.9, 0.8, 0.7), 0.6, true, null)).toMatch(
      /^no number of people is enough for 0\.6 in one such study: even without end it leaves it about 0\.70 wide, since/u,
    );
    expect(explainTooFew(tried(null, null, null), 0.6, true, null)).toContain('gives no interval with an upper end');
  });

  it('of others are those tried, with the narrowest and what ever more people come to', () => {
    expect(explainTooFew(tried(0.9, 0.7, 0.8), 0.6, false, null)).toBe(
      'none of the numbers tried (3 to 100,000 in each arm) is enough for 0.6 in one such study: the narrowest, about 0.70 wide, is expected with 10 in each arm, and about 0.80 with people without end',
    );
    expect(explainTooFew(tried(0.9, 0.7, null), 0.6, false, null)).toMatch(
      /, and no upper end with people without end$/u,
    );
  });

  it('are no more than those tried where of more no fit would be made, though widths fall', () => {
    expect(explainTooFew(tried(0.9, 0.8), 0.6, true, 'no fit')).toBe(
      'none of the numbers tried (3 to 10 in each arm) is enough for 0.6 in one such study: the narrowest, about 0.80 wide, is expected with 10 in each arm; with ever more people none can be foreseen (no fit)',
    );
    expect(explainTooFew(tried(null, null), 0.6, true, 'no fit')).toContain(
      ': none gives an interval with an upper end;',
    );
  });

  it('are told with digits that keep a width above what is asked', () => {
    expect(explainTooFew(tried(0.9, 0.7003), 0.7, true, null)).toContain('about 0.7003 wide');
  });
});
