/** The answer's sentence with its doubts, and what stands beside a target: evidence near it, and common practice. */
import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/model/analyse.ts';
import { analyseForPractice } from '../../src/model/full.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { noTarget } from '../../src/model/target.ts';
import { advise } from '../../src/practice/advice.ts';
import { stateAnswer, stateDoubts, stateHeadline, stateIntervals } from '../../src/practice/answer.ts';
import { rangeOfRepetitions } from '../../src/practice/commonPractice.ts';
import { stateNear } from '../../src/practice/evidenceNear.ts';
import { arms, analysis as shipped } from './programme/shipped.ts';
import { at } from './setAt.ts';

describe('the answer in one sentence', () => {
  it('names both bands with their intervals', () => {
    expect(stateAnswer(shipped)).toBe(
      'To keep 90\u00a0% of the growth that training to failure brings, less than 1 repetition may stay in reserve with light loads (below 60\u00a0% of 1RM), between 0.0 and 1.1; 2 to 3 repetitions may stay in reserve with heavy loads, between 1.6 and 4.2.',
    );
  });

  it('is one short sentence, with what it keeps and how sure it is beside it', () => {
    expect(stateHeadline(shipped)).toMatch(
      /^(?:About|\d+ to) \d+ repetitions? may stay in reserve with heavy loads, .* repetitions? with light ones\.$/u,
    );
    if ('all' in shipped.bands) throw new Error('expected two bands');
    const { light, heavy } = shipped.bands;
    const intervals = stateIntervals(shipped);
    for (const { target } of [light, heavy])
      expect(intervals).toContain(` ${target.shown?.point.toFixed(1)}, between `);
    expect(intervals).toMatch(/^That keeps 90\u00a0% of .* heavy loads \(from 60\u00a0%\) .*; light loads \(below 60/u);
  });

  it('names the loads without a number, and is the refusal where none has one', () => {
    if ('all' in shipped.bands) throw new Error('expected two bands');
    const { light, heavy } = shipped.bands;
    const none = { ...light, target: noTarget(0.9, 'no target') };
    expect(stateHeadline({ ...shipped, bands: { light: none, heavy } })).toMatch(
      / with heavy loads; this evidence gives no number for light loads\.$/u,
    );
    expect(stateIntervals({ ...shipped, bands: { light: none, heavy } })).not.toMatch(/light/u);
    const neither = { ...shipped, bands: { light: none, heavy: none } };
    expect(stateHeadline(neither)).toMatch(/^This evidence gives no reserve that keeps 90/u);
    expect(stateIntervals(neither)).toBe('');
    expect(stateHeadline({ ...shipped, bands: { all: heavy } })).toMatch(/ may stay in reserve at any load\.$/u);
  });

  it('says that there is none, and why, where nothing can be fitted', () => {
    const empty = analyse([], settingsSchema.parse({}));
    expect(stateAnswer(empty)).toMatch(/gives no reserve that keeps 90\u00a0%/u);
    expect(stateDoubts(empty)).toEqual([
      'With light loads, there is no target: no fit was possible, since no row is left to fit.',
      'With heavy loads, there is no target: no fit was possible, since no row is left to fit.',
    ]);
  });

  it('of the shipped table has to add only where the heavy loads are no longer sure to keep less', () => {
    expect(stateDoubts(shipped)).toEqual([
      'With heavy loads, from 9.1 in reserve on it is no longer sure that less is kept; what is kept is taken not to rise with reserve, so the interval ends where it is first sure.',
    ]);
  });

  it('adds to it what its reason says of an interval', () => {
    if ('all' in shipped.bands) throw new Error('expected two bands');
    const { light, heavy } = shipped.bands;
    const reason = 'this evidence sets no upper end';
    const open = { ...shipped, bands: { light, heavy: { ...heavy, target: { ...heavy.target, high: null, reason } } } };
    expect(stateDoubts(open)).toEqual([`With heavy loads, ${reason}.`]);
  });

  it('calls the interval of a few studies unreliable, and so does the advice from them', () => {
    const few = arms.filter(({ study }) => /^[A-F]/u.test(study));
    const analysis = analyseForPractice(few, settingsSchema.parse({}));
    if (!('heavy' in analysis.bands)) throw new Error('expected two bands');
    const { target, unreliable } = analysis.bands.heavy;
    expect(target.point).not.toBeNull();
    expect(unreliable).toBe(true);
    expect(stateDoubts(analysis).join(' ')).toMatch(/heavy loads, a coefficient has fewer than 4 degrees of freedom/u);
    expect(advise(analysis, at(85)).unreliable).toBe(true);
  });
});

describe('evidence near a load', () => {
  it('is counted in the number that grammar asks for, with no more digits than were asked', () => {
    const near = { arms: 1, studies: 1, nearest: null, loadOutside: 1 };
    expect(stateNear(near, true)).toBe(
      '1 arm of 1 study within 10 points of this load and 1 repetition of this reserve; the load lies 1 point outside all that was studied',
    );
    const none = { arms: 0, studies: 0, nearest: { load: 200 / 3, reserve: 2 }, loadOutside: 0 };
    expect(stateNear(none, false)).toBe(
      'no arm within 10 points of this load; the nearest trained at 66.7\u00a0% with 2 in reserve',
    );
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
