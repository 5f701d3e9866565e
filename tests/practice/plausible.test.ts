/**
 * Repetitions done and left against those possible at the load: shares by plain counting of simulated people, and
 * by hand from the published bench press (Nuzzo et al. 2024, second-hand: 8.82 ± 2.51 at 80 % of 1RM).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stateAgainst } from '../../src/figures/programmeFindings.ts';
import { makeRandom } from '../../src/numerics/random.ts';
import { askAbout, judgePlausibility, type Plausibility } from '../../src/practice/plausible.ts';
import { possibleAt } from '../../src/practice/possible.ts';
import { checkLine } from '../../src/practice/programme/line.ts';
import { readProgramme } from '../../src/practice/programme/read.ts';
import { analysis, exercises } from './programme/shipped.ts';

const judge = (
  repetitions: number,
  load: number,
  reserve: number,
  relation: 'leg press' | null = null,
  possible: number | null = null,
) => judgePlausibility({ load, repetitions, reserve, possible, relation });
const shareOf = (found: Plausibility) => ('share' in found ? found.share : undefined);
/** The checked line of a squat with a spotter; it could be as advised. */
const check = (sets: string) => {
  const text = `day,exercise,sets,repetitions,load,reserve,company\nMon,barbell back squat,${sets},spotter\n`;
  const [line] = readProgramme(text, 'week', exercises).lines;
  return checkLine(analysis, line, 'trained');
};

describe('a reserve with decimals', () => {
  it('counts, as it is shown, to half a repetition outside the range', () => {
    // Advised of the squat with a spotter at 75 %: 2 to 3.
    const against = (reserve: number) => check(`3,8,75,${reserve}`).against;
    expect([1.44, 1.46, 3.54, 3.56].map(against)).toEqual(['closer', 'inside', 'inside', 'further']);
    expect([1.5, 2, 3, 3.5].map((reserve) => stateAgainst(check(`3,8,75,${reserve}`)))).toEqual([
      'as advised, to half a repetition',
      'as advised',
      'as advised',
      'as advised, to half a repetition',
    ]);
  });
});

describe('a total of repetitions', () => {
  it('within two SDs of the published mean is usual, beyond them asked about on either side', () => {
    // 8.82 ± 2 × 2.51 is 3.80 to 13.84.
    expect([3, 4, 13, 14].map((total) => judge(total, 80, 0).kind)).toEqual(['too few', 'usual', 'usual', 'too many']);
  });

  it('is as unusual as a count of simulated people says', () => {
    const { normal } = makeRandom(11);
    const people = Array.from({ length: 400_000 }, () => 8.82 + 2.51 * normal());
    const counted = people.filter((possible) => possible >= 14).length / people.length;
    const share = shareOf(judge(12, 80, 2)) ?? Number.NaN;
    // Four standard errors of the count.
    expect(Math.abs(share - counted)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / people.length));
  });

  it('says the share in people, and nothing finer than 1 in 1,000', () => {
    expect(askAbout({ load: 80, repetitions: 12, reserve: 2, possible: null, relation: null })).toBe(
      'Is the set right: 12 repetitions with 2 left at 80\u00a0% of 1RM? Expected: about 9 possible at 80 % of 1RM, give or take 5 (published for the bench press; this exercise may differ). About 1 person in 51 could do so many at this load.',
    );
    expect(askAbout({ load: 80, repetitions: 20, reserve: 2, possible: null, relation: null })).toMatch(
      /Fewer than 1 person in 1,000/u,
    );
    expect(askAbout({ load: 80, repetitions: 8, reserve: 1, possible: null, relation: null })).toBeNull();
  });

  it('is held against the exercise’s own relation where one is published', () => {
    expect(judge(14, 80, 2).kind).toBe('too many');
    expect(judge(14, 80, 2, 'leg press').kind).toBe('usual');
  });

  it('is held first against what the set itself says is possible, which both are counted to whole ones of', () => {
    expect([11, 12, 13].map((done) => judge(done, 72, 2, null, 12).kind)).toEqual(['usual', 'too many', 'too many']);
    expect(judge(12, 72, 2, null, 12)).toMatchObject({
      expected: 'about the 12 possible together, as the line gives them',
    });
    // At 20 % of 1RM nothing published could say so.
    expect(judge(90, 20, 20, null, 100).kind).toBe('too many');
    expect(judge(10, 72, 0, null, 12).kind).toBe('too few');
    // More than the load allows are so whatever the set says.
    expect(judge(20, 80, 2, null, 30)).toMatchObject({ kind: 'too many', expected: expect.stringMatching(/at 80 %/u) });
  });

  it('is not judged below the loads with a published spread', () => {
    for (const total of [1, 40, 150]) expect(judge(total, 39.9, 0)).toMatchObject({ kind: 'not known' });
    expect(judge(150, 40, 0).kind).toBe('too many');
  });

  it('above those loads is asked about without a share, and at 1RM by definition', () => {
    expect(judge(8, 92, 2)).toMatchObject({ kind: 'too many', share: null });
    expect(judge(6, 98, 2)).toMatchObject({ kind: 'too many', share: null });
    expect(judge(6, 100, 2)).toMatchObject({ kind: 'too many', share: 0 });
    expect(judge(1, 100, 0).kind).toBe('usual');
    expect(judge(2, 95, 0).kind).toBe('usual');
  });

  it('that is asked about at a load is so with more repetitions, and from 40 % on with more load', () => {
    const isTooMany = (load: number, total: number) => judge(total, load, 0).kind === 'too many';
    fc.assert(
      fc.property(
        fc.double({ min: 40, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.integer({ min: 1, max: 150 }),
        (load, heavier, total) => {
          if (!isTooMany(load, total)) return;
          expect(isTooMany(load, total + 1)).toBe(true);
          expect(isTooMany(Math.min(100, load + heavier), total)).toBe(true);
        },
      ),
      { seed: 17 },
    );
  });
});

describe('the verdict on a line', () => {
  it('of 20 repetitions at 80 % with 2 left, and of 6 at 100 % with 2 left, is a question', () => {
    for (const sets of ['3,20,80,2', '3,6,100,2']) {
      const checked = check(sets);
      expect(checked.plausibility.kind, sets).toBe('too many');
      expect(checked.against, sets).not.toBe('inside');
    }
    expect(check('3,20,80,2').against).toBe('questioned');
    expect(stateAgainst(check('3,20,80,2'))).toMatch(/^not judged\. Is the set right: 20 repetitions with 2 left/u);
  });

  it('warns of both', () => {
    const text =
      'day,exercise,sets,repetitions,load,reserve\nMon,leg curl,3,20,80,2\nMon,leg curl,3,6,100,2\nMon,leg curl,3,6,80,2\n';
    const { warnings } = readProgramme(text, 'week', exercises);
    expect(warnings.map(({ line }) => line)).toEqual([2, 3]);
  });

  it('is never “as advised” of more repetitions than 2 SDs above the mean of the load', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 40, max: 100 }),
        fc.integer({ min: 1, max: 100 }),
        fc.integer({ min: 0, max: 10 }),
        (load, repetitions, reserve) => {
          const checked = check(`3,${repetitions},${load},${reserve}`);
          const possible = possibleAt(load, null);
          const most = load === 100 ? 1 : possible?.sd ? possible.mean + 2 * possible.sd : Number.POSITIVE_INFINITY;
          if (repetitions + reserve > most) expect(stateAgainst(checked)).not.toBe('as advised');
        },
      ),
      { seed: 4 },
    );
  });
});
