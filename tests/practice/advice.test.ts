/** The rules of practice: targets inside common practice, safety before evidence, cautions always. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../src/evidence/table.ts';
import { analyse } from '../../src/model/analyse.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { advise } from '../../src/practice/advice.ts';
import { stateAnswer, stateDoubts } from '../../src/practice/answer.ts';
import { COMPANIES, cautionsFor } from '../../src/practice/cautions.ts';
import { rangeOfRepetitions } from '../../src/practice/commonPractice.ts';
import { listTargets } from '../../src/practice/targetTable.ts';

const { arms } = readArms(readFileSync(new URL('../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const SHARES = [0.5, 0.75, 0.9, 0.99];
const analyses = SHARES.map((keptShare) => analyse(arms, settingsSchema.parse({ keptShare })));
const shipped = analyses[SHARES.indexOf(0.9)];

describe('targets of the shipped table', () => {
  // Up to about 3 below 10 repetitions, 2 from 10 to 20, 1 above 20: common practice, no source.
  it('lie inside common practice for each repetition range', () => {
    for (const { range, target } of listTargets(shipped)) {
      expect(target.practical, range.name).not.toBeNull();
      expect(target.practical, range.name).toBeLessThanOrEqual(range.upTo);
    }
  });

  it('never give lighter loads more reserve than heavier ones', () => {
    for (const analysis of analyses) {
      const points = listTargets(analysis).map(({ target }) => target.point ?? Number.NaN);
      expect(points).toEqual([...points].sort((a, b) => b - a));
    }
  });
});

describe('advice', () => {
  const situations = fc.record({
    analysis: fc.constantFrom(...analyses),
    load: fc.double({ min: 1, max: 100, noNaN: true }),
    canPin: fc.boolean(),
    company: fc.constantFrom(...COMPANIES),
  });

  it('never allows reserve 0 alone on an exercise that can pin the lifter, and always has cautions', () => {
    fc.assert(
      fc.property(situations, ({ analysis, load, canPin, company }) => {
        const { reserve, sentence, cautions } = advise(analysis, load, { canPin, company });
        expect(cautions.length).toBeGreaterThanOrEqual(3);
        expect(cautions.join(' ')).toMatch(/pain, dizziness or chest symptoms/u);
        if (!canPin || company !== 'alone') return;
        expect(reserve === null || reserve.least >= 1).toBe(true);
        expect(sentence).not.toMatch(/no further repetition/u);
        expect(cautions.join(' ')).toMatch(/safety arms or have a spotter.*collars off/u);
      }),
      { seed: 11, numRuns: 500 },
    );
  });

  it('is a range of whole numbers from the cautious to the practical target', () => {
    const { reserve, target, raisedForSafety } = advise(shipped, 80, { canPin: false, company: 'alone' });
    expect(reserve).toEqual({ least: Math.floor(target.cautious ?? -1), most: target.practical });
    expect(raisedForSafety).toBe(false);
  });

  it('from reserve 0 up says “at most” to the lifter', () => {
    const low = analyse(arms, settingsSchema.parse({ keptShare: 0.9, confidence: 0.999 }));
    const { reserve, sentence } = advise(low, 40, { canPin: false, company: 'alone' });
    expect(reserve).toEqual({ least: 0, most: 1 });
    expect(sentence).toBe('End the set when you could do at most 1 more good repetition.');
  });

  it('near the split asks the fit of all loads, away from it the band', () => {
    const source = (load: number) => advise(shipped, load, { canPin: false, company: 'alone' }).source;
    expect([30, 55, 60, 65, 85].map(source)).toEqual(['light', 'joint', 'joint', 'joint', 'heavy']);
  });

  it('says at which load the fit of all loads was asked', () => {
    const at = (load: number) => advise(shipped, load, { canPin: false, company: 'alone' }).askedAt;
    expect([30, 62, 68, 85].map(at)).toEqual([null, 60, 70, null]);
  });

  it('gives no lighter load more reserve than a heavier one, whatever the share', () => {
    for (const analysis of analyses) {
      const points = Array.from(
        { length: 76 },
        (_, i) => advise(analysis, 20 + i, { canPin: false, company: 'alone' }).target.point ?? Number.NaN,
      );
      expect(points).toEqual([...points].sort((a, b) => a - b));
    }
  });

  it('has cautions that fit who is there', () => {
    expect(cautionsFor({ canPin: true, company: 'spotter' }).join(' ')).toMatch(/Agree with the spotter/u);
    expect(cautionsFor({ canPin: true, company: 'safety arms' }).join(' ')).toMatch(/lowest point/u);
  });
});

describe('the answer in one sentence', () => {
  it('names both bands with their intervals', () => {
    expect(stateAnswer(shipped)).toBe(
      'To keep 90 % of the growth that training to failure brings, about 1 repetition may stay in reserve with light loads (below 60 % of 1RM), between 1.1 and 1.9; about 3 repetitions may stay in reserve with heavy loads, between 2.6 and 6.0.',
    );
  });

  it('says that there is none, and why, where nothing can be fitted', () => {
    const empty = analyse([], settingsSchema.parse({}));
    expect(stateAnswer(empty)).toMatch(/gives no reserve that keeps 90 %/u);
    expect(stateDoubts(empty)).toEqual([
      'With light loads there is no target: no fit was possible, since no row is left to fit.',
      'With heavy loads there is no target: no fit was possible, since no row is left to fit.',
    ]);
  });

  it('has no doubts to add on the shipped table', () => {
    expect(stateDoubts(shipped)).toEqual([]);
  });

  it('calls the interval of a few studies unreliable, and so does the advice from them', () => {
    const few = arms.filter(({ study }) => /^[A-F]/u.test(study));
    const analysis = analyse(few, settingsSchema.parse({}));
    if (!('heavy' in analysis.bands)) throw new Error('expected two bands');
    const { target, unreliable } = analysis.bands.heavy;
    expect(target.point).not.toBeNull();
    expect(unreliable).toBe(true);
    expect(stateDoubts(analysis).join(' ')).toMatch(/heavy loads .* fewer than 4 degrees of freedom/u);
    expect(advise(analysis, 85, { canPin: false, company: 'alone' }).unreliable).toBe(true);
  });
});

describe('the repetition range', () => {
  it.each([
    [1, 'below 10'],
    [9.9, 'below 10'],
    [10, '10 to 20'],
    [20, '10 to 20'],
    [21, 'above 20'],
    [100, 'above 20'],
  ])('of %d possible repetitions is %s', (possible, name) => {
    expect(rangeOfRepetitions(possible).name).toBe(name);
  });
});
