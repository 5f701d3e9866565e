/** A target as it is told: whole numbers inside the interval that is shown, whatever the target; and known cases. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawnLow, showTarget } from '../../src/model/wholeRepetitions.ts';

const shown = (point: number, low: number, high: number | null) => {
  const told = showTarget({ point, low, high });
  return [told.whole.least, told.whole.most, told.shown.low, told.shown.high];
};

describe('the whole repetitions of a target', () => {
  it('are those inside its interval up to the estimate', () => {
    expect(shown(3.06, 1.61, 4.48)).toEqual([2, 3, 1.6, 4.5]);
    expect(shown(3.5, 2.56, 5.95)).toEqual([3, 3, 2.6, 6]);
    expect(shown(7.2, 2, null)).toEqual([2, 7, 2, null]);
  });

  it('are the nearest to the estimate where it reaches none inside', () => {
    expect(shown(0.83, 0.26, 2.3)).toEqual([1, 1, 0.3, 2.3]);
    expect(shown(1.6, 1.2, null)).toEqual([2, 2, 1.2, null]);
  });

  it('are the number below, which keeps more, where the nearest is not inside, and the interval reaches down to it', () => {
    expect(shown(1.4, 1.08, 1.91)).toEqual([1, 1, 1, 1.9]);
    expect(shown(0.36, 0.2, 1.11)).toEqual([0, 0, 0, 1.1]);
    expect(shown(0.3, 0.2, null)).toEqual([0, 0, 0, null]);
    expect(shown(2.7, 2.6, 2.8)).toEqual([2, 2, 2, 2.8]);
  });

  it('go by the estimate as it is shown: 0.99 is told as 1.0, and so as 1', () => {
    expect(showTarget({ point: 0.99, low: 0, high: 2 })).toEqual({
      shown: { point: 1, low: 0, high: 2 },
      whole: { least: 0, most: 1 },
    });
    expect(shown(0.94, 0, 2)).toEqual([0, 0, 0, 2]);
  });

  it('never lie outside the interval beside them, and never pass the estimate but to enter it', () => {
    const cases = fc.tuple(
      fc.double({ min: 0, max: 10, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.option(fc.double({ min: 0, max: 5, noNaN: true })),
    );
    fc.assert(
      fc.property(cases, ([point, part, more]) => {
        const told = showTarget({ point, low: part * point, high: more === null ? null : point + more });
        const { least, most } = told.whole;
        expect(Number.isInteger(least) && Number.isInteger(most) && least <= most).toBe(true);
        expect(least).toBeGreaterThanOrEqual(told.shown.low);
        expect(most).toBeLessThanOrEqual(told.shown.high ?? Number.POSITIVE_INFINITY);
        expect(told.shown.low).toBeLessThanOrEqual(told.shown.point);
        expect(told.shown.point).toBeLessThanOrEqual(told.shown.high ?? Number.POSITIVE_INFINITY);
        // It is drawn from where it is told, but for rounding.
        const low = part * point;
        const drawn = drawnLow({ low, shown: told.shown }) ?? Number.NaN;
        expect(Math.abs(drawn - told.shown.low)).toBeLessThanOrEqual(0.05 + 1e-9);
        if (Math.abs(low - told.shown.low) < 0.05) expect(drawn).toBe(low);
        if (most > told.shown.point) expect(most).toBe(Math.round(told.shown.point));
      }),
      { seed: 15, numRuns: 5000 },
    );
  });
});
